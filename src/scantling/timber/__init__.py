"""Wood as a material: how damp it gets, how far it moves, what it weighs and bears."""
