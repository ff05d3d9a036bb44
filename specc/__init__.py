"""specc compiles garment specifications: a garment in text becomes a technical sheet."""
