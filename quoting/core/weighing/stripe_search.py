"""Repeats of single rows, of the same colours, that leave few ends.

A colour can be carried up when the rows between its two turns are even in number and within the
carry limit; otherwise it is cut. The search puts rows one after the other, round a repeat, and
keeps those orders that cut seldom; it looks at so many rows and no more.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from itertools import groupby, pairwise

LONGEST = 24
"""Rows of the longest repeat that is tried, unless the one asked is longer."""

LONGEST_EVER = 100
"""Rows of the longest repeat that is tried at all: the search goes as deep as a repeat is long."""

TRIES = 1500
"""Rows put down for each length of repeat and number of cuts before that search ends."""

TRIES_IN_ALL = 80_000
"""Rows put down before every search ends."""

KEPT = 6
"""Repeats kept of each length."""

SHARE_DRIFT = 0.10
RUN_GROWS = 2
"""No run of one colour may be longer than so many times the longest that was asked."""


@dataclass(frozen=True, slots=True)
class Repeat:
    """The colours of a repeat's rows, bottom up, and how many cuts one round of it makes."""

    colours: tuple[str, ...]
    cuts: int

    @property
    def cuts_a_row(self) -> float:
        """Cuts for each row worked."""
        return self.cuts / len(self.colours)

    @property
    def stripes(self) -> int:
        """Changes of colour each time round."""
        return sum(a != b for a, b in pairwise((*self.colours, self.colours[0])))

    @property
    def longest_run(self) -> int:
        """Rows of one colour together, at the most, round and round."""
        return longest_run(self.colours)

    @property
    def ring(self) -> tuple[str, ...]:
        """The same colours round and round, from wherever they come first in the alphabet."""
        doubled = (*self.colours, *self.colours)
        length = len(self.colours)
        return min(doubled[start : start + length] for start in range(length))

    def distance_from(self, asked: Sequence[str]) -> float:
        """Return the share of its rows that are in another colour than was asked there."""
        other = sum(c != asked[n % len(asked)] for n, c in enumerate(self.colours))
        return other / len(self.colours)


def calmer_repeats(
    asked: Sequence[str], carry_rows: int, tries: int = TRIES_IN_ALL
) -> list[Repeat]:
    """Return repeats of the colours of `asked`, about in its proportions, with half its cuts.

    Each colour's share of the rows is within a tenth of what it was, and no run of one colour is
    longer than twice the longest asked, so that stripes stay stripes. The search ends after so
    many `tries`, the shorter repeats first.
    """
    most = cuts_of(asked, carry_rows) / len(asked) / 2
    run = RUN_GROWS * longest_run(asked)
    found: list[Repeat] = []
    for length in range(2, min(LONGEST_EVER, max(LONGEST, len(asked))) + 1):
        counts = _counts(asked, length)
        if counts:
            search = _Search(asked, counts, carry_rows, int(most * length), run, tries)
            found += search.run()
            tries = search.left_in_all
    return found


def cuts_of(colours: Sequence[str], carry_rows: int) -> int:
    """Return how many strands are cut each time round a repeat."""
    doubled = [*colours, *colours]
    last: dict[str, int] = {}
    cuts = 0
    for index, colour in enumerate(doubled):
        if colour in last and index >= len(colours):
            cuts += not carries(index - last[colour], carry_rows)
        last[colour] = index
    return cuts


def longest_run(colours: Sequence[str]) -> int:
    """Return the rows of one colour together, at the most, round and round a repeat."""
    if len(set(colours)) == 1:
        return len(colours)
    turned = next(n for n, colour in enumerate(colours) if colour != colours[n - 1])
    ring = [*colours[turned:], *colours[:turned]]
    return max(len(list(run)) for _, run in groupby(ring))


def carries(distance: int, carry_rows: int) -> bool:
    """Return whether a colour goes on uncut from one row to that many rows on."""
    return distance == 1 or (distance % 2 == 1 and distance - 1 <= carry_rows)


def _counts(asked: Sequence[str], length: int) -> dict[str, int]:
    """Return the rows of each colour in a repeat of that length; none if they do not come out."""
    counts = {}
    for colour in dict.fromkeys(asked):
        share = asked.count(colour) / len(asked)
        count = round(share * length)
        if not count or abs(count / length / share - 1) > SHARE_DRIFT:
            return {}
        counts[colour] = count
    return counts if sum(counts.values()) == length else {}


@dataclass(slots=True)
class _Search:
    """Puts down the rows of one length of repeat, depth first; `last` is each colour's last row."""

    asked: Sequence[str]
    counts: Mapping[str, int]
    carry_rows: int
    most_cuts: int
    longest_run: int
    left_in_all: int
    tries: int = 0
    found: list[Repeat] = field(default_factory=list)

    def run(self) -> list[Repeat]:
        """Try to do with no cut, then with one, and so on."""
        for budget in range(self.most_cuts + 1):
            self.tries = min(TRIES, self.left_in_all)
            self._grow([], dict(self.counts), {}, budget)
            if self.found:
                break
        return self.found

    def _grow(
        self, rows: list[str], left: dict[str, int], last: dict[str, int], budget: int
    ) -> None:
        if not self.tries or len(self.found) >= KEPT:
            return
        self.tries -= 1
        self.left_in_all -= 1
        here = len(rows)
        if self._overdue(here, left, last) > budget:
            return
        if not any(left.values()):
            self._keep(rows)
            return
        for colour in self._choices(rows, left):
            cut = colour in last and not carries(here - last[colour], self.carry_rows)
            left[colour] -= 1
            self._grow([*rows, colour], left, last | {colour: here}, budget - cut)
            left[colour] += 1

    def _overdue(self, here: int, left: Mapping[str, int], last: Mapping[str, int]) -> int:
        """Return how many colours to come have waited too long to be carried any more."""
        return sum(
            here - last[colour] > self.carry_rows + 1
            for colour, count in left.items()
            if count and colour in last
        )

    def _keep(self, rows: list[str]) -> None:
        repeat = Repeat(tuple(rows), cuts_of(rows, self.carry_rows))
        is_calm = repeat.cuts <= self.most_cuts and repeat.longest_run <= self.longest_run
        if is_calm and not _is_repeated(rows):
            self.found.append(repeat)

    def _choices(self, rows: Sequence[str], left: Mapping[str, int]) -> Iterator[str]:
        """Yield the colours that may come next, the one asked for here first; no run too long."""
        wanted = self.asked[len(rows) % len(self.asked)]
        run = rows[-self.longest_run :]
        full = run[0] if len(run) == self.longest_run and len(set(run)) == 1 else None
        for colour in (wanted, *(colour for colour in left if colour != wanted)):
            if left.get(colour) and colour != full:
                yield colour


def _is_repeated(rows: list[str]) -> bool:
    """Return whether the rows are a shorter repeat several times over."""
    return any(
        len(rows) % length == 0 and rows[:length] * (len(rows) // length) == rows
        for length in range(1, len(rows) // 2 + 1)
    )
