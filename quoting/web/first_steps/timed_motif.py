"""A motif that was timed, where no stitch was: its time is that of the stitches it is made of."""

from __future__ import annotations

from dataclasses import replace

from quoting.core.workshop.timings import LEAST_MINUTES, Timing
from quoting.core.workshop.workshop import Workshop
from quoting.web.first_steps.steps import TIMING
from quoting.web.forms.sent import Sent

MOTIF_TIMED = "motifs.1.timings.1"

STAND_IN = {"timings.1.stitch": "sc", "timings.1.stitches": "1", "timings.1.minutes": "1"}
"""What is read in place of the timing until the motif has been."""


def was_timed(sent: Sent) -> bool:
    """Return whether the motif was."""
    return any((sent.get(f"{MOTIF_TIMED}.{key}") or "").strip() for key in ("motifs", "minutes"))


def stands_for_a_stitch(sent: Sent) -> bool:
    """Return whether the motif was timed, and no stitch was."""
    return was_timed(sent) and not TIMING.is_answered(sent)


def with_its_stitches_timed(workshop: Workshop) -> Workshop:
    """Return the workshop with one timing: all stitches of its motif in the minutes of one.

    Chains, and what begins and closes a round, are inside: a plain row goes rather quicker.
    """
    motif = workshop.motifs[0]
    timed = motif.timings[0]
    kind = workshop.basic_stitch(motif.stitch, "stitch")
    timing = Timing(
        stitch=motif.stitch,
        stitches=motif.counted(kind).total(motif.rounds),
        minutes=max(LEAST_MINUTES, timed.minutes / timed.motifs),
        hands_on=timed.hands_on,
        yarn=motif.yarn,
        hook_mm=motif.hook_mm,
        day=timed.day,
    )
    return replace(workshop, timings=(timing,))
