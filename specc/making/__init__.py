"""Owns putting the altered pieces together: seams walked, edges used, finishes laid along rounds.

Knows nothing of amounts to buy, nor of paper.
"""

from specc.making.assemble import assemble
from specc.making.assembly import Assembly, SizeAssembly
from specc.making.cut_lines import cut

__all__ = ["Assembly", "SizeAssembly", "assemble", "cut"]
