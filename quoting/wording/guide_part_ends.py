"""The ends of joined motifs in a guide: told once for all parts that are alike."""

from __future__ import annotations

from collections.abc import Mapping

from quoting.core.guide.guide import Guide
from quoting.core.guide.motifs import PartEnds
from quoting.core.plan.parts import PartKind
from quoting.core.plan.passes import Plan
from quoting.wording.guide_squares import NO_FIGURES, seam_numbers
from quoting.wording.paper import Listing
from quoting.wording.speech import Speech


def part_ends_listing(guide: Guide, heading: str, speech: Speech) -> Listing:
    """Return the ends of motifs, seams and border, told once for all that are alike."""
    plan = guide.quote.plan
    rows = [
        (_where(ends, plan, speech), _ends(ends, speech)) for ends in guide.part_ends if ends.each
    ]
    if guide.joined_ends:
        count = speech.count(sum(guide.joined_ends.values()), "end")
        joined = f"about {count}: {_by_colour(guide.joined_ends, speech)}"
        rows.append((speech.worded("Where balls are joined"), joined))
    return Listing(
        heading=heading,
        heads=("Where", "Which"),
        rows=tuple(rows),
        figures_from=NO_FIGURES,
        ticks=True,
    )


_PARTS = {PartKind.MOTIF: "motif", PartKind.EDGING: "edging"}


def _where(ends: PartEnds, plan: Plan, speech: Speech) -> str:
    part = plan.parts[ends.part]
    if part.kind is PartKind.BORDER:
        return "Border"
    if not part.at_once:
        return "The last round of all"
    if part.kind is PartKind.SEAM:
        return seam_numbers(plan.number_of(ends.part, 0), part.count)
    said = speech.count(part.count, _PARTS[part.kind])
    several = sum(each.kind is PartKind.MOTIF for each in plan.parts) > 1
    return f"{said} of layout {part.layout + 1}" if part.layout is not None and several else said


def _ends(ends: PartEnds, speech: Speech) -> str:
    said = speech.count(ends.each, "end")
    if ends.count > 1:
        said = f"{said} each, {speech.number(ends.each * ends.count)} in all"
    return f"{said}: {_by_colour(ends.by_colour, speech)}"


def _by_colour(ends: Mapping[str, int], speech: Speech) -> str:
    return ", ".join(f"{colour} {speech.number(count)}" for colour, count in ends.items())
