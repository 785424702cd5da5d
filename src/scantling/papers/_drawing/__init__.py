"""What is drawn, before any sheet: parts in three views, the piece, its joints.

Every drawing is strokes and texts in millimetres on paper, x to the right and y upwards, so the
packet and the page draw the same one.
"""
