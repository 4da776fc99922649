"""What rows, rounds and edges are called, and how a place in the work is told."""

from __future__ import annotations

from collections.abc import Sequence

from quoting.core.estimate.strands import Point
from quoting.core.plan.gauge import BY_SWATCH
from quoting.core.plan.parts import PartKind
from quoting.core.plan.passes import Edge, Pass, Plan, Work
from quoting.wording.phrases import capitalized
from quoting.wording.speech import Speech

_WORKS = {
    Work.CHAIN: "foundation chain",
    Work.ROW: "row",
    Work.ROUND: "round",
    Work.SEAM: "seam",
}

_EDGES = {Edge.START: "right-hand", Edge.FAR: "left-hand"}
_MIRRORED = {Edge.START: "left-hand", Edge.FAR: "right-hand"}

_WITHIN = {
    Work.CHAIN: "within the chain",
    Work.ROW: "within the row",
    Work.ROUND: "within the round",
    Work.SEAM: "within the seam",
}

_EDGES_EXPLAINED = (
    "Edges are told with the right side facing, row 1 being on that side: it begins at "
    "{edge}{hand}."
)


def edges_explained(speech: Speech) -> str:
    """Return how edges are told, in a sentence."""
    edge = edge_words(Edge.START, Work.ROW, speech)
    hand = ", as you work left-handed" if speech.left_handed else ""
    return _EDGES_EXPLAINED.format(edge=edge, hand=hand)


def pass_words(worked: Pass) -> str:
    """Return what a row or round is called: `row 12`, `border round 1`."""
    kind = kind_words(worked)
    return kind if worked.work is Work.CHAIN else f"{kind} {worked.number}"


def body_pass(plan: Plan) -> str:
    """Return what the body of a blanket is made of: `row`, or `round`."""
    return kind_words(plan.rows[0])


def body_heading(plan: Plan) -> str:
    """Return what heads a count of what the body is made of: `Rows`, or `Rounds`."""
    return capitalized(f"{body_pass(plan)}s")


JOINING_ROW = "joining row"
"""A row of motifs that is joined in the last round of them all."""


def rows_heading(plan: Plan) -> str:
    """Return what heads the list of all that is worked, in its order."""
    if plan.grid is not None:
        return "Rounds of each layout, and seams"
    if plan.in_rows:
        return "Rows and rounds, from the bottom up"
    return "Rounds, from the centre outwards"


def kind_words(worked: Pass) -> str:
    """Return what a pass is, without its number: `row`, `border round`."""
    if worked.work is Work.SEAM and worked.fabric != BY_SWATCH:
        return JOINING_ROW
    return f"border {_WORKS[worked.work]}" if worked.in_border else _WORKS[worked.work]


def passes_label(passes: Sequence[Pass]) -> str:
    """Return neighbouring passes of one kind: `Foundation chain`, `Row 1`, `Border rounds 2–4`."""
    first, last = passes[0], passes[-1]
    if first.number == last.number:
        return capitalized(pass_words(first))
    return capitalized(numbered(kind_words(first), first.number, last.number))


def numbered(name: str, first: int, last: int) -> str:
    """Return what one or several numbered things are called: `seam 1`, `seams 1–7`."""
    return f"{name} {first}" if first == last else f"{name}s {first}–{last}"


def edge_name(edge: Edge, speech: Speech) -> str:
    """Return what an edge is called: `right-hand edge`. Errors: KeyError within a pass."""
    return f"{edge_side(edge, speech)} edge"


def edge_side(edge: Edge, speech: Speech) -> str:
    """Return on which side an edge is: `right-hand`. Errors: KeyError within a pass."""
    return (_MIRRORED if speech.left_handed else _EDGES)[edge]


def edge_words(edge: Edge, work: Work, speech: Speech) -> str:
    """Return where along a pass: `the left-hand edge`, `within the round`."""
    return f"the {edge_name(edge, speech)}" if edge in _EDGES else _WITHIN[work]


def at_edge_words(edge: Edge, work: Work, speech: Speech) -> str:
    """Return where along a pass something is done: `at the left-hand edge`, `within the round`."""
    return f"at the {edge_name(edge, speech)}" if edge in _EDGES else _WITHIN[work]


def point_words(point: Point, plan: Plan) -> str:
    """Return a place in the work: `in row 58`, `at the end of row 57`, and of which blanket.

    In one of several parts alike it says in which: `in round 3 of motif 14 of layout 2`.
    """
    inside = "in" if point.edge is Edge.WITHIN else "at the end of"
    where = f"{inside} {place_words(point, plan)}"
    return f"{where} of blanket {point.blanket + 1}" if point.blanket else where


def place_words(point: Point, plan: Plan) -> str:
    """Return what is worked at a place: `row 58`, `round 3 of motif 14 of layout 2`, `seam 3`."""
    worked = plan.passes[point.pass_index]
    part = plan.part_of(worked)
    if not part.at_once:
        return pass_words(worked)
    if part.kind is PartKind.MOTIF:
        layouts = sum(each.kind is PartKind.MOTIF for each in plan.parts)
        of_layout = f" of layout {(part.layout or 0) + 1}" if layouts > 1 else ""
        return f"{pass_words(worked)} of motif {point.copy + 1}{of_layout}"
    number = plan.number_of(worked.part, point.copy)
    if part.kind is PartKind.EDGING:
        return f"the edging of motif {number}"
    return f"needleful {worked.number} of seam {number}" if worked.fresh else f"seam {number}"


def point_edge_words(point: Point, plan: Plan, speech: Speech) -> str:
    """Return where along its pass a place is: `the left-hand edge`, `the join`."""
    worked = plan.passes[point.pass_index]
    return _along(point.edge, worked, plan) or edge_words(point.edge, worked.work, speech)


def at_place_words(edge: Edge, worked: Pass, plan: Plan, speech: Speech) -> str:
    """Return where along a pass something is done: `at the left-hand edge`, `at the join`."""
    along = _along(edge, worked, plan)
    return f"at {along}" if along else at_edge_words(edge, worked.work, speech)


def _along(edge: Edge, worked: Pass, plan: Plan) -> str:
    """Return where along a seam, or a round of what has no rows; nothing of all else.

    A joining row is a part of one round, which begins at its first motif and is closed there.
    """
    if edge is Edge.WITHIN:
        return ""
    if kind_words(worked) == JOINING_ROW:
        return "the beginning of the round"
    if worked.work is Work.SEAM:
        if worked.starts is worked.ends:
            return "the join"
        return "its beginning" if edge is Edge.START else "its end"
    return "the join" if worked.work is Work.ROUND and not plan.in_rows else ""
