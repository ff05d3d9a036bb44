"""Owns placing flat shapes on a strip of cloth: the problem, the search, the check of what came out.

Knows nothing of garments: shapes have names, outlines and angles, the strip has a width and no end.
"""

from specc.packing.bottom_left import bottom_left
from specc.packing.problem import Layout, Placed, Shape, Strip, lain, outline_of
from specc.packing.quick import quick
from specc.packing.search import WORKERS, Report, SearchFailedError, search
from specc.packing.verify import faults, too_large

__all__ = [
    "WORKERS",
    "Layout",
    "Placed",
    "Report",
    "SearchFailedError",
    "Shape",
    "Strip",
    "bottom_left",
    "faults",
    "lain",
    "outline_of",
    "quick",
    "search",
    "too_large",
]
