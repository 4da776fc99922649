"""What a maker follows row by row: what to do with the yarn, how many chains, how high it is.

It is read from the passes and the strands of a quote, in the order of the work.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from enum import StrEnum
from itertools import pairwise

from quoting.core.estimate.strands import Strand, Why
from quoting.core.plan.passes import Edge, Pass, Plan, Work
from quoting.core.workshop.stitches import Stitch
from quoting.core.workshop.workshop import Workshop

BOTH_ENDS = 2


class Act(StrEnum):
    """What is done with a yarn, in the order that it is done within a pass."""

    CARRY_UP = "carry-up"
    START = "start"
    JOIN = "join"
    WAIT = "wait"
    CUT = "cut"
    FASTEN_OFF = "fasten-off"


@dataclass(frozen=True, slots=True, kw_only=True)
class RowNote:
    """One thing to do in a row or round: with which colour, and at which edge."""

    act: Act
    colour: str
    edge: Edge


def row_notes(strands: Sequence[Strand], passes: int, blanket: int = 0) -> list[list[RowNote]]:
    """Return the notes of each of so many passes of one blanket, in the order they are done.

    `strands` are those of the estimate. The time it takes grows with strands, carries and passes.
    """
    notes: list[list[RowNote]] = [[] for _ in range(passes)]
    mine = [strand for strand in strands if strand.starts.blanket == blanket]
    found = sorted(_all_notes(mine), key=lambda found: _ORDER[found[1].act])
    for index, note in found:
        notes[index].append(note)
    return notes


_ORDER = {act: place for place, act in enumerate(Act)}


def _all_notes(strands: Sequence[Strand]) -> Iterator[tuple[int, RowNote]]:
    """Yield each note with the pass that it belongs to."""
    by_colour: dict[str, list[Strand]] = {}
    for strand in strands:
        by_colour.setdefault(strand.colour, []).append(strand)
    for own in by_colour.values():
        joined = [False, *(before.why is Why.RAN_OUT for before, _ in pairwise(own))]
        for strand, is_joined in zip(own, joined, strict=True):
            yield strand.starts.pass_index, _begins(strand, joined=is_joined)
            yield from _carrying(strand)
            yield from _ending(strand, last=strand is own[-1])


def _begins(strand: Strand, *, joined: bool) -> RowNote:
    act = Act.JOIN if joined else Act.START
    return RowNote(act=act, colour=strand.colour, edge=strand.starts.edge)


def _carrying(strand: Strand) -> Iterator[tuple[int, RowNote]]:
    for carry in strand.carries:
        yield carry.from_pass, RowNote(act=Act.WAIT, colour=strand.colour, edge=carry.edge)
        yield carry.to_pass, RowNote(act=Act.CARRY_UP, colour=strand.colour, edge=carry.edge)


def _ending(strand: Strand, *, last: bool) -> Iterator[tuple[int, RowNote]]:
    """Yield how a strand ends; one that ran out is told by the ball joined to it.

    What ends a motif, a seam or a blanket is fastened off, and so is a colour that is done with.
    """
    if strand.why is Why.RAN_OUT and not last:
        return
    done = last or strand.why is Why.FINISHED
    act = Act.FASTEN_OFF if done else Act.CUT
    yield strand.ends.pass_index, RowNote(act=act, colour=strand.colour, edge=strand.ends.edge)


def heights_cm(plan: Plan) -> Iterator[float]:
    """Yield the height of the blanket after each pass; a round adds at both ends."""
    height = 0.0
    for worked in plan.passes:
        height += worked.height_cm * (BOTH_ENDS if worked.work is Work.ROUND else 1)
        yield height


def chains_made(worked: Pass, plan: Plan, workshop: Workshop) -> int:
    """Return the chains to make: the foundation, those that turn a row, those at corners."""
    if worked.work is Work.CHAIN:
        return plan.foundation_chain
    if worked.work is Work.ROW:
        return workshop.turning_chain(worked.stitch).chains if worked.number > 1 else 0
    return worked.stitches.get(Stitch.CH, 0)


def counting_stitches(plan: Plan, workshop: Workshop) -> tuple[str, ...]:
    """Return the stitches of the rows whose turning chain counts as one of them."""
    worked = dict.fromkeys(row.stitch for row in plan.of_work(Work.ROW))
    return tuple(stitch for stitch in worked if workshop.turning_chain(stitch).counts)
