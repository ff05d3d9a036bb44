"""Owns the way from what was written to what is meant: names, types, units, settings.

Knows the tree and the model. Knows nothing of geometry or of paper.
"""

from specc.resolve.resolve import Gathered, resolve

__all__ = ["Gathered", "resolve"]
