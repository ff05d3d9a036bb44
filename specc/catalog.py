"""Owns the catalogue: every code that any stage can raise, gathered from the modules that declare them.

Knows nothing of when a code is raised. A module that declares codes has a row here; a test compares.
"""

from __future__ import annotations

from importlib import import_module

from specc.diagnostics import Code

# By name, since a package may export a function under the name of its module.
_DECLARING = (
    "specc.syntax.parser",
    "specc.gather",
    "specc.resolve.codes",
    "specc.resolve.header",
    "specc.resolve.charts",
    "specc.resolve.blocks",
    "specc.resolve.expressions",
    "specc.resolve.parts",
    "specc.resolve.settings",
    "specc.resolve.materials",
    "specc.resolve.alterations",
    "specc.resolve.construction",
    "specc.resolve.makings",
    "specc.resolve.demands",
    "specc.resolve.resolve",
)


def _declared() -> tuple[Code, ...]:
    modules = (import_module(name) for name in _DECLARING)
    found = {value for module in modules for value in vars(module).values() if isinstance(value, Code)}
    return tuple(sorted(found, key=lambda code: code.id))


CODES = _declared()
