"""What to do with the yarn in each row and round: start, carry up, leave waiting, join, fasten off.

It is read from the strands of a quote, in the order of the work.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from enum import StrEnum
from itertools import pairwise

from quoting.core.passes import Edge
from quoting.core.strands import Strand, Why


class Act(StrEnum):
    """What is done with a yarn."""

    CARRY_UP = "carry up"
    START = "start"
    JOIN = "join"
    WAIT = "wait"
    CUT = "cut"
    FASTEN_OFF = "fasten off"


@dataclass(frozen=True, slots=True, kw_only=True)
class RowNote:
    """One thing to do in a row or round: with which colour, and at which edge."""

    act: Act
    colour: str
    edge: Edge


def row_notes(strands: Sequence[Strand], passes: int, piece: int = 0) -> list[list[RowNote]]:
    """Return the notes of each of so many passes of one blanket, in the order they are done.

    `strands` are those of the estimate. The time it takes grows with strands, carries and passes.
    """
    notes: list[list[RowNote]] = [[] for _ in range(passes)]
    mine = [strand for strand in strands if strand.starts.piece == piece]
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
    for colour, own in by_colour.items():
        ran_out = [False, *(before.why is Why.RAN_OUT for before, _ in pairwise(own))]
        for strand, joined in zip(own, ran_out, strict=True):
            begins = RowNote(
                act=Act.JOIN if joined else Act.START, colour=colour, edge=strand.starts.edge
            )
            yield strand.starts.pass_index, begins
            for carry in strand.carries:
                yield carry.from_pass, RowNote(act=Act.WAIT, colour=colour, edge=carry.edge)
                yield carry.to_pass, RowNote(act=Act.CARRY_UP, colour=colour, edge=carry.edge)
            yield from _ending(strand, last=strand is own[-1])


def _ending(strand: Strand, *, last: bool) -> Iterator[tuple[int, RowNote]]:
    """Yield how a strand ends; one that ran out is told by the ball joined to it."""
    if strand.why is Why.RAN_OUT and not last:
        return
    act = Act.FASTEN_OFF if last else Act.CUT
    yield strand.ends.pass_index, RowNote(act=act, colour=strand.colour, edge=strand.ends.edge)


_SAID = {
    Act.CARRY_UP: "carry up {edge}",
    Act.START: "start {colour} {edge}",
    Act.JOIN: "join a new ball {edge}",
    Act.WAIT: "leave it waiting {edge}",
    Act.CUT: "cut {edge}",
    Act.FASTEN_OFF: "fasten off {edge}",
}

_EDGES = {
    Edge.START: "at the start edge",
    Edge.FAR: "at the far edge",
    Edge.WITHIN: "within the row",
}


def row_note_words(note: RowNote) -> str:
    """Return a note as a maker would say it: `carry up at the far edge`.

    The yarn is that of the row, which is said beside it.
    """
    return _SAID[note.act].format(colour=note.colour, edge=_EDGES[note.edge])


def notes_sentence(notes: Sequence[RowNote]) -> str:
    """Return the notes of one row as one sentence; empty where there is nothing to do."""
    said = "; ".join(row_note_words(note) for note in notes)
    return f"{said[:1].upper()}{said[1:]}." if said else ""
