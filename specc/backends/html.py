"""Owns writing a document as HTML: the page that is read, and the same page as paper has it.

Style, fonts and a few lines of script inside, nothing to fetch: what is read forbids itself all else.

Knows nothing of garments; what stands where is the templates' business.
"""

from __future__ import annotations

from base64 import b64encode
from hashlib import sha256
from itertools import groupby
from operator import attrgetter
from typing import TYPE_CHECKING, NamedTuple

from jinja2 import Environment, FileSystemLoader, StrictUndefined
from markupsafe import Markup

from specc.assets import folder
from specc.backends.fonts import FAMILY, faces
from specc.backends.lettered import fit, quoted, to_html
from specc.backends.linked import fragment, linked
from specc.backends.output import OutputFile
from specc.backends.svg import inline
from specc.document.printed import Printed

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable

    from specc.document.document import Document
    from specc.document.drawing import Drawing
    from specc.document.link import Link
    from specc.document.printed import Origin, Text


class Pages(NamedTuple):
    """A document as an HTML page to be read on a screen, and as one to be printed."""

    screen: str
    paper: str


def write(_document: Document, pages: Pages) -> tuple[OutputFile, ...]:
    """The page that is read, as a file."""
    return (OutputFile("sheet.html", pages.screen.encode()),)


def pages(document: Document) -> Pages:
    """The whole sheet as HTML: what only a screen can show is left out of what is printed."""
    screen, paper = _environment(screen=True), _environment(screen=False)
    bodies = Pages(*(each.get_template("body.html.j2").render(document=document) for each in (screen, paper)))
    fonts = faces(f"{bodies.screen}{document.block.foot}")

    def whole(environment: Environment, body: str) -> str:
        style, script = (
            environment.get_template(name).render(document=document, faces=fonts, family=FAMILY)
            for name in ("style.css.j2", "script.js")
        )
        return environment.get_template("base.html.j2").render(
            document=document,
            style=Markup(style),  # noqa: S704 - from templates, what comes from a spec is quoted
            script=Markup(script),  # noqa: S704 - a file of ours
            allowed=f"style-src-elem '{_digest(style)}'; script-src '{_digest(script)}'",
            body=Markup(body),  # noqa: S704 - rendered with escaping above
        )

    return Pages(whole(screen, bodies.screen), whole(paper, bodies.paper))


def _digest(text: str) -> str:
    """The text as a source of a content security policy (CSP Level 3, 2.3.1 and 6.7.3.3)."""
    return f"sha256-{b64encode(sha256(text.encode()).digest()).decode('ascii')}"


def _environment(*, screen: bool) -> Environment:
    environment = Environment(
        loader=FileSystemLoader(folder("templates")),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )
    environment.globals["screen"] = screen
    environment.globals["note"] = _Notes().note
    environment.filters["text"] = _in_both_units if screen else _in_own_unit
    environment.filters["linked"] = _linked(environment.filters["text"])
    environment.filters["fragment"] = fragment
    environment.filters["bare"] = fit
    environment.filters["quoted"] = quoted
    environment.filters["drawn"] = _drawn
    environment.filters["tabbed"] = _tabbed
    environment.filters["groupby_run"] = _runs
    return environment


class Note(NamedTuple):
    """Where a number comes from, told once on the page; `first` is whether it has not been told before."""

    name: str
    first: bool


class _Notes:
    """The notes of a page, numbered as they come."""

    def __init__(self) -> None:
        self._names: dict[Origin, str] = {}

    def note(self, origin: Origin) -> Note:
        """The note of an origin."""
        first = origin not in self._names
        return Note(self._names.setdefault(origin, f"from-{len(self._names) + 1}"), first)


def _in_own_unit(text: Text) -> Markup:
    return to_html(str(text))


def _in_both_units(text: Text) -> Markup:
    """Both writings, of which the style shows one."""
    if not isinstance(text, Printed) or not text.other:
        return to_html(str(text))
    return Markup('<span class="own">{}</span><span class="other">{}</span>').format(
        to_html(text.text), to_html(text.other)
    )


def _linked(written: Callable[[Text], Markup]) -> Callable[[Text, tuple[Link, ...], int], Markup]:
    """How a text with links is written, when one without them is `written` so."""

    def write_linked(text: Text, links: tuple[Link, ...], of: int) -> Markup:
        own = [link for link in links if link.of == of]
        return linked(str(text), own) if own else written(text)

    return write_linked


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
