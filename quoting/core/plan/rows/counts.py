"""How many stitches go across a row."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from quoting.core.ground.cautions import Caution, for_maker
from quoting.core.ground.codes import CautionCode, MistakeCode
from quoting.core.ground.errors import refuse
from quoting.core.ground.place import at
from quoting.core.ground.sameness import NEAR
from quoting.core.order.design import Design, Kind
from quoting.core.order.in_rows import InRows
from quoting.core.plan.body_plan import Setting
from quoting.core.plan.multiples import nearest_multiple
from quoting.core.plan.rows.stripes import Striping
from quoting.core.workshop.workshop import Workshop

MOST_STITCHES = 20_000
"""Across a row; more of them is a slip in the swatch."""

GAUGES_APART = 0.05
"""How much wider the stitches of one row may be than those of another before it is told."""


def row_counts(body: InRows, setting: Setting) -> dict[Kind, int]:
    """Return the stitches across a row, by the yarn and the stitch it is worked in.

    The blanket's own stitch in its own yarn fixes the width of the body; a stripe in another
    comes as near to that width as its own gauge and repeat allow. Errors: `width-too-small`,
    with the smallest side in cm that works; `too-many-stitches`.
    """
    design, gauges = setting.design, setting.gauges
    width_cm = gauges[design.kind].width_cm
    multiple, plus = stitch_repeat(body, design, setting.workshop)
    main = body.stitches
    if main is None:
        target = setting.width_cm / width_cm
        main = nearest_multiple(target, multiple, plus)
        if target < plus + multiple / 2:
            least = (plus + multiple / 2) * width_cm + 2 * setting.border_cm
            raise refuse(at("blanket", "width"), MistakeCode.WIDTH_TOO_SMALL, smallest_cm=least)
    counts = {design.kind: main}
    for _, stripe in body.stripes_with_places():
        kind = design.kind_of(stripe)
        if kind not in counts:
            repeat = _repeat_of(kind[1], body, setting)
            target = main * width_cm / gauges[kind].width_cm
            counts[kind] = body.stitches or nearest_multiple(target, *repeat)
    most = max(counts.values())
    if most > MOST_STITCHES:
        raise refuse(
            at("blanket", "width"), MistakeCode.TOO_MANY_STITCHES, read=most, limit=MOST_STITCHES
        )
    return counts


def stitch_repeat(body: InRows, design: Design, workshop: Workshop) -> tuple[int, int]:
    """Return the stitch repeat: the order's own, else the pattern's, else one."""
    multiple, plus = workshop.stitch_repeat(design.stitch)
    return body.multiple or multiple, plus if body.plus is None else body.plus


def _repeat_of(stitch: str, body: InRows, setting: Setting) -> tuple[int, int]:
    if stitch == setting.design.stitch:
        return stitch_repeat(body, setting.design, setting.workshop)
    return setting.workshop.stitch_repeat(stitch)


def count_cautions(
    body: InRows, setting: Setting, counts: Mapping[Kind, int], striping: Striping
) -> Iterator[Caution]:
    """Yield what is to be said of a count within a repeat, and of rows of unlike stitches."""
    design, gauges = setting.design, setting.gauges
    multiple, plus = stitch_repeat(body, design, setting.workshop)
    count = counts[design.kind]
    if (count - plus) % multiple or count < multiple + plus:
        yield for_maker(
            CautionCode.COUNT_BREAKS_REPEAT, stitches=count, multiple=multiple, plus=plus
        )
    kinds = sorted({row.kind for row in striping.rows}, key=lambda kind: gauges[kind].width_cm)
    narrow, wide = kinds[0], kinds[-1]
    apart = gauges[wide].width_cm / gauges[narrow].width_cm - 1
    if apart > GAUGES_APART + NEAR:
        unlike = wide[0] != narrow[0]
        yield for_maker(
            CautionCode.GAUGES_APART,
            wide=wide[1],
            wide_yarn=wide[0] if unlike else None,
            narrow=narrow[1],
            narrow_yarn=narrow[0] if unlike else None,
            apart=apart,
        )
