"""From an order to passes: every row and round, in the order worked, with its size."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace

from quoting.core.border import (
    Body,
    Round,
    border_depth_cm,
    border_rounds,
    ratio_is_off,
    row_end_ratio,
)
from quoting.core.cautions import Caution, for_maker
from quoting.core.counts import row_counts, stitch_repeat
from quoting.core.design import Design, StopAt, first_names
from quoting.core.design_gauges import design_gauges
from quoting.core.errors import Refused, refuse
from quoting.core.gauge import Gauge
from quoting.core.order import Order, check_order
from quoting.core.passes import Pass, Plan, Work
from quoting.core.stripes import Striping, stripe_body
from quoting.core.worked_in_rows import round_passes, row_passes
from quoting.core.workshop import Workshop

HEIGHT_MISS = 0.03
"""Whole repeats that miss the height by more than this share: the finer stop is offered."""


def plan_order(order: Order, workshop: Workshop) -> Plan:
    """Return the order unrolled into passes.

    Errors: as `check_order`; `width-too-small` and `height-too-small`, with the smallest side
    in cm that works; `too-many-rows`.
    """
    check_order(order, workshop)
    design = order.design
    gauges = design_gauges(design, workshop)
    main = {stitch: gauges[design.yarn, stitch] for _, stitch in gauges}
    depth = border_depth_cm(design.border, main)
    counts = row_counts(design, workshop, main, depth)
    striping = _striping(design, main, depth)
    rounds = _rounds(design, striping, counts, main)
    passes = _one_name_each(
        design,
        (
            *row_passes(striping, counts, workshop, main),
            *round_passes(rounds, len(striping.rows)),
        ),
    )
    height_cm = sum(worked.height_cm for worked in passes if worked.work is Work.ROW) + 2 * depth
    first = striping.rows[0].stitch
    return Plan(
        passes=passes,
        stitches=counts[design.stitch],
        foundation_chain=workshop.turning_chain(first).foundation(counts[first]),
        width_cm=max(counts[r.stitch] * main[r.stitch].width_cm for r in striping.rows) + 2 * depth,
        height_cm=height_cm,
        border_depth_cm=depth,
        section_repeats=striping.repeats,
        gauges=gauges,
        cautions=(
            *_count_cautions(design, workshop, counts),
            *_border_cautions(design, striping, counts, main),
            *_height_cautions(design, main, depth, height_cm),
        ),
    )


def _one_name_each(design: Design, passes: Sequence[Pass]) -> tuple[Pass, ...]:
    """Return passes in which names of one yarn's colour are one: the first in the order worked."""
    names = first_names(design, (worked.colour for worked in passes))
    if all(name == first for name, first in names.items()):
        return tuple(passes)
    return tuple(replace(worked, colour=names[worked.colour]) for worked in passes)


def _striping(design: Design, gauges: Mapping[str, Gauge], depth_cm: float) -> Striping:
    try:
        return stripe_body(
            design, design.height_cm - 2 * depth_cm, lambda stitch: gauges[stitch].height_cm
        )
    except Refused as refused:
        (mistake,) = refused.mistakes
        body = mistake.facts.get("smallest_body_cm")
        if not isinstance(body, float):
            raise
        smallest = body + 2 * depth_cm
        raise refuse(mistake.place, mistake.code, smallest_cm=smallest) from refused


def _body(striping: Striping, counts: Mapping[str, int], gauges: Mapping[str, Gauge]) -> Body:
    return Body(
        first_row=counts[striping.rows[0].stitch],
        last_row=counts[striping.rows[-1].stitch],
        row_gauges=[gauges[row.stitch] for row in striping.rows],
    )


def _rounds(
    design: Design, striping: Striping, counts: Mapping[str, int], gauges: Mapping[str, Gauge]
) -> tuple[Round, ...]:
    return border_rounds(design.border, _body(striping, counts, gauges), gauges)


def _count_cautions(
    design: Design, workshop: Workshop, counts: Mapping[str, int]
) -> Iterator[Caution]:
    multiple, plus = stitch_repeat(design, workshop)
    count = counts[design.stitch]
    if (count - plus) % multiple or count < multiple + plus:
        yield for_maker("count-breaks-repeat", stitches=count, multiple=multiple, plus=plus)


def _border_cautions(
    design: Design, striping: Striping, counts: Mapping[str, int], gauges: Mapping[str, Gauge]
) -> Iterator[Caution]:
    if not design.border or design.border[0].row_end_ratio is None:
        return
    own = design.border[0].row_end_ratio
    measured = row_end_ratio(_body(striping, counts, gauges), gauges[design.border[0].stitch])
    if ratio_is_off(own, measured):
        yield for_maker("row-ends-off", ratio=own, measured=measured)


def _height_cautions(
    design: Design, gauges: Mapping[str, Gauge], depth_cm: float, height_cm: float
) -> Iterator[Caution]:
    if design.stop_at is not StopAt.REPEAT or design.sections[-1].repeats is not None:
        return
    if abs(height_cm - design.height_cm) <= HEIGHT_MISS * design.height_cm:
        return
    stripe_cm, row_cm = (
        _height_at(design, gauges, depth_cm, stop) for stop in (StopAt.STRIPE, StopAt.ROW)
    )
    told = not any(math.isclose(stripe_cm, other) for other in (height_cm, row_cm))
    yield for_maker(
        "repeats-miss-height",
        height_cm=height_cm,
        wanted_cm=design.height_cm,
        stripe_cm=stripe_cm if told else None,
        row_cm=row_cm,
    )


def _height_at(
    design: Design, gauges: Mapping[str, Gauge], depth_cm: float, stop_at: StopAt
) -> float:
    striping = _striping(replace(design, stop_at=stop_at), gauges, depth_cm)
    return sum(gauges[row.stitch].height_cm for row in striping.rows) + 2 * depth_cm
