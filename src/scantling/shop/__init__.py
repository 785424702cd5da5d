"""Vocabulary of the workshop: tools and reach, gauges, operations, glues, clamps, habits."""
