"""Owns the way from a text to its tree.

Knows nothing of what the words mean: names are not looked up, units are not reckoned with.
"""

from specc.syntax.parser import parse

__all__ = ["parse"]
