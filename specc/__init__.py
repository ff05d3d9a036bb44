"""specc compiles garment specifications: a garment in text becomes a technical sheet."""

__version__ = "0.1.0"
