"""How a piece grows from its centre: by a measured motif, else by the rows of its stitch."""

from __future__ import annotations

from dataclasses import dataclass

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import refuse
from quoting.core.ground.money import round_count
from quoting.core.ground.place import at
from quoting.core.order.from_centre import FromCentre
from quoting.core.plan.body_plan import Setting
from quoting.core.plan.motif_gauges import Sides, motif_sides
from quoting.core.workshop.motifs import Motif
from quoting.core.workshop.rounds import Rounds


@dataclass(frozen=True, slots=True, kw_only=True)
class Growing:
    """The sides that a piece grows to, and the motif that it goes by, if by one."""

    sides: Sides
    motif: Motif | None

    def rounds_for(self, side_cm: float) -> int:
        """Return the rounds that come nearest to a side; 0 where that is less than one."""
        sides = self.sides
        return round_count(max(0.0, (side_cm - sides.first_cm) / sides.growth_cm + 1))


def growing_of(body: FromCentre, setting: Setting) -> Growing:
    """Return how the piece grows: as the motif that it names, or that is counted alike, if any.

    Errors: `motif-counted-otherwise`.
    """
    motif = _motif_for(body, setting)
    if motif is None:
        across_cm = 2 * setting.gauges[setting.design.kind].height_cm
        return Growing(sides=Sides(across_cm, across_cm), motif=None)
    gauge = setting.gauges[motif.yarn, motif.stitch]
    return Growing(sides=motif_sides(motif, gauge), motif=motif)


def plain_counted(body: FromCentre, setting: Setting) -> Rounds:
    """Return how the rounds are counted, were it no rectangle."""
    return Rounds(
        counting=body.counting,
        kind=setting.workshop.basic_stitch(setting.design.stitch, "stitch"),
        first_side=body.first_side,
        side_chains=body.side_chains,
    )


def _motif_for(body: FromCentre, setting: Setting) -> Motif | None:
    """Return the motif that a piece goes by: its own, else of those alike the largest."""
    design, counted = setting.design, plain_counted(body, setting)

    def is_alike(motif: Motif) -> bool:
        return motif.stitch == design.stitch and motif.counted(counted.kind) == counted

    if body.motif is not None:
        named = setting.workshop.motif(body.motif)
        if not is_alike(named):
            place = at("blanket", "centre", "motif")
            raise refuse(place, MistakeCode.MOTIF_COUNTED_OTHERWISE, read=named.name)
        return named
    found = (m for m in setting.workshop.motifs if m.yarn == design.yarn and is_alike(m))
    return max(found, key=lambda motif: (motif.rounds, motif.name), default=None)
