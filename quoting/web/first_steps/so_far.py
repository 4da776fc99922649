"""What a quote would already rest on, question by question."""

from __future__ import annotations

from collections.abc import Collection, Iterator
from typing import NamedTuple

from quoting.web.first_steps.steps import MAKER, MINUTES, MOTIF, PAY, SWATCH, TIMING, YARN, Step
from quoting.web.shop import speech_now


class Ground(NamedTuple):
    """One thing that a quote rests on, whether it is there, and in a sentence how."""

    what: str
    there: bool
    sentence: str


_THERE = {
    MAKER: "your name, and how you write amounts and measures.",
    YARN: "as on its label.",
    SWATCH: "from your swatch: measured.",
    MOTIF: "from your motif: its side and its yarn, and its minutes if you gave them.",
    TIMING: "timed once, by you; five timings would promise something.",
    PAY: "as you said.",
    MINUTES: "those you gave are counted; what is blank is not, and is said so.",
}
_LACKING = {
    MAKER: "not given yet; a quote needs a name, a currency and units.",
    YARN: "none yet; without one nothing can be priced.",
    SWATCH: "not measured: what is usual for such a yarn, which may be off by a quarter.",
    MOTIF: "none, and blankets in rows need none; one of squares needs a weighed square.",
    TIMING: "none yet, and nobody can guess them: a quote needs one.",
    PAY: "not given yet; a quote needs what an hour is to earn.",
    MINUTES: "weaving in, packing and messages are not counted yet.",
}
_WHAT = {
    MAKER: "Your workshop",
    YARN: "The yarn and its price",
    SWATCH: "Stitches, sizes and metres",
    MOTIF: "Squares and other motifs",
    TIMING: "Hours at the hook",
    PAY: "Pay",
    MINUTES: "The other work",
}


_TIMED_BY_MOTIF = (
    "from your motif: all its stitches in its minutes, chains and joins inside. A timing of the "
    "stitch alone is surer for borders and seams."
)


def so_far(sound: Collection[Step], *, by_motif: bool) -> Iterator[Ground]:
    """Yield what a quote rests on, in the order of the questions, by those that were answered.

    `by_motif`: the time of a motif stands for that of a stitch.
    """
    for step, what in _WHAT.items():
        there, sentence = step in sound, (_THERE if step in sound else _LACKING)[step]
        if step is TIMING and by_motif and MOTIF in sound:
            there, sentence = True, _TIMED_BY_MOTIF
        yield Ground(speech_now().worded(what), there, sentence)
