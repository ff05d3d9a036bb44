"""SVG files, as drawing programs write them and as nobody should."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from specc.source import SourceFile
from specc.syntax.drawing import read_drawing

if TYPE_CHECKING:
    from specc.syntax.tree import Drawing

HEAD = '<svg xmlns="http://www.w3.org/2000/svg" xmlns:ink="http://example.org/ink">'


def drawing(body: str, *, head: str = HEAD) -> Drawing:
    found, said = read_drawing(SourceFile("front.svg", f"{head}{body}</svg>"))
    assert said == ()
    assert found is not None
    return found


def refused(text: str) -> str:
    found, (said,) = read_drawing(SourceFile("front.svg", text))
    assert found is None
    assert said.code.id == "SPC230"
    return said.message.partition(": ")[2]


def test_lines_are_kept_by_their_ids_with_all_that_moves_them() -> None:
    found = drawing(
        """<g transform="translate(1 2)"><ink:layer><a transform="scale(2)">
        <path id="side" transform="rotate(3)" d="M 0 0 H 10"/></a></ink:layer></g>
        <line id="top" x1="1" x2="5.5" y2="3"/><polygon id="whole" points="0,0 1,0 1,1"/>
        <polyline id="hem" points="0,0 1,0"/><path d="M 0 0 H 3"/><text id="title">A</text>"""
    )

    assert {name: (path.data, path.transforms, path.fault) for name, path in found.paths.items()} == {
        "side": ("M 0 0 H 10", ("translate(1 2)", "scale(2)", "rotate(3)"), None),
        "top": ("M 1 0 L 5.5 3", (), None),
        "whole": ("M 0,0 1,0 1,1 Z", (), None),
        "hem": ("M 0,0 1,0", (), None),
    }


def test_the_place_of_a_line_is_that_of_its_element_whatever_letters_stand_before() -> None:
    text = f'{HEAD}<!-- drawn in Müllers Hof, ½ size -->\n<path id="é" d="M 0 0 H 1"/></svg>'
    found, _ = read_drawing(SourceFile("front.svg", text))

    assert found is not None
    span = found.paths["é"].span
    assert (span.line, span.column, span.text) == (2, 1, "<")


def test_a_drawing_without_a_namespace_is_read_too() -> None:
    assert list(drawing('<path id="a" d="M 0 0 H 1"/>', head="<svg>").paths) == ["a"]


@pytest.mark.parametrize(
    ("body", "fault"),
    [
        ('<svg><path id="a" d="M 0 0 H 1"/></svg>', "it stands within `svg`"),
        ('<defs><marker><path id="a" d="M 0 0 H 1"/></marker></defs>', "it stands within `marker`"),
        ('<path id="a" style="transform: none" d="M 0 0 H 1"/>', "it is moved by CSS"),
        ('<g style="transform:scale(2)"><path id="a" d="M 0 0 H 1"/></g>', "it is moved by CSS"),
        ('<path id="a" d="M 0 0 H 1"/><style>path { transform: none }</style>', "it is moved by CSS"),
        ('<circle id="a" r="3"/>', "it is a `circle`: turn it into a path"),
        (f'<path id="a" d="{"M 0 0 " * 40_000}"/>', "it is longer than 200,000 characters"),
    ],
)
def test_what_cannot_be_told_from_the_file_is_a_fault(body: str, fault: str) -> None:
    assert drawing(body).paths["a"].fault == fault


@pytest.mark.parametrize(
    "body", ['<symbol/><path id="a" d="M 0 0 H 1"/>', '<defs><path id="a" d="M 0 0 H 1"/></defs>']
)
def test_what_stands_beside_such_an_element_is_none(body: str) -> None:
    assert drawing(body).paths["a"].fault is None


@pytest.mark.parametrize(
    ("text", "reason"),
    [
        ("", "it is not well-formed XML here"),
        ("no drawing", "it is not well-formed XML here"),
        (f"{HEAD}<path id='a'>", "it is not well-formed XML here"),
        ("<html/>", "its outermost element is `html`, not `svg`"),
        (
            '<!DOCTYPE svg [<!ENTITY a "b">]><svg>&a;</svg>',
            "it declares the entity `a`, and no entity is read",
        ),
        (
            '<!DOCTYPE svg [<!ENTITY % a SYSTEM "file:///etc/passwd"> %a;]><svg/>',
            "it declares the entity `a`, and no entity is read",
        ),
        (f"{HEAD}{'<g>' * 200}", "it has more than 100,000 elements, or nests them deeper than 100"),
        (
            f"{HEAD}{'<g/>' * 100_001}</svg>",
            "it has more than 100,000 elements, or nests them deeper than 100",
        ),
        (f"{HEAD}\x00</svg>", "it is not well-formed XML here"),
        (f"{HEAD}\ud800</svg>", "it is not well-formed XML here"),
    ],
    ids=range(10),
)
def test_what_is_no_drawing_is_refused_with_the_reason(text: str, reason: str) -> None:
    assert refused(text) == reason


def test_a_document_type_alone_is_passed_over_and_nothing_is_fetched() -> None:
    doctype = (
        '<!DOCTYPE svg PUBLIC "-//W3C//DTD SVG 1.1//EN" "http://www.w3.org/Graphics/SVG/1.1/DTD/svg11.dtd">'
    )

    assert list(drawing('<path id="a" d="M 0 0 H 1"/>', head=doctype + HEAD).paths) == ["a"]
