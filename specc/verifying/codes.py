"""Owns the codes of what can be wrong with a sheet that is held against its source.

Knows nothing of how that is found out.
"""

from __future__ import annotations

from specc.diagnostics import Severity, declare

UNREADABLE = declare(
    "SPC630", "pdf-unreadable", Severity.ERROR, "`{file}` is no PDF that can be read: {reason}"
)
NOTHING_ENCLOSED = declare(
    "SPC631",
    "nothing-enclosed",
    Severity.ERROR,
    "nothing is enclosed in `{file}` that it could be held against",
)
UNFIT = declare(
    "SPC632", "enclosed-file-unfit", Severity.ERROR, "`{name}`, enclosed in `{file}`, is not taken: {reason}"
)
LEFT_OUT = declare(
    "SPC633",
    "source-left-out",
    Severity.ERROR,
    "`{file}` is a copy without prices: its source was left out on purpose, so it cannot be verified",
)
NOT_ITS_SOURCE = declare(
    "SPC634",
    "source-of-another-sheet",
    Severity.ERROR,
    "`{name}`, enclosed in `{file}`, is not the text that the sheet was made from",
)
NO_SHEET = declare(
    "SPC635", "enclosed-source-wrong", Severity.ERROR, "the source enclosed in `{file}` does not give a sheet"
)
DIFFERS = declare("SPC636", "sheet-differs", Severity.ERROR, "`{file}` is not what its source gives: {what}")
OTHER_VERSION = declare(
    "SPC637", "sheet-of-another-version", Severity.NOTE, "`{file}` was made by {theirs}, and this is {ours}"
)
NOT_THERE = declare(
    "SPC638", "source-incomplete", Severity.ERROR, "`{name}` is named on `{file}`, and is not enclosed in it"
)
