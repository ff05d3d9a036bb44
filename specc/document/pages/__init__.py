"""Owns the pages of the sheet, one module each. Knows nothing of HTML."""
