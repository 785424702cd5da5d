"""The only door to the geometry kernel: blanks, cuts, overlap, contact, moves."""
