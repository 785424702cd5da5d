"""The piece file itself: its signs, its words, its sections, and what is wrong with them."""
