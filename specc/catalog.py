"""Owns the catalogue: every code that any stage can raise, gathered from the modules that declare them.

Knows nothing of when a code is raised. A module that declares codes has a row here, but for the rules, which
have theirs in `RULES`; a test compares.
"""

from __future__ import annotations

from importlib import import_module

from specc.diagnostics import Code
from specc.rules import RULES

# By name, since a package may export a function under the name of its module.
_DECLARING = (
    "specc.diagnostics.ours",
    "specc.gather",
    "specc.syntax.letters",
    "specc.syntax.braces",
    "specc.syntax.signs",
    "specc.syntax.figures",
    "specc.syntax.words",
    "specc.syntax.reader",
    "specc.syntax.drawing",
    "specc.resolve.codes",
    "specc.resolve.charts",
    "specc.resolve.blocks",
    "specc.resolve.needs",
    "specc.resolve.limits",
    "specc.resolve.expressions",
    "specc.resolve.grading",
    "specc.resolve.drawings",
    "specc.resolve.pieces",
    "specc.resolve.runs",
    "specc.resolve.parts",
    "specc.resolve.questions",
    "specc.resolve.declared",
    "specc.resolve.settings",
    "specc.resolve.materials",
    "specc.resolve.alterations",
    "specc.resolve.swings",
    "specc.resolve.closures",
    "specc.resolve.colourways",
    "specc.resolve.recutting",
    "specc.resolve.construction",
    "specc.resolve.filling",
    "specc.resolve.makings",
    "specc.resolve.plies",
    "specc.resolve.demands",
    "specc.resolve.resolve",
    "specc.drafting.environment",
    "specc.drafting.evaluate",
    "specc.drafting.edges",
    "specc.drafting.lines",
    "specc.drafting.darts",
    "specc.drafting.drawings",
    "specc.drafting.finished",
    "specc.drafting.checks",
    "specc.alteration.shape",
    "specc.making.assemble",
    "specc.making.attaching",
    "specc.making.catching",
    "specc.making.closing",
    "specc.making.rounds",
    "specc.making.sewing_on",
    "specc.making.uses",
    "specc.laying.cloth",
    "specc.laying.lay",
    "specc.laying.lay_file",
    "specc.rules.judge",
    "specc.verifying.codes",
    *(rule.__module__ for rule in RULES),
)


def _declared() -> tuple[Code, ...]:
    modules = (import_module(name) for name in _DECLARING)
    found = {value for module in modules for value in vars(module).values() if isinstance(value, Code)}
    return tuple(sorted(found, key=lambda code: code.id))


CODES = _declared()
