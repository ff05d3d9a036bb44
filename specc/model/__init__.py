"""Owns what a checked garment is: frozen values, names resolved, units and dimensions known.

Knows nothing of text (beyond the place each thing was written), of geometry or of paper.
"""
