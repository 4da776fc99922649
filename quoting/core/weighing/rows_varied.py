"""A blanket in rows with a stitch repeat, or a repeat of its stripes, less and more.

A count that is the maker's own is varied itself. Else the size is what is varied: the design is
asked for at the size that one more comes to, so that it closes on just that.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace

from quoting.core.order.design import Design
from quoting.core.order.in_rows import InRows, Section, StopAt
from quoting.core.plan.design_gauges import size_gauges
from quoting.core.plan.rows.counts import stitch_repeat
from quoting.core.plan.rows.stripes import stops_within
from quoting.core.quote.quote import Quote
from quoting.core.weighing.variations import Variation, Varied, both_ways

Changed = Callable[[int], Design]


def rows_varied(quote: Quote, body: InRows) -> Iterator[Variation]:
    """Yield it narrower and wider, then shorter and longer."""
    multiple, _ = stitch_repeat(body, quote.order.design, quote.workshop)
    across = Varied.STITCHES if multiple == 1 else Varied.STITCH_REPEAT
    yield from both_ways(across, _across(quote, body, multiple))
    varied, changed = _along(quote, body)
    yield from both_ways(varied, changed)


def rows_held(quote: Quote, design: Design) -> Design:
    """Return a design of another border, its body as it was: the size makes room for it."""
    plan = quote.plan
    more = sum(band.rounds for band in design.border) - len(plan.rounds)
    more_cm = 2 * more * plan.rounds[-1].height_cm
    wide_cm = _stitch_cm(quote) * plan.stitches + 2 * plan.border_depth_cm
    return replace(design, width_cm=wide_cm + more_cm, height_cm=plan.height_cm + more_cm)


def _across(quote: Quote, body: InRows, multiple: int) -> Changed:
    plan, design, own = quote.plan, quote.order.design, body.stitches
    if own is not None:
        return lambda by: replace(design, body=replace(body, stitches=own + by * multiple))
    stitch_cm, border_cm = _stitch_cm(quote), 2 * plan.border_depth_cm

    def changed(by: int) -> Design:
        wide_cm = (plan.stitches + by * multiple) * stitch_cm + border_cm
        return replace(design, width_cm=wide_cm)

    return changed


def _stitch_cm(quote: Quote) -> float:
    """Return the width of a stitch of the blanket's own, which fixes the width of the body."""
    design = quote.order.design
    return size_gauges(design, quote.plan.gauges)[design.kind].width_cm


def _along(quote: Quote, body: InRows) -> tuple[Varied, Changed]:
    """Return what the length goes by: the last section that fills it, else its own repeats."""
    sections, design, plan = body.sections, quote.order.design, quote.plan
    fitted = [number for number, section in enumerate(sections) if section.fitted]
    if fitted:
        (row_cm, *_) = _heights(quote, fitted[-1])
        return Varied.ROW, lambda by: replace(design, height_cm=plan.height_cm + by * row_cm)
    still_open = [number for number, section in enumerate(sections) if section.is_open]
    if not still_open:
        return Varied.REPEAT, lambda by: _own_repeats(design, body, by)
    last = still_open[-1]
    held = _with_others_held(quote, body, last)
    stop_at = body.stop_at if last == len(sections) - 1 else StopAt.REPEAT
    steps_cm = _steps_cm(_heights(quote, last), sections[last], stop_at)
    varied = {StopAt.REPEAT: Varied.REPEAT, StopAt.STRIPE: Varied.STRIPE, StopAt.ROW: Varied.ROW}

    def changed(by: int) -> Design:
        height_cm = plan.height_cm + steps_cm[by]
        return replace(design, height_cm=height_cm, body=held)

    return varied[stop_at], changed


def _heights(quote: Quote, section: int) -> list[float]:
    """Return the height of each row of a section."""
    return [row.height_cm for row in quote.plan.rows if row.section == section]


def _own_repeats(design: Design, body: InRows, by: int) -> Design:
    *others, last = body.sections
    changed = replace(last, repeats=(last.repeats or 0) + by)
    return replace(design, body=replace(body, sections=(*others, changed)))


def _with_others_held(quote: Quote, body: InRows, last: int) -> InRows:
    """Return a body in which no section but one fills the length."""
    sections = tuple(
        replace(section, share=None, repeats=int(repeats))
        if section.is_open and number != last
        else section
        for number, (section, repeats) in enumerate(
            zip(body.sections, quote.plan.section_repeats, strict=True)
        )
    )
    return replace(body, sections=sections)


def _steps_cm(heights: Sequence[float], section: Section, stop_at: StopAt) -> dict[int, float]:
    """Return how far it is from where a section stops to where it may stop before and after."""
    period = list(heights[: section.rows])
    stops = sorted({section.rows, *stops_within(section, stop_at)})
    here = len(heights) % section.rows
    before = max(stop for stop in stops if stop < (here or section.rows))
    after = min(stop for stop in stops if stop > here)
    return {-1: -sum(period[before : here or None]), 1: sum(period[here:after])}
