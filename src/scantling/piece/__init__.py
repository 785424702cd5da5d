"""Reads the piece file; one file per form: draft first, then parts and joints."""

from scantling.piece._read import Asked, Piece, read, unknown_names

__all__ = ["Asked", "Piece", "read", "unknown_names"]
