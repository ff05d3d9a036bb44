"""Owns amounts: trims to cut, cloth, bill of materials, points of measure, demands met or not.

Knows nothing of paper.
"""

from specc.quantities.count import count
from specc.quantities.quantities import Quantities

__all__ = ["Quantities", "count"]
