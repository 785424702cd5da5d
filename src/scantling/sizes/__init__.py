"""Named dimensions tied by linear equations and bounds; what is stated holds, the rest follows."""
