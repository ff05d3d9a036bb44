"""Owns a block under another name: its pieces renamed, and what it says of them.

Knows nothing of what the statements of a block mean.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from specc.syntax import tree

if TYPE_CHECKING:
    from collections.abc import Mapping


def renamed(block: tree.Block, renaming: tree.Renaming | None) -> tree.Block:
    """The block as `use block … as NAME` wants it; places stay those of the block's own text.

    The one piece of a block bears the name itself; of several each bears it before its own: `lining-front`.
    """
    if renaming is None:
        return block
    pieces = [item for item in block.body if isinstance(item, tree.Piece)]
    alone = len(pieces) == 1
    names = {piece.name.text: _name(piece, renaming, alone=alone) for piece in pieces}
    body = tuple(
        _titled(item, renaming, alone=alone) if isinstance(item, tree.Piece) else item for item in block.body
    )
    return block._replace(body=_spoken(body, names))


def _name(piece: tree.Piece, renaming: tree.Renaming, *, alone: bool) -> str:
    return renaming.name.text if alone else f"{renaming.name.text}-{piece.name.text}"


def _titled(piece: tree.Piece, renaming: tree.Renaming, *, alone: bool) -> tree.Piece:
    """The piece with a title that tells it from the same piece of another use of the block."""
    place = renaming.title or renaming.name
    title = renaming.title.text if renaming.title else renaming.name.text.replace("-", " ")
    own = piece.title.text if piece.title else piece.name.text
    return piece._replace(title=tree.Text(title if alone else f"{title}, {own}", place.span))


# A tree is named tuples within tuples: whatever a node is, its fields are looked through.
def _spoken(node: Any, names: Mapping[str, str]) -> Any:  # noqa: ANN401
    """The node with every piece by its new name, where it is declared and where `piece.part` is spoken of."""
    if isinstance(node, tree.Piece) or (isinstance(node, tree.Ref) and node.second is not None):
        owner = node.name if isinstance(node, tree.Piece) else node.first
        new = owner._replace(text=names.get(owner.text, owner.text))
        node = node._replace(name=new) if isinstance(node, tree.Piece) else node._replace(first=new)
    if isinstance(node, tuple):
        parts = tuple(_spoken(part, names) for part in node)
        return type(node)(*parts) if hasattr(node, "_fields") else parts
    return node
