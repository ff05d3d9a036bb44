"""Owns writing a document as one self-contained HTML page.

Style and fonts inside, no script, nothing to fetch.

Knows nothing of garments; what stands where is the templates' business.
"""

from __future__ import annotations

from itertools import groupby
from operator import attrgetter
from typing import TYPE_CHECKING

from jinja2 import Environment, FileSystemLoader, StrictUndefined
from markupsafe import Markup

from specc.assets import folder
from specc.backends.fonts import FAMILY, faces
from specc.backends.lettered import fit, quoted, to_html
from specc.backends.output import OutputFile
from specc.backends.svg import inline

if TYPE_CHECKING:
    from collections.abc import Iterable

    from specc.document.document import Document
    from specc.document.drawing import Drawing


def write(_document: Document, page: str) -> tuple[OutputFile, ...]:
    """The page as a file."""
    return (OutputFile("sheet.html", page.encode()),)


def page(document: Document) -> str:
    """The whole sheet as an HTML page."""
    environment = _environment()
    body = environment.get_template("body.html.j2").render(document=document)
    return environment.get_template("base.html.j2").render(
        document=document,
        body=Markup(body),  # noqa: S704 - rendered with escaping a line above
        faces=faces(f"{body}{document.block.foot}"),
        family=FAMILY,
    )


def _environment() -> Environment:
    environment = Environment(
        loader=FileSystemLoader(folder("templates")),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )
    environment.filters["text"] = to_html
    environment.filters["bare"] = fit
    environment.filters["quoted"] = quoted
    environment.filters["drawn"] = _drawn
    environment.filters["tabbed"] = _tabbed
    environment.filters["groupby_run"] = _runs
    return environment


def _drawn(drawing: Drawing) -> Markup:
    return inline(drawing, FAMILY)


def _tabbed(line: str) -> str:
    """A line of source whose columns, made of runs of blanks, line up in a font of unequal widths."""
    bare = fit(line.expandtabs(8))
    indent = len(bare) - len(bare.lstrip(" "))
    words = bare[indent:].split("  ")
    return bare[:indent] + "\t".join(word.strip() for word in words if word.strip())


def _runs(values: Iterable[object], attribute: str) -> tuple[tuple[object, tuple[object, ...]], ...]:
    """Neighbours with the same value of an attribute, together.

    The templates' own grouping would sort them.
    """
    return tuple((value, tuple(run)) for value, run in groupby(values, key=attrgetter(attribute)))
