"""Vocabulary of the workshop: tools and their reach, gauge settings, operations, glues, clamps, habits."""
