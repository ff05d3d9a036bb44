"""Owns the cautions that a sheet may carry, read from their table. Knows no garment."""

from __future__ import annotations

import tomllib
from dataclasses import dataclass
from importlib.resources import files


@dataclass(frozen=True, slots=True)
class Caution:
    """A row of `data/cautions.toml`.

    `when` names the condition under which it is shown, `source` says how we know.
    """

    id: str
    when: str
    title: str
    text: str
    law: str
    source: str


def cautions() -> tuple[Caution, ...]:
    """All cautions, in the order in which a sheet shows them."""
    text = files("specc.library").joinpath("data", "cautions.toml").read_text(encoding="utf-8")
    return tuple(Caution(**row) for row in tomllib.loads(text)["caution"])
