"""From an order to passes: every row and round, in the order worked, with its size."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace

from quoting.core.border import Body, Edging, border_cautions, border_depth_cm, border_rounds
from quoting.core.cautions import Caution, for_maker
from quoting.core.counts import count_cautions, row_counts
from quoting.core.design import Design, Kind, StopAt, first_names
from quoting.core.design_gauges import design_gauges, size_gauges
from quoting.core.errors import Refused, refuse
from quoting.core.gauge import Gauge
from quoting.core.order import Order, check_order
from quoting.core.passes import Pass, Plan, Work
from quoting.core.stripes import Striping, row_repeat_cautions, stripe_body
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
    sizes = size_gauges(design, gauges)
    border = _edgings(design, workshop, sizes)
    depth = border_depth_cm(border)
    counts = row_counts(design, workshop, sizes, depth)
    striping = _striping(design, sizes, depth)
    body = _body(striping, counts, sizes)
    rounds = border_rounds(border, body)
    passes = _one_name_each(
        design,
        (
            *row_passes(striping, counts, workshop, sizes),
            *round_passes(rounds, len(striping.rows)),
        ),
    )
    height_cm = sum(worked.height_cm for worked in passes if worked.work is Work.ROW) + 2 * depth
    first, kinds = striping.rows[0], {row.kind for row in striping.rows}
    return Plan(
        passes=passes,
        stitches=counts[design.kind],
        foundation_chain=workshop.turning_chain(first.stitch).foundation(counts[first.kind]),
        width_cm=max(counts[kind] * sizes[kind].width_cm for kind in kinds) + 2 * depth,
        height_cm=height_cm,
        border_depth_cm=depth,
        section_repeats=striping.repeats,
        gauges=gauges,
        cautions=(
            *count_cautions(design, workshop, counts, striping, sizes),
            *row_repeat_cautions(striping, workshop),
            *border_cautions(border, body),
            *_height_cautions(design, sizes, depth, height_cm),
        ),
    )


def _edgings(
    design: Design, workshop: Workshop, gauges: Mapping[Kind, Gauge]
) -> tuple[Edging, ...]:
    edgings = []
    for band in design.border:
        multiple, plus = workshop.stitch_repeat(band.stitch)
        gauge = gauges[design.kind_of(band)]
        edgings.append(Edging(band=band, gauge=gauge, multiple=multiple, plus=plus))
    return tuple(edgings)


def _one_name_each(design: Design, passes: Sequence[Pass]) -> tuple[Pass, ...]:
    """Return passes in which names of one yarn's colour are one: the first in the order worked."""
    names = first_names(design, (worked.colour for worked in passes))
    if all(name == first for name, first in names.items()):
        return tuple(passes)
    return tuple(replace(worked, colour=names[worked.colour]) for worked in passes)


def _striping(design: Design, gauges: Mapping[Kind, Gauge], depth_cm: float) -> Striping:
    try:
        return stripe_body(
            design, design.height_cm - 2 * depth_cm, lambda kind: gauges[kind].height_cm
        )
    except Refused as refused:
        (mistake,) = refused.mistakes
        body = mistake.facts.get("smallest_body_cm")
        if not isinstance(body, float):
            raise
        smallest = body + 2 * depth_cm
        raise refuse(mistake.place, mistake.code, smallest_cm=smallest) from refused


def _body(striping: Striping, counts: Mapping[Kind, int], gauges: Mapping[Kind, Gauge]) -> Body:
    return Body(
        first_row=counts[striping.rows[0].kind],
        last_row=counts[striping.rows[-1].kind],
        row_gauges=[gauges[row.kind] for row in striping.rows],
    )


def _height_cautions(
    design: Design, gauges: Mapping[Kind, Gauge], depth_cm: float, height_cm: float
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
    design: Design, gauges: Mapping[Kind, Gauge], depth_cm: float, stop_at: StopAt
) -> float:
    striping = _striping(replace(design, stop_at=stop_at), gauges, depth_cm)
    return sum(gauges[row.kind].height_cm for row in striping.rows) + 2 * depth_cm
