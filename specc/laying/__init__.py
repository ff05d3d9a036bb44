"""Owns cutting: which pieces lie on which length of cloth, for one garment and for the order.

Knows nothing of prices or of paper.
"""

from specc.laying.lay import ClothLayer, SizeCuts, Wanted, lay
from specc.laying.plan import ClothLays, LaidPiece, Lay, Ratio, Way

__all__ = ["ClothLayer", "ClothLays", "LaidPiece", "Lay", "Ratio", "SizeCuts", "Wanted", "Way", "lay"]
