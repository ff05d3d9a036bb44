"""The garment laid flat, as it is drawn: front and back, from its pieces. Knows nothing of paper."""

from specc.flat.lay_flat import lay_flat

__all__ = ["lay_flat"]
