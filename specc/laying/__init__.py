"""Owns cutting: which pieces lie on which length of cloth, for one garment and for the order.

Knows nothing of prices or of paper.
"""

from specc.laying.cloth import ClothLayer, Wanted
from specc.laying.improve import Improved, improve
from specc.laying.lay import lay, layers, sound_layouts
from specc.laying.plan import ClothLays, CutOut, LaidPiece, Lay, Ratio, Way

__all__ = [
    "ClothLayer",
    "ClothLays",
    "CutOut",
    "Improved",
    "LaidPiece",
    "Lay",
    "Ratio",
    "Wanted",
    "Way",
    "improve",
    "lay",
    "layers",
    "sound_layouts",
]
