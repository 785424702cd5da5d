"""Vocabulary of the workshop: tools and reach, gauge settings, operations, glues, clamps, habits."""
