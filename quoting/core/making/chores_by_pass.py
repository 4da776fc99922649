"""What is laid out and joined with each motif or seam, so that ticks tell how much is done."""

from __future__ import annotations

from collections.abc import Iterator

from quoting.core.estimate.workload import TURN
from quoting.core.plan.parts import PartKind
from quoting.core.plan.passes import Plan

BY_ORDER = ("block_motif",)
"""What is done to a whole blanket once it is made."""

LAYING_OUT = ("lay_out", "lay_out_motif")
"""What is done with the motifs, however they are joined."""


def chores_by_pass(plan: Plan) -> list[dict[str, float]]:
    """Return for each pass of a plan what is done with one copy of it, by the name of its minutes.

    Motifs are laid out as they are made, and what is sewn or worked together in one round of all is
    joined seam by seam, as long as they are; all other joins are worked with the motifs. A
    blanket in one piece has the same with each row. Together it is what the plan has of them in one
    blanket.
    """
    found: list[dict[str, float]] = [{} for _ in plan.passes]
    for name, count in plan.chores.items():
        if name in (*BY_ORDER, TURN):
            continue
        lengths = dict(_carriers(name, plan))
        whole = sum(lengths[index] * plan.times(plan.passes[index]) for index in lengths)
        for index, length in lengths.items():
            found[index][name] = count * length / whole
    return found


def _carriers(name: str, plan: Plan) -> Iterator[tuple[int, float]]:
    """Yield the passes that a chore is done with, and how much of it there is with each."""
    joins, motifs, rows = list[int](), list[int](), list[int]()
    for index, worked in enumerate(plan.passes):
        kind = plan.part_of(worked).kind
        if kind in (PartKind.SEAM, PartKind.EDGING):
            joins.append(index)
        elif kind is PartKind.MOTIF and worked.number == 1:
            motifs.append(index)
        elif kind is PartKind.WHOLE and worked.in_body:
            rows.append(index)
    for index in (motifs or joins or rows) if name in LAYING_OUT else (joins or motifs or rows):
        yield index, plan.passes[index].sewn_m or 1.0
