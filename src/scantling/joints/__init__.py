"""Joints, one file each. All answer the questions of `_joint`; nobody asks which joint it is."""
