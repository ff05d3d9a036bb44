"""The order of work: what must be done before what, in the examples and in another order of the text."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from specc.gather import read
from specc.making.work import Kind, order_of_work
from specc.pipeline import check
from specc.source import SourceFile
from tests.compiling import Here

if TYPE_CHECKING:
    from specc.making.work import Step

ROOT = Path(__file__).parents[3]
EXAMPLES = sorted(path.stem for path in (ROOT / "examples").glob("*/*.garment"))


def text_of(name: str) -> tuple[str, Path]:
    path = next((ROOT / "examples").glob(f"*/{name}.garment"))
    source, faults = read(path.name, path.read_bytes())
    assert not faults
    return source.text, path.parent


def steps_of(text: str, folder: Path) -> tuple[Step, ...]:
    result = check(SourceFile("test.garment", text), Here(folder))
    assert result.garment is not None
    assert result.assembly is not None, result.diagnostics
    return order_of_work(result.garment, result.assembly.sizes[0].pieces)


@cache
def steps(name: str) -> tuple[Step, ...]:
    return steps_of(*text_of(name))


def names(found: tuple[Step, ...]) -> list[str]:
    return [step.name for step in found]


def step(name: str, called: str) -> Step:
    return next(each for each in steps(name) if each.name == called and each.kind is not Kind.DARTS)


@pytest.mark.parametrize("name", EXAMPLES)
def test_everything_that_is_sewn_is_a_step_once_and_after_what_it_needs(name: str) -> None:
    text, folder = text_of(name)
    garment = check(SourceFile("test.garment", text), Here(folder)).garment
    assert garment is not None
    found = steps(name)
    expected = [each.name for each in garment.seams]
    expected += [each.name for each in garment.finishes]
    expected += [each.name for each in garment.attachments if each.making is not None]
    assert sorted(each.name for each in found if each.kind is not Kind.DARTS) == sorted(expected)
    for number, each in enumerate(found, start=1):
        assert all(need < number for need in each.after), each


def test_a_neckline_goes_round_once_the_shoulders_are_sewn() -> None:
    """Worked by hand from the pieces: front and back neck meet at the shoulders, and nowhere else."""
    assert names(steps("estuary-shell")) == ["shoulder", "side", "neckline", "armhole", "bottom"]
    assert step("estuary-shell", "neckline").after == (1,)
    assert step("estuary-shell", "armhole").after == (1, 2)
    assert {each.lies for each in steps("estuary-shell")[:2]} == {"flat"}
    assert {each.lies for each in steps("estuary-shell")[2:]} == {"round"}


def test_trousers_are_hemmed_when_both_seams_of_the_leg_are_sewn() -> None:
    bottom, waist = step("mudlark-trousers", "bottom"), step("mudlark-trousers", "waist")
    called = names(steps("mudlark-trousers"))
    assert {called[number - 1] for number in bottom.after} == {"side", "inseam"}
    assert {called[number - 1] for number in waist.after} == {"side", "front-crotch", "back-crotch"}


def test_darts_come_before_the_seams_that_cross_them_and_pockets_before_the_sides() -> None:
    called = [(each.kind, each.name) for each in steps("loft-waistcoat")]
    assert called[:3] == [
        (Kind.DARTS, "front"),
        (Kind.HEM, "mouth"),
        (Kind.ATTACHMENT, "pocket-on-front"),
    ]
    assert called.index((Kind.SEAM, "side")) > called.index((Kind.ATTACHMENT, "pocket-on-front"))


def test_buttons_come_when_the_edges_that_they_go_onto_are_done() -> None:
    assert names(steps("capstan-skirt"))[-1] == "button"
    assert names(steps("heron-skirt"))[-1] == "waist-hook"


def test_a_sleeve_is_set_in_round_or_flat_as_the_text_has_it() -> None:
    """Side and sleeve seams first: the armhole is a round. The sleeve first: it is sewn in flat."""
    assert step("slipway-tee", "armhole").lies == "round"
    text, folder = text_of("slipway-tee")
    begin = text.index("seam side ")
    set_in, hems = text.index("seam armhole "), text.index("hem bottom ")
    flat = text[:begin] + text[set_in:hems] + text[begin:set_in] + text[hems:]
    armhole = next(each for each in steps_of(flat, folder) if each.name == "armhole")
    assert armhole.lies == "flat"


def test_the_order_of_independent_seams_is_that_of_the_text() -> None:
    text, folder = text_of("mudlark-trousers")
    inseam, crotch = text.index("seam inseam "), text.index("seam front-crotch ")
    side = text.index("seam side ")
    turned = text[:side] + text[inseam:crotch] + text[side:inseam] + text[crotch:]
    assert names(steps_of(turned, folder))[:2] == ["inseam", "side"]
