"""Owns turning blocks into pieces, one size at a time: expressions evaluated, points found, edges drawn.

Knows nothing of alterations, of making or of paper.
"""

from specc.drafting.draft import Drafted, draft
from specc.drafting.evaluate import EvaluationError, Evaluator, PartLookup
from specc.drafting.finished import FinishedPieces
from specc.drafting.sizes import merged

__all__ = [
    "Drafted",
    "EvaluationError",
    "Evaluator",
    "FinishedPieces",
    "PartLookup",
    "draft",
    "merged",
]
