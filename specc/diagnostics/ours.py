"""Owns the code for faults of the program itself. Knows nothing of what went wrong."""

from specc.diagnostics.catalog import declare
from specc.diagnostics.model import Severity

FAULT = declare("SPC900", "fault-of-specc", Severity.ERROR, "a fault of specc itself: {fault}")
