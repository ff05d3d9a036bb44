"""The picture in README.md is what the program draws of the example."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from specc.backends import write
from specc.pipeline import check_bytes, document
from specc.world import Folder

if TYPE_CHECKING:
    from tests.goldens import Golden

EXAMPLE = Path(__file__).resolve().parent.parent.parent / "examples" / "estuary-shell"


def test_the_picture_is_drawn_by_the_program(golden: Golden) -> None:
    name = "estuary-shell.garment"
    made = document(check_bytes(name, EXAMPLE.joinpath(name).read_bytes(), Folder(EXAMPLE)))
    assert made is not None

    drawn = {file.path: file.data.decode() for file in write(made, ("svg",))}

    golden(EXAMPLE / "altered.svg", drawn["drawings/altered.svg"])
