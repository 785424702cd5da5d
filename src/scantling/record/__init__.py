"""The build record: what was measured, cut, glued, and how long it took."""
