"""Owns trade data as rows with sources, and the charts, blocks and methods that come with the program.

Knows nothing of any one garment.
"""
