"""Owns the search for better layouts of all lays of a garment, several at a time, for as long as is wanted.

Knows nothing of files, nor of how progress is shown. Unlike the stages it depends on time and luck: what it
finds is worth writing down.
"""

from __future__ import annotations

from dataclasses import dataclass
from queue import SimpleQueue
from threading import Event, Thread
from time import monotonic
from typing import TYPE_CHECKING

from specc.packing import WORKERS, Layout, SearchFailedError, faults, quick, search

if TYPE_CHECKING:
    from collections.abc import Generator, Iterator, Mapping, Sequence

    from specc.laying.cloth import Wanted
    from specc.packing import Report, Strip


@dataclass(frozen=True, slots=True)
class Improved:
    """A lay, the `number`-th of `count`, and the shortest layout of it that is known so far.

    `done` when its search has ended.
    """

    wanted: Wanted
    number: int
    count: int
    layout: Layout
    done: bool

    @property
    def said(self) -> str:
        """The lay, its length and how much of it is used, in words."""
        share = self.layout.share(self.wanted.strip)
        return f"{self.wanted.called}: {self.layout.length:.0f} mm, {share:.1%} used"


def improve(
    wanted: Sequence[Wanted], known: Mapping[str, Layout], *, seconds: float, jobs: int
) -> Generator[Improved]:
    """Each lay with what is known of it, then whatever is found that is shorter, and again when it is done.

    A lay that is not `known`, by its key, begins with a quick plan. The lays come one after the other, each
    on `jobs` processors and with a share of the `seconds` by the number of its pieces; what one
    leaves over is for the others. Closing the iterator ends the searches; it may take a moment.
    """
    left = sum(_weight(each.strip) for each in wanted)
    end = monotonic() + seconds
    for number, each in enumerate(wanted, start=1):
        until = monotonic() + (end - monotonic()) * _weight(each.strip) / left
        left -= _weight(each.strip)
        best = known[each.key] if each.key in known else quick(each.strip)
        yield Improved(each, number, len(wanted), best, done=False)
        for layout in _shorter(each.strip, best.length, until, jobs):
            best = layout
            yield Improved(each, number, len(wanted), best, done=False)
        yield Improved(each, number, len(wanted), best, done=True)


def _weight(strip: Strip) -> int:
    return sum(shape.count for shape in strip.shapes)


def _shorter(strip: Strip, length: float, until: float, jobs: int) -> Iterator[Layout]:
    """Layouts ever shorter than `length`, from searches with as many seeds, until it is time."""
    if strip.is_shortest(length):
        return
    stop, found = Event(), SimpleQueue[Layout | None]()
    # Two workers on one search find more than two searches of one worker each: measured, see the benchmark.
    workers = min(jobs, WORKERS)
    running = jobs // workers
    threads = [
        Thread(target=_look, args=(search(strip, seed=seed, workers=workers), until, stop, found))
        for seed in range(1, running + 1)
    ]
    for thread in threads:
        thread.start()
    try:
        while running and not strip.is_shortest(length):
            layout = found.get()
            if layout is None:
                running -= 1
            elif layout.length < length and not faults(strip, layout):
                length = layout.length
                yield layout
    finally:
        stop.set()
        for thread in threads:
            thread.join()


def _look(reports: Iterator[Report], until: float, stop: Event, found: SimpleQueue[Layout | None]) -> None:
    """Put the layouts of one search into the queue, and None at its end."""
    try:
        for report in reports:
            if report.layout is not None:
                found.put(report.layout)
            if stop.is_set() or monotonic() > until:
                break
    except SearchFailedError:
        pass
    finally:
        found.put(None)
