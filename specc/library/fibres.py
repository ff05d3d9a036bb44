"""Owns what fibres are called in law, and what care each usually bears.

Knows no cloth.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from types import MappingProxyType
from typing import TYPE_CHECKING

from specc.library.rows import rows

if TYPE_CHECKING:
    from collections.abc import Mapping

OTHER = ("other", "others")
_WORDS_FOR_FIBRE = ("fibre", "fibres", "fiber", "fibers")


@dataclass(frozen=True, slots=True)
class Fibre:
    """What is known of fibres of some names.

    `wash` and `iron` are degrees Celsius that it bears, None for any; `tumble` is `no`, `low` or `any`.
    `chlorine` is whether it bears chlorine bleach, `exempt` whether cloth wholly of it needs no test of
    16 CFR 1610, `stretches` whether a little of it has a function. `lists` are the lists of names it is in.
    """

    names: tuple[str, ...]
    lists: tuple[str, ...]
    wash: int | None
    iron: int | None
    tumble: str
    chlorine: bool
    exempt: bool
    stretches: bool


@cache
def fibres() -> tuple[Fibre, ...]:
    """All fibres known."""
    return tuple(
        Fibre(
            tuple(row["names"]),
            tuple(row["lists"]),
            row.get("wash"),
            row.get("iron"),
            row.get("tumble", "any"),
            row.get("chlorine", True),
            row.get("exempt", False),
            row.get("stretches", False),
        )
        for row in rows("fibres.toml", "fibre")
    )


@cache
def trade_words() -> Mapping[str, tuple[str, ...]]:
    """Words of shops that name no fibre, and the names that may be meant."""
    return MappingProxyType({row["word"]: tuple(row["means"]) for row in rows("fibres.toml", "trade")})


@cache
def fibre_names() -> tuple[str, ...]:
    """Every name, in the order of the table."""
    return tuple(name for fibre in fibres() for name in fibre.names)


def fibre_called(words: str) -> Fibre | None:
    """The fibre that `words` end in the name of: `organic cotton` is cotton; None for no name of a fibre."""
    plain = _plain(words)
    ends = (" ".join(plain[start:]) for start in range(len(plain)))
    known = {name.casefold(): fibre for fibre in fibres() for name in fibre.names}
    return next((known[end] for end in ends if end in known), None)


def is_other(words: str) -> bool:
    """Whether the words are `other fibres`, as a label calls what it need not name."""
    return any(word in OTHER for word in _plain(words))


def _plain(words: str) -> list[str]:
    return [word for word in words.casefold().split() if word not in _WORDS_FOR_FIBRE]
