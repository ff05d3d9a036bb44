"""Owns running the packing library in a process of its own: a problem on standard input, reports on output.

Knows nothing of what becomes of the reports. The library cannot be interrupted, and what goes wrong inside of
it may end the process: so the process is one that anybody may kill. A line of output is one report,
as JSON: its number, and what is placed where if its layout can be cut.
"""

from __future__ import annotations

import json
import os
import sys
from threading import Thread
from time import sleep
from typing import Any, Final

_PAUSE: Final = 0.01  # seconds between two looks for reports
_AGAIN: Final = 20  # pauses after which something is said though there is nothing new
_LONG: Final = 1_000_000  # seconds: the end of the search is decided by who reads


def main() -> None:
    """Solve what stands on standard input, until the process is ended or the library has enough."""
    import spyrrow  # noqa: PLC0415 - only this process needs it

    told = json.load(sys.stdin)
    items = [
        spyrrow.Item(name, [tuple(point) for point in outline], count, angles)
        for name, outline, count, angles in told["shapes"]
    ]
    strip = spyrrow.StripPackingInstance("", told["width"], items)
    config = spyrrow.StripPackingConfig(
        total_computation_time=None,
        exploration_time=_LONG,
        compression_time=_LONG,
        min_items_separation=told["gap"] or None,
        num_workers=told["workers"],
        seed=told["seed"],
    )
    queue = spyrrow.ProgressQueue()
    thread = Thread(target=lambda: strip.solve(config, queue), daemon=True)
    thread.start()
    kinds = spyrrow.ReportType
    feasible = (kinds.ExplFeas, kinds.CmprFeas, kinds.Final)
    number, quiet, going = 0, 0, True
    while going:
        going = thread.is_alive()
        for kind, solution in queue.drain():
            number, quiet = number + 1, 0
            _tell(number, solution if kind in feasible else None)
        quiet += 1
        if quiet % _AGAIN == 0:
            _tell(number, None)
        sleep(_PAUSE)
    os._exit(0)  # the library's thread cannot be asked to stop


def _tell(number: int, solution: Any) -> None:  # noqa: ANN401 - the library has no types at run time
    items = solution.placed_items if solution else ()
    placed = [(item.id, item.rotation, *item.translation) for item in items]
    try:
        sys.stdout.write(json.dumps({"report": number, "placed": placed}) + "\n")
        sys.stdout.flush()
    except OSError:  # nobody listens any more
        os._exit(0)


if __name__ == "__main__":
    main()
