"""What parts and tasks of the work and the ends of strands are called, as a maker says it."""

from __future__ import annotations

from quoting.core.hours import Part
from quoting.core.strands import Why
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


def part_words(part: Part) -> str:
    """Return what a part of the work is called."""
    return _PARTS[part]


def task_words(what: str, speech: Speech) -> str:
    """Return what a task is called; the tasks of stitching are the stitches."""
    return _TASKS.get(what) or speech.stitch(what)


def ended_words(why: Why) -> str:
    """Return why a strand ended."""
    return _ENDED[why]
