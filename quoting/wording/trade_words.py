"""What rows, edges, strands' ends and parts of the work are called, as a maker would say it."""

from __future__ import annotations

from quoting.core.hours import Part
from quoting.core.passes import Edge, Pass, Plan, Work
from quoting.core.strands import Point, Why
from quoting.wording.speech import Speech

_PARTS = {
    Part.STITCHING: "Stitching",
    Part.TURNING: "Turning rows",
    Part.CHANGING: "Changing colour",
    Part.JOINING: "Joining balls",
    Part.WEAVING_IN: "Weaving in ends",
    Part.FINISHING: "Starting and finishing",
    Part.OFFICE: "Photographs, packing, letters",
}

_TASKS = {
    "rip_back": "ripping back",
    "turn": "turning a row",
    "change_colour": "changing colour",
    "join": "joining a ball",
    "weave_in_end": "weaving in an end",
    "start_and_finish": "starting and finishing",
    "wash": "washing and drying flat",
    "swatch": "swatching",
    "extras": "extras",
    "photograph": "photographs",
    "pack": "packing",
    "letters": "letters with the buyer",
}

_ENDED = {
    Why.CUT: "cut",
    Why.RAN_OUT: "ball used up, new ball joined",
    Why.FINISHED: "fastened off",
}

_EDGES = {
    Edge.START: "the edge where row 1 begins",
    Edge.FAR: "the far edge",
    Edge.WITHIN: "within the row",
}


def part_words(part: Part) -> str:
    """Return what a part of the work is called."""
    return _PARTS[part]


def task_words(what: str, speech: Speech) -> str:
    """Return what a task is called; the tasks of stitching are the stitches."""
    return _TASKS.get(what) or speech.stitch(what)


def ended_words(why: Why) -> str:
    """Return why a strand ended."""
    return _ENDED[why]


def edge_words(edge: Edge) -> str:
    """Return what an edge is called."""
    return _EDGES[edge]


def pass_words(worked: Pass) -> str:
    """Return what a row or round is called: `row 12`, `border round 1`."""
    match worked.work:
        case Work.CHAIN:
            return "foundation chain"
        case Work.ROW:
            return f"row {worked.number}"
        case Work.ROUND:
            return f"border round {worked.number}"


def point_words(point: Point, plan: Plan) -> str:
    """Return a place in the work: `in row 58`, `at the end of row 57`, and of which blanket."""
    inside = "in" if point.edge is Edge.WITHIN else "at the end of"
    where = f"{inside} {pass_words(plan.passes[point.pass_index])}"
    return f"{where} of blanket {point.piece + 1}" if point.piece else where
