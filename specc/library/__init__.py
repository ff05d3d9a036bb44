"""Owns trade data as rows with sources, and the standard charts, blocks and methods as texts of the language.

Knows nothing of any one garment.
"""
