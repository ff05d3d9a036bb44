"""Owns what is said to the user: codes, diagnostics, fixes, explanation pages, and their renderings.

Knows places in texts. Knows nothing of garments.
"""

from specc.diagnostics.catalog import declare, explained, explanation
from specc.diagnostics.collect import Collector
from specc.diagnostics.model import Applicability, Code, Diagnostic, Edit, Fix, Label, Severity

__all__ = [
    "Applicability",
    "Code",
    "Collector",
    "Diagnostic",
    "Edit",
    "Fix",
    "Label",
    "Severity",
    "declare",
    "explained",
    "explanation",
]
