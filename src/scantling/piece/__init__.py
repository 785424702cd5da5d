"""Reads the piece file; one file per form: draft first, then parts and joints."""
