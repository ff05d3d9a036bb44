"""Owns making the parser from the grammar, and keeping its tables for the next run.

Knows nothing of the language but the names of the terminals that no rule takes.
"""

from __future__ import annotations

import sys
from contextlib import suppress
from functools import cache
from hashlib import sha256
from pathlib import Path
from tempfile import NamedTemporaryFile
from typing import TYPE_CHECKING

import lark

from specc import assets

if TYPE_CHECKING:
    from collections.abc import Iterator

# No rule takes these: they are for the reader, which reports them. Lark would leave them out of the lexer.
UNRULED = ("QUOTED", "UNCLOSED", "JUNK")


class _Unruled:
    """Lark's place for a step after the lexer; used only to keep the terminals of UNRULED."""

    always_accept = UNRULED

    def process(self, tokens: Iterator[lark.Token]) -> Iterator[lark.Token]:
        return tokens


@cache
def parser() -> lark.Lark:
    """The parser of the language, from the tables kept by an earlier run or from the grammar.

    Kept tables are a pickle of Lark's beside the compiled modules, trusted as those are. Their name has a
    digest of all that they are made from, and they are put in place whole, those of an older grammar being
    taken away; where they cannot be written they are done without.
    """
    folder = assets.folder("grammar")
    kept = (
        Path(__file__).parent
        / "__pycache__"
        / (f"grammar-{_digest(folder)}.{sys.implementation.cache_tag}.pickle")
    )
    if kept.is_file():
        return _made(folder, cache=str(kept))
    try:
        kept.parent.mkdir(exist_ok=True)
        with NamedTemporaryFile(dir=kept.parent, suffix=".pickle", delete=False) as file:
            fresh = Path(file.name)
    except OSError:
        return _made(folder, cache=False)
    try:
        made = _made(folder, cache=str(fresh))
        with suppress(OSError):
            fresh.replace(kept)
            for older in kept.parent.glob(f"grammar-*.{sys.implementation.cache_tag}.pickle"):
                if older != kept:
                    older.unlink(missing_ok=True)
    finally:
        fresh.unlink(missing_ok=True)
    return made


def _made(folder: Path, *, cache: str | bool) -> lark.Lark:
    return lark.Lark.open(
        str(folder / "specc.lark"),
        parser="lalr",
        lexer="basic",
        propagate_positions=True,
        maybe_placeholders=True,
        postlex=_Unruled(),
        cache=cache,
    )


def _digest(folder: Path) -> str:
    made_from = [lark.__version__, str(sys.version_info[:2]), *UNRULED]
    made_from.extend(path.read_text(encoding="utf-8") for path in sorted(folder.glob("*.lark")))
    return sha256("\0".join(made_from).encode()).hexdigest()[:16]
