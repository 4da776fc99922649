"""The steps of a guide: stripes, and stripes that are repeated, folded into one.

A step takes the stripes from where the last one ended: of all repeats that begin there, the one
that covers most of them, and of those that cover as much the shortest; one stripe where nothing
repeats. Which lengths can repeat is read off for all of them at once (the Z array of Gusfield's
*Algorithms on Strings, Trees and Sequences*, 1997: how far each suffix agrees with the whole),
within twice LONGEST stripes; a length that is a multiple of one that repeats covers no more than
that does. A repeat is then followed as long as it goes on, and all that is followed is covered by
the step, so that the work is in proportion to the stripes, times a constant.

Stripes repeat if they are worked alike. What is done with the yarn may differ where the first
repeat begins and the last one ends, and nowhere else, so that a step tells it without loss.
"""

from __future__ import annotations

from collections.abc import Hashable, Iterator, Sequence
from dataclasses import dataclass

from quoting.core.estimate.row_guide import Act
from quoting.core.guide.stripes import Stripe
from quoting.core.plan.passes import Pass

LONGEST = 60
"""Stripes of a repeat, at most."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """One stripe of a step: `worked` is its first row, of the first repeat.

    `begins` and `ends_last` are what is done with its yarn in the first repeat and in the last,
    `begins_again` and `ends` in all others.
    """

    rows: int
    worked: Pass
    begins: Act | None
    begins_again: Act | None
    ends: Act | None
    ends_last: Act | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """Its parts one after the other, so many `times`, from the pass at an index on."""

    at: int
    parts: tuple[Part, ...]
    times: int

    @property
    def rows(self) -> int:
        """The rows of one repeat."""
        return sum(part.rows for part in self.parts)

    @property
    def after(self) -> int:
        """The index of the pass that comes after the step."""
        return self.at + self.rows * self.times

    def __contains__(self, pass_index: int) -> bool:
        return self.at <= pass_index < self.after


def steps_of(stripes: Sequence[Stripe]) -> Iterator[Step]:
    """Yield the steps, in the order worked: together they are all the stripes, each once."""
    works = [stripe.work for stripe in stripes]
    first = 0
    while first < len(stripes):
        length, times = _best_repeat(stripes, works, first)
        yield _step(stripes[first : first + length * times], length)
        first += length * times


def _step(stripes: Sequence[Stripe], length: int) -> Step:
    again = stripes[length : 2 * length] or stripes[:length]
    last = stripes[-length:]
    parts = (
        Part(
            rows=stripe.rows,
            worked=stripe.worked,
            begins=stripe.begins,
            begins_again=later.begins,
            ends=stripe.ends,
            ends_last=latest.ends,
        )
        for stripe, later, latest in zip(stripes[:length], again, last, strict=True)
    )
    return Step(at=stripes[0].at, parts=tuple(parts), times=len(stripes) // length)


def _best_repeat(
    stripes: Sequence[Stripe], works: Sequence[Hashable], first: int
) -> tuple[int, int]:
    """Return how many stripes repeat from one on, and how many times they are worked."""
    agreeing = agreements(works[first : first + 2 * LONGEST])
    best, tried = (1, 1), list[int]()
    for length in range(1, len(agreeing) // 2 + 1):
        if agreeing[length] < length or any(length % shorter == 0 for shorter in tried):
            continue
        tried.append(length)
        times = _times(stripes, works, first, length)
        if times > 1 and length * times > best[0] * best[1]:
            best = (length, times)
    return best


def _times(stripes: Sequence[Stripe], works: Sequence[Hashable], first: int, length: int) -> int:
    """Return how many times so many stripes are worked from one on, the yarn handled alike."""
    times, start = 1, first + length
    while _goes_on(stripes, works, first, start, length):
        times, start = times + 1, start + length
    return times


def _goes_on(
    stripes: Sequence[Stripe], works: Sequence[Hashable], first: int, start: int, length: int
) -> bool:
    """Return whether the repeat goes on with the stripes from `start`, the next after others."""
    if works[start : start + length] != works[first : first + length]:
        return False
    if start == first + length:
        return True
    again, before = first + length, start - length
    return all(
        stripes[start + place].begins is stripes[again + place].begins
        and stripes[before + place].ends is stripes[first + place].ends
        for place in range(length)
    )


def agreements(items: Sequence[Hashable]) -> list[int]:
    """Return for each place how many items from there on are those from the beginning on."""
    agreeing = [len(items)] + [0] * (len(items) - 1)
    left = right = 0
    for place in range(1, len(items)):
        if place < right:
            agreeing[place] = min(right - place, agreeing[place - left])
        while (
            place + agreeing[place] < len(items)
            and items[agreeing[place]] == items[place + agreeing[place]]
        ):
            agreeing[place] += 1
        if place + agreeing[place] > right:
            left, right = place, place + agreeing[place]
    return agreeing
