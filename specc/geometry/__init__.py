"""Owns curves and outlines in float millimetres: lengths, areas, cuts, crossings; knows no garments."""
