"""Owns the cautions that a sheet may carry; knows no garment."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from specc.library.rows import rows


@dataclass(frozen=True, slots=True)
class Caution:
    """Something to beware of; `when` names the condition under which it is shown.

    `law` names the law as it was read, `source` says how we know.
    """

    id: str
    when: str
    title: str
    text: str
    law: str
    source: str


@cache
def cautions() -> tuple[Caution, ...]:
    """All cautions, in the order in which a sheet shows them."""
    return tuple(Caution(**row) for row in rows("cautions.toml", "caution"))
