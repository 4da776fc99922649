"""One colour's walk once more, pass by pass with plain lists, straight from the rules in words."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, field
from itertools import groupby

from quoting.core.estimate.strands import Visit

HAIR_M = 1e-6


@dataclass
class Hand:
    """What the walk comes to: strands as (ball, why, metres), and what is left of each ball."""

    left_m: list[float]
    tails_m: float
    strands: list[tuple[int, str, float]] = field(default_factory=list)
    parts: list[int] = field(default_factory=list)
    fresh: list[int] = field(default_factory=list)
    used_up: set[int] = field(default_factory=set)
    missing: bool = False
    long_pass: bool = False
    ball: int | None = None
    worked_m: float = 0.0
    scraps_wait: bool = False
    on_the_shelf: int = 0

    @property
    def sparing(self) -> bool:
        """Whether scraps wait: not before what is on the shelf was begun, if it has any yarn."""
        to_begin = (ball for ball in self.fresh if ball < self.on_the_shelf)
        return self.scraps_wait and all(self.left_m[ball] <= self.tails_m for ball in to_begin)

    def room_m(self) -> float:
        """Return what can still be worked of the ball in hand."""
        if self.ball is None:
            return math.inf
        return self.left_m[self.ball] - self.tails_m - self.worked_m

    def open(self, least_m: float, *wanted_m: float) -> None:
        """Take the first ball that can work so much, part balls first.

        Sparing, one that can work the first that is wanted, else the next, else the longest.
        """
        if self.sparing:
            rooms = [self.left_m[ball] - self.tails_m for ball in self.parts + self.fresh]
            enough = [length_m for length_m in wanted_m if self.has(length_m)]
            least_m = enough[0] if enough else max([least_m, *rooms])
        for balls in (self.parts, self.fresh):
            for ball in balls:
                if self.left_m[ball] - self.tails_m >= least_m - HAIR_M:
                    balls.remove(ball)
                    self.ball, self.worked_m = ball, 0.0
                    return
        self.missing, self.ball, self.worked_m = True, None, 0.0

    def has(self, length_m: float) -> bool:
        """Return whether one ball can work so much, so that none is joined in a small part."""
        balls = self.parts + self.fresh
        return any(self.left_m[ball] - self.tails_m >= length_m - HAIR_M for ball in balls)

    def close(self, why: str) -> None:
        """End the strand in hand."""
        taken_m = self.worked_m + self.tails_m
        self.strands.append((-1 if self.ball is None else self.ball, why, taken_m))
        if self.ball is None:
            return
        self.left_m[self.ball] -= taken_m
        if why == "ran out" or self.left_m[self.ball] <= self.tails_m:
            self.used_up.add(self.ball)
        else:
            self.parts.append(self.ball)


def walked_by_hand(
    visits: Sequence[Visit],
    balls_m: Sequence[float],
    *,
    tail_m: float,
    blankets: int,
    at_an_edge: bool,
    full_m: float = 0.0,
    on_the_shelf: int = 0,
) -> Hand:
    """Return the walk over so many blankets alike, each part as often as it is made."""
    hand = Hand(
        list(balls_m),
        2 * tail_m,
        fresh=list(range(len(balls_m))),
        scraps_wait=any(visit.scraps_wait for visit in visits),
        on_the_shelf=on_the_shelf,
    )
    held, edge_only = False, False
    lines = [list(line) for _, line in groupby(visits, key=lambda visit: visit.part)]
    for part in [line for line in lines for _ in range(line[0].copies)] * blankets:
        for number, visit in enumerate(part):
            goes_on = held and number > 0 and (visit.follows or visit.carry_m is not None)
            if held and not goes_on:
                hand.close("cut" if number else "finished")
            carry_m = (visit.carry_m or 0.0) if goes_on and not visit.follows else 0.0
            if not (goes_on and part[number - 1].bound_m):
                whole_m = visit.yarn_m + visit.bound_m
                fits = goes_on and hand.room_m() >= carry_m + whole_m - HAIR_M
                edge_only = at_an_edge and (fits or not too_long(hand, whole_m, full_m))
                hand.long_pass |= at_an_edge and not edge_only
            least_m = visit.yarn_m if edge_only else 2 * HAIR_M
            if goes_on and hand.room_m() < carry_m + least_m - HAIR_M:
                hand.close("ran out")
                goes_on = False
            elif goes_on:
                hand.worked_m += carry_m
            if not goes_on:
                least_m += visit.bound_m if edge_only else 0
                hand.open(least_m, one_strand_m(part[number:]), visit.yarn_m + visit.bound_m)
            work(hand, visit.yarn_m, one_strand_m(part[number:]))
            held = True
    if held:
        hand.close("finished")
    return hand


def one_strand_m(visits: Sequence[Visit]) -> float:
    """Return what a strand takes from its first visit until one begins another."""
    length_m = visits[0].yarn_m
    for visit in visits[1:]:
        if visit.begins:
            break
        length_m += visit.carried_m + visit.yarn_m
    return length_m


def too_long(hand: Hand, whole_m: float, full_m: float) -> bool:
    """Return whether no ball to come, or to be had, can finish so much."""
    if not hand.fresh and not full_m:
        return False
    rooms = [full_m, *(hand.left_m[ball] for ball in hand.fresh + hand.parts)]
    return all(room_m < whole_m + hand.tails_m - HAIR_M for room_m in rooms)


def work(hand: Hand, yarn_m: float, strand_m: float) -> None:
    """Work a pass of a strand, joining a ball wherever one runs out."""
    while yarn_m > hand.room_m() + HAIR_M:
        yarn_m, strand_m = yarn_m - hand.room_m(), strand_m - hand.room_m()
        hand.worked_m += hand.room_m()
        hand.close("ran out")
        hand.open(2 * HAIR_M, strand_m, yarn_m)
    hand.worked_m += yarn_m
