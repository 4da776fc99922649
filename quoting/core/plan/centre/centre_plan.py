"""The plan of a body in one piece from its centre."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from quoting.core.ground.cautions import Caution, for_maker
from quoting.core.ground.codes import CautionCode, MistakeCode
from quoting.core.ground.errors import refuse
from quoting.core.ground.money import round_count
from quoting.core.ground.place import at
from quoting.core.ground.sameness import NEAR
from quoting.core.order.from_centre import FromCentre
from quoting.core.plan.body_plan import BodyPlan, Setting
from quoting.core.plan.border import Rim, StitchesAlong
from quoting.core.plan.centre.banding import round_colours
from quoting.core.plan.centre.growing import Growing, growing_of, plain_counted
from quoting.core.plan.gauge import BY_SWATCH
from quoting.core.plan.motif_gauges import MotifWork, motif_cautions, motif_gauges
from quoting.core.plan.passes import Edge
from quoting.core.plan.round_passes import round_passes
from quoting.core.workshop.rounds import CLUSTER, CORNERS, Counting, Rounds

MAX_ROUNDS = 1_000

OFF_FLAT = 1 / 16
"""One stitch in so many more or fewer than lies flat, and rounds may ruffle or cup."""

OFF_LENGTH = 1 / 20
"""How far off the length of a circle or a hexagon may be, and it is told."""

STANDING_ON_A_CORNER = 2 / 3**0.5
"""The height of a hexagon across its corners for its width across its sides."""


def plan_centre(body: FromCentre, setting: Setting) -> BodyPlan:
    """Return the rounds.

    Errors: `less-than-a-round`, with the smallest side in cm; `too-small` where the maker's own
    rounds are fewer than the stripes that are fitted; `too-many-rounds`; as `growing_of`.
    """
    growing = growing_of(body, setting)
    rounds = _rounds(body, setting, growing)
    plain = plain_counted(body, setting)
    pitch_cm = _pitch_cm(plain, growing, setting)
    counted = replace(plain, extra=_extra(body, setting, pitch_cm))
    short_cm = growing.sides.after(rounds)
    sides_cm = _sides_cm(body, setting, short_cm, short_cm + counted.extra * pitch_cm)
    work = _motif_work(growing, counted, rounds)
    passes = round_passes(
        counted,
        round_colours(body, rounds),
        stitch=setting.design.stitch,
        heights_cm=growing.sides.heights_cm(rounds),
        fabrics=[work.fabric(n + 1) if work else BY_SWATCH for n in range(rounds)],
    )
    return BodyPlan(
        passes=tuple(passes),
        stitches=counted.round(rounds).stitches,
        width_cm=sides_cm[0],
        height_cm=sides_cm[1],
        rim=_rim(counted, setting, rounds, sides_cm),
        ends=Edge.START,
        border_tall=_border_tall(body),
        gauges=motif_gauges(work, setting) if work else {},
        chores={"turn": rounds - 1} if body.turned else {},
        counted=counted,
        count_cautions=(
            *_cautions(body, setting, growing, counted),
            *_size_cautions(body, setting, sides_cm[1]),
        ),
    )


def _motif_work(growing: Growing, counted: Rounds, rounds: int) -> MotifWork | None:
    if growing.motif is None:
        return None
    return MotifWork(motif=growing.motif, counted=counted, rounds=rounds, sides=growing.sides)


def _rounds(body: FromCentre, setting: Setting, growing: Growing) -> int:
    """Return the rounds: the maker's own, else those that come nearest to the short side."""
    wide_cm, tall_cm = setting.width_cm, setting.height_cm
    by_width = body.counting.goes_by_width or wide_cm <= tall_cm
    side = at("blanket", "width" if by_width else "height")
    rounds = body.whole_rounds or growing.rounds_for(wide_cm if by_width else tall_cm)
    least = len(body.stripes) if body.fitted else 1
    if rounds < least and body.rounds is None:
        smallest_cm = growing.sides.after(least) + 2 * setting.border_cm
        raise refuse(side, MistakeCode.LESS_THAN_A_ROUND, smallest_cm=smallest_cm)
    if rounds < least:
        place = at("blanket", "centre", "rounds")
        raise refuse(place, MistakeCode.TOO_SMALL, read=rounds, limit=least)
    if rounds > MAX_ROUNDS:
        own = [key for key in ("rounds", "repeats") if getattr(body, key) is not None]
        place = at("blanket", "centre", own[0]) if own else side
        raise refuse(place, MistakeCode.TOO_MANY_ROUNDS, read=rounds, limit=MAX_ROUNDS)
    return rounds


def _pitch_cm(plain: Rounds, growing: Growing, setting: Setting) -> float:
    """Return how much longer a rectangle is for each stitch, or cluster, that it begins on.

    A circle and a hexagon begin on none. A measured motif tells it by its growth: each of its
    sides has one cluster, or so many stitches, more after each round. Else it goes by the width of
    the swatch's stitches.
    """
    if plain.counting.goes_by_width:
        return 0.0
    clusters = plain.counting is Counting.CLUSTERS
    if growing.motif is not None:
        return growing.sides.growth_cm / (1 if clusters else plain.growth / CORNERS[plain.counting])
    wide = CLUSTER + plain.side_chains if clusters else 1
    return wide * setting.gauges[setting.design.kind].width_cm


def _extra(body: FromCentre, setting: Setting, pitch_cm: float) -> int:
    if body.counting.goes_by_width:
        return 0
    if body.starts_on is not None:
        return body.starts_on
    return round_count(abs(setting.width_cm - setting.height_cm) / pitch_cm)


def _sides_cm(
    body: FromCentre, setting: Setting, short_cm: float, long_cm: float
) -> tuple[float, float]:
    """Return the width and the height that come out."""
    if body.counting is Counting.HEXAGON:
        return short_cm, short_cm * STANDING_ON_A_CORNER
    if body.counting is Counting.CIRCLE or setting.width_cm <= setting.height_cm:
        return short_cm, long_cm
    return long_cm, short_cm


def _rim(counted: Rounds, setting: Setting, rounds: int, sides_cm: tuple[float, float]) -> Rim:
    """Return the sides from the top on, each as wide as its stitches are there.

    A circle or a hexagon whose rounds ruffle or cup is edged by how long its outline is, too.
    """
    gauge, sides = setting.gauges[setting.design.kind], counted.sides(rounds)
    if counted.counting.goes_by_width:
        there = replace(gauge, width_cm=counted.width_cm(rounds, sides_cm[0]))
        return [StitchesAlong(side, there) for side in sides]
    short, long = sides[:2]
    if sides_cm[0] > sides_cm[1]:
        short, long = long, short
    along = [(short, sides_cm[0]), (long, sides_cm[1])] * 2
    return [StitchesAlong(count, replace(gauge, width_cm=cm / count)) for count, cm in along]


def _cautions(
    body: FromCentre, setting: Setting, growing: Growing, counted: Rounds
) -> Iterator[Caution]:
    """Yield what is to be said of rounds that may not lie flat, or that were never measured."""
    gauge = setting.gauges[setting.design.kind]
    if gauge.swatched and growing.motif is None:
        more = counted.growth_in_widths
        flat = counted.flat_growth(gauge.height_cm, gauge.width_cm)
        if abs(more - flat) > OFF_FLAT * flat:
            code = CautionCode.ROUNDS_CUP if more < flat else CautionCode.ROUNDS_RUFFLE
            yield for_maker(code, stitch=setting.design.stitch, more=more, flat=flat)
    if growing.motif is not None:
        yield from motif_cautions(growing.motif)
    elif body.counting is Counting.CLUSTERS:
        yield for_maker(CautionCode.CLUSTERS_BY_SWATCH, stitch=setting.design.stitch)


def _size_cautions(body: FromCentre, setting: Setting, tall_cm: float) -> Iterator[Caution]:
    """Yield that a length was asked of what has none, beside its border.

    Who asks for a circle or a hexagon of one size, or as long as it comes out, means its width.
    """
    asked_cm, off_cm = setting.height_cm, abs(setting.height_cm - tall_cm)
    means_width = abs(asked_cm - setting.width_cm) < NEAR
    if body.counting.goes_by_width and not means_width and off_cm > OFF_LENGTH * asked_cm:
        height_cm = tall_cm + 2 * setting.border_cm * _border_tall(body)
        wanted_cm = setting.design.height_cm
        yield for_maker(CautionCode.ONE_SIZE_ACROSS, height_cm=height_cm, wanted_cm=wanted_cm)


def _border_tall(body: FromCentre) -> float:
    """Return how much taller a border makes it than wider."""
    return STANDING_ON_A_CORNER if body.counting is Counting.HEXAGON else 1.0
