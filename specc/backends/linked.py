"""Owns setting a text in HTML whose parts lead to other places of the same page. Knows nothing of those."""

from __future__ import annotations

from typing import TYPE_CHECKING
from urllib.parse import quote

from markupsafe import Markup

from specc.backends.lettered import fit, to_html

if TYPE_CHECKING:
    from collections.abc import Iterable

    from specc.document.link import Link


def linked(text: str, links: Iterable[Link]) -> Markup:
    """The text, escaped, with its links."""
    parts: list[Markup] = []
    end = 0
    for link in links:
        parts += (to_html(text[end : link.start]), _one(text[link.start : link.end], link.to))
        end = link.end
    return Markup("").join((*parts, to_html(text[end:])))


def fragment(place: str) -> str:
    """A place as the part of an address behind `#` (RFC 3986, 3.5)."""
    return quote(fit(place), safe="/")


def _one(text: str, to: str) -> Markup:
    return Markup('<a href="#{}">{}</a>').format(fragment(to), to_html(text))
