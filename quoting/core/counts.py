"""How many stitches go across a row."""

from __future__ import annotations

from collections.abc import Mapping

from quoting.core.design import Design, stripes_with_places
from quoting.core.errors import refuse
from quoting.core.gauge import Gauge
from quoting.core.place import at
from quoting.core.repeats import nearest_multiple
from quoting.core.workshop import Workshop

MOST_STITCHES = 20_000
"""Across a row; more of them is a slip in the swatch."""


def row_counts(
    design: Design, workshop: Workshop, gauges: Mapping[str, Gauge], depth_cm: float
) -> dict[str, int]:
    """Return the stitches across a row, by its stitch.

    The blanket's own stitch fixes the width of the body; a stripe in another stitch comes as
    near to that width as its own gauge and repeat allow. Errors: `width-too-small`, with the
    smallest side in cm that works; `too-many-stitches`.
    """
    width_cm = gauges[design.stitch].width_cm
    multiple, plus = stitch_repeat(design, workshop)
    main = design.stitches
    if main is None:
        target = (design.width_cm - 2 * depth_cm) / width_cm
        main = nearest_multiple(target, multiple, plus)
        if target < plus + multiple / 2:
            least = (plus + multiple / 2) * width_cm + 2 * depth_cm
            raise refuse(at("blanket", "width"), "width-too-small", smallest_cm=least)
    counts = {design.stitch: main}
    for _, stripe in stripes_with_places(design):
        other = stripe.stitch
        if other is not None and other not in counts:
            pattern = workshop.pattern(other)
            counts[other] = design.stitches or nearest_multiple(
                main * width_cm / gauges[other].width_cm,
                pattern.multiple if pattern else 1,
                pattern.plus if pattern else 0,
            )
    most = max(counts.values())
    if most > MOST_STITCHES:
        raise refuse(at("blanket", "width"), "too-many-stitches", read=most, limit=MOST_STITCHES)
    return counts


def stitch_repeat(design: Design, workshop: Workshop) -> tuple[int, int]:
    """Return the stitch repeat: the order's own, else the pattern's, else one."""
    pattern = workshop.pattern(design.stitch)
    multiple = design.multiple or (pattern.multiple if pattern else 1)
    plus = design.plus if design.plus is not None else (pattern.plus if pattern else 0)
    return multiple, plus
