"""Owns values computed on demand and kept: each once, none in a circle, on trial while the trial lasts.

Knows nothing of what the values are.
"""

from __future__ import annotations

from contextlib import contextmanager
from typing import TYPE_CHECKING, Final

from specc.drafting.evaluate import EvaluationError

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from specc.diagnostics import Diagnostic

Key = tuple[str, str, str]
"""The kind of a thing, the block or piece it belongs to, its name."""

DEEPEST: Final = 40
"""How many values may wait for one another: more than drafts need, fewer than the interpreter bears."""


class Lazy:
    """Keeps what was computed under a key, and for how many trials it holds.

    While an unknown is on trial, what depends on it is kept in a layer of its own, which the next trial value
    empties; what does not depend on it stays. A mask has a bit for each unknown on trial that a value needs.
    """

    def __init__(
        self,
        compute: Callable[[Key], object],
        circle: Callable[[tuple[Key, ...]], Diagnostic],
        too_deep: Callable[[tuple[Key, ...]], Diagnostic],
    ) -> None:
        self._compute = compute
        self._circle = circle
        self._too_deep = too_deep
        self._layers: list[dict[Key, tuple[object, int]]] = [{}]
        # A thing may wait for itself across a trial only: it is then another, found for the value on trial.
        self._running: list[tuple[Key, int]] = []
        self._masks: list[int] = [0]

    def get(self, key: Key) -> object:
        """The value under a key; raises EvaluationError, each time anew, where there is none."""
        for layer in self._layers:
            if key in layer:
                found, mask = layer[key]
                break
        else:
            found, mask = self._computed(key)
            self._layers[mask.bit_length()][key] = found, mask
        self._masks[-1] |= mask
        if isinstance(found, EvaluationError):
            raise EvaluationError(found.diagnostic)
        return found

    def _computed(self, key: Key) -> tuple[object, int]:
        entry = key, len(self._layers)
        waiting = tuple(running for running, _ in self._running)
        if entry in self._running:
            raise EvaluationError(self._circle(waiting[self._running.index(entry) :]))
        if len(waiting) >= DEEPEST:
            raise EvaluationError(self._too_deep((*waiting, key)))
        self._running.append(entry)
        self._masks.append(0)
        try:
            found = self._compute(key)
        except EvaluationError as error:
            found = error
        finally:
            self._running.pop()
            mask = self._masks.pop()
        return found, mask

    @contextmanager
    def on_trial(self, key: Key, function: Callable[[], float]) -> Iterator[Callable[[float], float]]:
        """`function` as a function of the value under `key`; what needed that is forgotten at the end."""
        layer = len(self._layers)
        bit = 1 << (layer - 1)
        self._layers.append({})

        def tried(value: float) -> float:
            self._layers[layer] = {key: (value, bit)}
            return function()

        try:
            yield tried
        finally:
            self._layers.pop()
            self._masks[-1] &= ~bit
