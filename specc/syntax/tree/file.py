"""Owns a whole file as it was written.

Knows nothing of what the words mean.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from specc.syntax.tree.alterations import Alter
from specc.syntax.tree.atoms import Broken
from specc.syntax.tree.attachments import Catch, SewOn
from specc.syntax.tree.blocks import Block
from specc.syntax.tree.charts import Chart
from specc.syntax.tree.closures import Closure
from specc.syntax.tree.demands import Accept, Expect, ExpectWithin, Measure
from specc.syntax.tree.makings import Finish, Method, Seam
from specc.syntax.tree.pieces import Piece
from specc.syntax.tree.plies import AlsoCut
from specc.syntax.tree.sheets import Label, Note, Sheet, UseFile, UseLibrary
from specc.syntax.tree.tracing import Grade

if TYPE_CHECKING:
    from specc.source import SourceFile


Declaration = (
    Sheet
    | AlsoCut
    | Label
    | Note
    | UseFile
    | UseLibrary
    | Chart
    | Block
    | Piece
    | Grade
    | Method
    | Alter
    | Seam
    | Finish
    | SewOn
    | Catch
    | Closure
    | Measure
    | Expect
    | ExpectWithin
    | Accept
    | Broken
)


class Tree(NamedTuple):
    """A whole file."""

    file: SourceFile
    declarations: tuple[Declaration, ...]
