"""The plan of a body that is worked in rows."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from dataclasses import replace

from quoting.core.ground.cautions import Caution, for_maker
from quoting.core.ground.codes import CautionCode
from quoting.core.ground.errors import Refused, refuse
from quoting.core.order.design import Kind
from quoting.core.order.in_rows import InRows, StopAt
from quoting.core.plan.body_plan import BodyPlan, Setting
from quoting.core.plan.border import Rim, RowEnds, StitchesAlong
from quoting.core.plan.gauge import Gauge
from quoting.core.plan.rows.counts import count_cautions, row_counts
from quoting.core.plan.rows.stripes import Striping, row_repeat_cautions, stripe_body
from quoting.core.plan.rows.worked_in_rows import edge_after, row_passes

HEIGHT_MISS = 0.03
"""Whole repeats that miss the height by more than this share: the finer stop is offered."""


def plan_rows(body: InRows, setting: Setting) -> BodyPlan:
    """Return the rows.

    Errors: as `row_counts` and `stripe_body`, with the smallest side in cm that works.
    """
    design, workshop, sizes = setting.design, setting.workshop, setting.gauges
    counts = row_counts(body, setting)
    striping = _striping(body, setting)
    passes = tuple(row_passes(striping, counts, workshop, sizes))
    height_cm = sum(worked.height_cm for worked in passes)
    first, kinds = striping.rows[0], {row.kind for row in striping.rows}
    return BodyPlan(
        passes=passes,
        stitches=counts[design.kind],
        foundation_chain=workshop.turning_chain(first.stitch).foundation(counts[first.kind]),
        width_cm=max(counts[kind] * sizes[kind].width_cm for kind in kinds),
        height_cm=height_cm,
        rim=_rim(striping, counts, sizes),
        ends=edge_after(len(striping.rows)),
        section_repeats=striping.repeats,
        count_cautions=(
            *count_cautions(body, setting, counts, striping),
            *row_repeat_cautions(striping, workshop),
        ),
        size_cautions=tuple(_height_cautions(body, setting, height_cm)),
    )


def _striping(body: InRows, setting: Setting) -> Striping:
    design, gauges = setting.design, setting.gauges
    try:
        return stripe_body(body, design, setting.height_cm, lambda kind: gauges[kind].height_cm)
    except Refused as refused:
        (mistake,) = refused.mistakes
        body_cm = mistake.facts.get("smallest_body_cm")
        if not isinstance(body_cm, float):
            raise
        smallest = body_cm + 2 * setting.border_cm
        raise refuse(mistake.place, mistake.code, smallest_cm=smallest) from refused


def _rim(striping: Striping, counts: Mapping[Kind, int], gauges: Mapping[Kind, Gauge]) -> Rim:
    """Return the last row, a side, the first row and the other side."""
    first, last = striping.rows[0].kind, striping.rows[-1].kind
    ends = RowEnds([gauges[row.kind] for row in striping.rows])
    return (
        StitchesAlong(counts[last], gauges[last]),
        ends,
        StitchesAlong(counts[first], gauges[first]),
        ends,
    )


def _height_cautions(body: InRows, setting: Setting, body_cm: float) -> Iterator[Caution]:
    if body.stop_at is not StopAt.REPEAT or not body.sections[-1].is_open:
        return
    wanted_cm, height_cm = setting.design.height_cm, body_cm + 2 * setting.border_cm
    if abs(height_cm - wanted_cm) <= HEIGHT_MISS * wanted_cm:
        return
    stripe_cm, row_cm = (_height_at(body, setting, stop) for stop in (StopAt.STRIPE, StopAt.ROW))
    told = not any(math.isclose(stripe_cm, other) for other in (height_cm, row_cm))
    yield for_maker(
        CautionCode.REPEATS_MISS_HEIGHT,
        height_cm=height_cm,
        wanted_cm=wanted_cm,
        stripe_cm=stripe_cm if told else None,
        row_cm=row_cm,
    )


def _height_at(body: InRows, setting: Setting, stop_at: StopAt) -> float:
    striping = _striping(replace(body, stop_at=stop_at), setting)
    heights = (setting.gauges[row.kind].height_cm for row in striping.rows)
    return sum(heights) + 2 * setting.border_cm
