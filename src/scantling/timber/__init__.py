"""Species tables with their sources, and the equations of moisture, movement and strength."""
