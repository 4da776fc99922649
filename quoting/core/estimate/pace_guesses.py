"""What has to be guessed to reckon a stitch in one yarn from the timings of another.

Limits are at 95 %, the trade's judgement: common practice, no source.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from enum import StrEnum

from quoting.core.ground.sameness import NEAR_DIGITS
from quoting.core.plan.gauge import ESTIMATED_LIMITS
from quoting.core.workshop.stitches import TIME_RATIO, Stitch
from quoting.core.workshop.timings import TimedStitch
from quoting.core.workshop.workshop import Workshop

"""Decimals to which limits are compared: sums of the same guesses are then the same."""


class Unknown(StrEnum):
    """What was never timed."""

    RATIO = "ratio"
    YARN = "yarn"
    TEXTURE = "texture"
    THICKNESS = "thickness"
    ROUNDS = "rounds"


GUESS_LIMITS = {
    Unknown.RATIO: ESTIMATED_LIMITS,
    Unknown.YARN: ESTIMATED_LIMITS,
    Unknown.TEXTURE: 0.50,
    Unknown.THICKNESS: 0.50,
    Unknown.ROUNDS: ESTIMATED_LIMITS,
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Guess:
    """That `what` takes as long as `like`, or as yarn-overs have it: all that rests on it errs.

    They are two basic stitches (ratio), a pattern and the stitch that it is like (texture), a motif
    and itself with other rounds (rounds), or two yarns, of one category (yarn) or not (thickness).
    """

    unknown: Unknown
    what: str
    like: str

    @property
    def limits(self) -> float:
        """How far off it may be, as a share."""
        return GUESS_LIMITS[self.unknown]


def limits_of(guesses: Iterable[Guess]) -> float:
    """Return how far off independent guesses may be together."""
    return math.hypot(*(guess.limits for guess in guesses))


class Likeness:
    """What the stitches and yarns of a workshop are like, for reckoning one from another."""

    def __init__(self, workshop: Workshop) -> None:
        self._patterns = {pattern.name: pattern.like for pattern in workshop.patterns}
        self._categories: Mapping[str, int | None] = {
            yarn.name: yarn.category for yarn in workshop.yarns
        }

    def kind(self, stitch: str) -> Stitch:
        """Return the basic stitch, a chain too, that a stitch takes its time from."""
        return self._patterns.get(stitch) or Stitch(stitch)

    def ratio(self, stitch: str, base: str) -> float:
        """Return how many times as long as another stitch this one takes, by yarn-overs."""
        return TIME_RATIO[self.kind(stitch)] / TIME_RATIO[self.kind(base)]

    def guesses(self, stitch: str, yarn: str, base: TimedStitch) -> tuple[Guess, ...]:
        """Return what is guessed when a stitch in a yarn is reckoned from a timed one."""
        return (
            *self._texture_guesses(stitch, base.stitch),
            *self._ratio_guesses(stitch, base.stitch),
            *self.yarn_guesses(yarn, base.yarn),
        )

    def nearest(self, stitch: str, yarn: str, timed: Iterable[TimedStitch]) -> TimedStitch:
        """Return the timed stitch to reckon from.

        Itself, where it was timed in any yarn; no other pattern while there is a basic stitch;
        then what leaves least to guess; then this yarn's, those that name no yarn; then the
        nearest in time. What is left goes by name, so the order of the timings never matters.
        """

        def distance(base: TimedStitch) -> tuple[object, ...]:
            ratio = self.ratio(stitch, base.stitch)
            return (
                base.stitch != stitch,
                base.stitch in self._patterns,
                round(limits_of(self.guesses(stitch, yarn, base)), NEAR_DIGITS),
                base.yarn != yarn,
                base.yarn is not None,
                max(ratio, 1 / ratio),
                base.stitch,
                base.yarn or "",
            )

        return min(timed, key=distance)

    def _texture_guesses(self, stitch: str, base: str) -> Iterator[Guess]:
        if stitch == base:
            return
        for name in (stitch, base):
            if name in self._patterns:
                yield Guess(unknown=Unknown.TEXTURE, what=name, like=self._patterns[name].value)

    def _ratio_guesses(self, stitch: str, base: str) -> Iterator[Guess]:
        kind, timed = self.kind(stitch), self.kind(base)
        if kind is not timed:
            yield Guess(unknown=Unknown.RATIO, what=kind.value, like=timed.value)

    def yarn_guesses(self, yarn: str, base: str | None) -> Iterator[Guess]:
        """Yield the guess between two yarns: a category that is not known is like no other."""
        if base is None or base == yarn:
            return
        mine = self._categories[yarn]
        alike = mine is not None and mine == self._categories[base]
        yield Guess(unknown=Unknown.YARN if alike else Unknown.THICKNESS, what=yarn, like=base)
