"""From an order to passes: every row and round, in the order worked, with its size."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace

from quoting.core.order.design import Design, Kind, first_names
from quoting.core.order.order import Order, check_order
from quoting.core.plan.body_plan import Setting
from quoting.core.plan.body_plans import plan_body
from quoting.core.plan.border import Edging, Round, border_cautions, border_depth_cm, border_rounds
from quoting.core.plan.design_gauges import design_gauges, size_gauges
from quoting.core.plan.gauge import Gauge
from quoting.core.plan.parts import BlanketPart, PartKind
from quoting.core.plan.passes import Edge, Pass, Plan, Work
from quoting.core.workshop.stitches import Stitch
from quoting.core.workshop.workshop import Workshop


def plan_order(order: Order, workshop: Workshop) -> Plan:
    """Return the order unrolled into passes.

    Errors: as `check_order`, and as the planner of its construction.
    """
    check_order(order, workshop)
    design = order.design
    gauges = design_gauges(design, workshop)
    sizes = size_gauges(design, gauges)
    border = _edgings(design, workshop, sizes)
    depth = border_depth_cm(border)
    body = plan_body(Setting(design=design, workshop=workshop, gauges=sizes, border_cm=depth))
    parts = body.parts
    if border and body.border_apart:
        parts = (*parts, BlanketPart(kind=PartKind.BORDER))
    rounds = _round_passes(border_rounds(border, body.rim), body.ends, part=len(parts) - 1)
    return Plan(
        passes=_one_name_each(design, (*body.passes, *rounds)),
        stitches=body.stitches,
        foundation_chain=body.foundation_chain,
        width_cm=body.width_cm + 2 * depth,
        height_cm=body.height_cm + 2 * depth * body.border_tall,
        border_depth_cm=depth,
        section_repeats=body.section_repeats,
        gauges={**gauges, **body.gauges},
        parts=parts,
        chores=body.chores,
        grid=body.grid,
        counted=body.counted,
        cautions=(
            *body.count_cautions,
            *border_cautions(border, body.rim),
            *body.size_cautions,
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


def _round_passes(rounds: Sequence[Round], edge: Edge, *, part: int) -> Iterator[Pass]:
    """Yield the border's rounds: each starts and ends at the edge where the body ended."""
    for number, worked in enumerate(rounds, 1):
        chains = {Stitch.CH.value: worked.chains} if worked.chains else {}
        yield Pass(
            work=Work.ROUND,
            number=number,
            colour=worked.colour,
            stitch=worked.stitch,
            stitches={worked.stitch: worked.stitches} | chains,
            starts=edge,
            ends=edge,
            height_cm=worked.height_cm,
            in_border=True,
            sides=worked.sides,
            corner=worked.corner,
            edges=worked.edges,
            part=part,
        )


def _one_name_each(design: Design, passes: Sequence[Pass]) -> tuple[Pass, ...]:
    """Return passes in which names of one yarn's colour are one: the first in the order worked."""
    names = first_names(design, (worked.colour for worked in passes))
    if all(name == first for name, first in names.items()):
        return tuple(passes)
    return tuple(replace(worked, colour=names[worked.colour]) for worked in passes)
