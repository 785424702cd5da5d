"""Part: name, size, grain, reference faces, blank, cut types."""
