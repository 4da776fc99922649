"""What every block of the sheet of hours reads."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from exports.costing_workbook.hours.hour_assumptions_block import HourAssumptions
from exports.costing_workbook.hours.timings_block import TimingRefs
from exports.sheets.cells import Span
from exports.sheets.grid import Fault
from quoting.core.estimate.chores import Part
from quoting.core.estimate.hours import Hours
from quoting.core.estimate.stitching_time import YarnAndStitch
from quoting.core.workshop.workshop import Workshop
from quoting.wording import Speech


@dataclass(frozen=True, slots=True, kw_only=True)
class HourGround:
    """The hours that are written, and what they rest on.

    `parts` is where the parts of the work stand, `called` what each is called, `in_motifs` how
    many of each stitch are worked in motifs that are joined.
    """

    hours: Hours
    workshop: Workshop
    taken: HourAssumptions
    timings: TimingRefs
    parts: Span
    called: Mapping[Part, str]
    in_motifs: Mapping[YarnAndStitch, float]
    speech: Speech

    def unknown_part(self, row: int) -> Fault:
        """Return what is wrong with a task whose part is none of the parts of the work."""
        return Fault(f"COUNTIF({self.parts},B{row})=0", '"no part of the work is called so"')
