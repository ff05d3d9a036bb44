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

_KEPT = Path(__file__).parent / "__pycache__"


class _Unruled:
    """Lark's place for a step after the lexer; used only to keep the terminals of UNRULED."""

    always_accept = UNRULED

    def process(self, tokens: Iterator[lark.Token]) -> Iterator[lark.Token]:
        return tokens


@cache
def parser() -> lark.Lark:
    """The parser of the language, from the tables kept by an earlier run or from the grammar.

    Kept tables are a pickle of Lark's beside the compiled modules, trusted as those are. Their name has a
    digest of all that they are made from. Where they cannot be written, or Python is told to keep nothing
    (`-B`), they are done without.
    """
    folder = assets.folder("grammar")
    kept = _KEPT / f"grammar-{_digest(folder)}.{sys.implementation.cache_tag}.pickle"
    try:
        with kept.open("rb") as file:
            return lark.Lark.load(file)
    except Exception:  # noqa: BLE001  whatever is wrong with kept tables, they can be made anew
        made = _made(folder)
    if not sys.dont_write_bytecode:
        with suppress(OSError):
            _keep(made, kept)
    return made


def _made(folder: Path) -> lark.Lark:
    return lark.Lark.open(
        str(folder / "specc.lark"),
        parser="lalr",
        lexer="basic",
        propagate_positions=True,
        maybe_placeholders=True,
        postlex=_Unruled(),
    )


def _keep(made: lark.Lark, kept: Path) -> None:
    """Put the tables in place as a whole, and take those of other grammars away."""
    kept.parent.mkdir(exist_ok=True)
    with NamedTemporaryFile(dir=kept.parent, prefix="grammar-", delete=False) as file:
        fresh = Path(file.name)
        try:
            made.save(file, exclude_options=("postlex",))
            file.close()
            fresh.chmod(0o644)
            fresh.replace(kept)
        finally:
            fresh.unlink(missing_ok=True)
    for other in kept.parent.glob(f"grammar-*.{sys.implementation.cache_tag}.pickle"):
        if other != kept:
            other.unlink(missing_ok=True)


def _digest(folder: Path) -> str:
    made_from = [lark.__version__, str(sys.version_info[:2]), *UNRULED]
    made_from.extend(path.read_text(encoding="utf-8") for path in sorted(folder.glob("*.lark")))
    return sha256("\0".join(made_from).encode()).hexdigest()[:16]
