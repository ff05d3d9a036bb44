"""Owns running the packing library in a process of its own: a problem on standard input, reports on output.

Knows nothing of what becomes of the reports. The library cannot be interrupted, and what goes wrong inside of
it may end the process: so the process is one that anybody may kill. A line of output is one feasible layout,
as JSON: `report` counts all reports up to it, feasible or not.
"""

from __future__ import annotations

import json
import os
import sys
from threading import Thread
from time import sleep
from typing import Any, Final

_PAUSE: Final = 0.01  # seconds between two looks for reports
_LONG: Final = 1_000_000  # seconds: the end of the search is decided by who reads


def main() -> None:
    """Solve what stands on standard input.

    End after `reports` reports, or after `patience` reports without a layout; null is for ever.
    """
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
    count, vain, going = 0, 0, True
    while going:
        going = thread.is_alive()
        for kind, solution in queue.drain():
            count, vain = count + 1, vain + 1
            if kind in feasible:
                vain = 0
                _tell(count, solution)
            if count == told["reports"] or vain == told["patience"]:
                going = False
                break
        sleep(_PAUSE)
    sys.stdout.flush()
    os._exit(0)  # the library's thread cannot be asked to stop


def _tell(count: int, solution: Any) -> None:  # noqa: ANN401 - the library has no types at run time
    placed = [(item.id, item.rotation, *item.translation) for item in solution.placed_items]
    sys.stdout.write(json.dumps({"report": count, "length": solution.width, "placed": placed}) + "\n")
    sys.stdout.flush()


if __name__ == "__main__":
    main()
