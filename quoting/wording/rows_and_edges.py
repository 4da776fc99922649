"""What rows, rounds and edges are called, and how a place in the work is told."""

from __future__ import annotations

from collections.abc import Sequence

from quoting.core.estimate.strands import Point
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


def rows_heading(plan: Plan) -> str:
    """Return what heads the list of all that is worked, in its order."""
    if plan.grid is not None:
        return "Rounds of each layout, and seams"
    if plan.rows[0].work is Work.ROUND:
        return "Rounds, from the centre outwards"
    return "Rows and rounds, from the bottom up"


def kind_words(worked: Pass) -> str:
    """Return what a pass is, without its number: `row`, `border round`."""
    return f"border {_WORKS[worked.work]}" if worked.in_border else _WORKS[worked.work]


def passes_label(passes: Sequence[Pass]) -> str:
    """Return neighbouring passes of one kind: `Foundation chain`, `Row 1`, `Border rounds 2–4`."""
    first, last = passes[0], passes[-1]
    if first.number == last.number:
        return capitalized(pass_words(first))
    return capitalized(f"{kind_words(first)}s {first.number}–{last.number}")


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
    """Return a place in the work: `in row 58`, `at the end of row 57`, and of which blanket."""
    inside = "in" if point.edge is Edge.WITHIN else "at the end of"
    where = f"{inside} {pass_words(plan.passes[point.pass_index])}"
    return f"{where} of blanket {point.blanket + 1}" if point.blanket else where
