"""What is said of ends, by what becomes of them."""

from __future__ import annotations

from collections.abc import Mapping

from quoting.core.order.design import Design, EndsBecome

ENDS_DONE: Mapping[EndsBecome, str] = {
    EndsBecome.WOVEN_IN: "woven in",
    EndsBecome.WORKED_OVER: "worked over",
    EndsBecome.ENCLOSED: "enclosed",
    EndsBecome.FRINGE: "left as fringe",
}
"""What was done with ends: `12 ends worked over`."""

DOING_ENDS: Mapping[EndsBecome, str] = {
    EndsBecome.WOVEN_IN: "Weaving in ends",
    EndsBecome.WORKED_OVER: "Working over ends",
    EndsBecome.ENCLOSED: "Enclosing ends",
    EndsBecome.FRINGE: "Knotting the fringe",
}
"""What the work on them is called."""

ENDS_TO_DO: Mapping[EndsBecome, str] = {
    EndsBecome.WOVEN_IN: "to weave in",
    EndsBecome.WORKED_OVER: "to work over",
    EndsBecome.ENCLOSED: "to enclose in the border",
    EndsBecome.FRINGE: "to leave as fringe",
}
"""What is to become of them: `12 ends to work over`."""

ENDS_BRIEFLY: Mapping[EndsBecome, str] = {
    EndsBecome.WOVEN_IN: "Ends to weave",
    EndsBecome.WORKED_OVER: "Ends to work over",
    EndsBecome.ENCLOSED: "Ends to enclose",
    EndsBecome.FRINGE: "Ends for the fringe",
}
"""The name of their number, where there is little room."""

ENDS_TOLD: Mapping[EndsBecome, str] = {
    EndsBecome.WOVEN_IN: "",
    EndsBecome.WORKED_OVER: (
        "Lay each end along the top of the stitches, and work the next ones over it."
    ),
    EndsBecome.ENCLOSED: (
        "Leave the ends at the edges: the first border round is worked over them, and the rounds "
        "after it close over them. Weave in those that lie within."
    ),
    EndsBecome.FRINGE: (
        "Leave the ends at the edges hanging, in tails of {tail}, and knot them into a fringe. "
        "Weave in those that lie within."
    ),
}
"""How they are treated, for the guide; nothing of what every maker knows."""


def ends_briefly(design: Design) -> str:
    """Return what the number of a design's ends is called, where there is little room."""
    return ENDS_BRIEFLY[design.ends]


def ends_to_do(design: Design) -> str:
    """Return what is to become of a design's ends: `to weave in`."""
    return ENDS_TO_DO[design.ends]
