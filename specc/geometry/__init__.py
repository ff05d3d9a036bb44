"""Owns curves and outlines in float millimetres: exact lengths, areas, cuts and crossings; knows no garments."""
