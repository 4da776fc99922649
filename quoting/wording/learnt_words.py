"""What an order teaches a workshop, item by item in words."""

from __future__ import annotations

from quoting.core.making.session_motifs import MotifTold
from quoting.core.making.weighings_told import WeighingTold
from quoting.core.order.design import EndsBecome
from quoting.core.workshop.swatches import Swatch
from quoting.core.workshop.timings import Timing
from quoting.wording.ends import FATES
from quoting.wording.log_words import minutes_words
from quoting.wording.speech import Speech
from quoting.wording.trade_words import timed_words

CM_A_METRE = 100


def timing_words(timing: Timing, speech: Speech) -> str:
    """Return what a timing says: `480 hdc in moor aran in 50 min, 25 November 2026`."""
    stitches = f"{speech.number(timing.stitches)} {timed_words(timing.timed, speech)}"
    day = "" if timing.day is None else f", {speech.day(timing.day)}"
    return f"{stitches} in {minutes_words(timing.minutes, speech)}{day}"


def swatch_words(swatch: Swatch, speech: Speech) -> str:
    """Return what a swatch that an order told says: its yarn, its tension being as before."""
    what = f"{speech.stitch(swatch.stitch)} in {swatch.yarn}"
    same = speech.worded("its tension as measured before")
    if swatch.run is None:
        return f"{what}, {same}"
    length = speech.yarn_length(swatch.run.length_cm / CM_A_METRE, 2)
    return f"{speech.number(swatch.run.stitches)} {what} take {length} of yarn, {same}"


def motif_words(told: MotifTold, speech: Speech) -> str:
    """Return what a timing of a motif says: `4 of sun in 1 h 20 min, 25 November 2026`."""
    timing = told.timing
    day = "" if timing.day is None else f", {speech.day(timing.day)}"
    count = speech.number(timing.motifs)
    return f"{count} of {told.motif} in {minutes_words(timing.minutes, speech)}{day}"


def weighing_words(told: WeighingTold, speech: Speech) -> str:
    """Return what the yarn of motifs says: `12 of sun weigh 137 g together, by the yarn used`."""
    count, weight = speech.number(told.weighed.motifs), speech.weight(told.weighed.weight_g)
    return f"{count} of {told.motif} weigh {weight} together, by the yarn used"


def end_words(minutes: float, ends: EndsBecome, speech: Speech) -> str:
    """Return what an end took: `an end woven in took 2.4 min`."""
    return f"an end {FATES[ends].done} took {speech.trimmed(minutes, 2)}\u00a0min"
