"""Owns amounts: trims to cut, cloth, bill of materials, points of measure, demands met or not.

Knows nothing of paper.
"""

from specc.quantities.count import count, measure
from specc.quantities.quantities import Measures, Quantities
from specc.quantities.unpriced import unpriced

__all__ = ["Measures", "Quantities", "count", "measure", "unpriced"]
