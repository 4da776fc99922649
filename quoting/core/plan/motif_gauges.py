"""What a measured motif says of the rounds that are worked as it is: their size and their yarn."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import NamedTuple

from quoting.core.ground.cautions import Caution, for_maker
from quoting.core.ground.codes import CautionCode
from quoting.core.plan.body_plan import Setting
from quoting.core.plan.design_gauges import borrowed_gauge
from quoting.core.plan.gauge import Fabric, Gauge, Made, Sureness
from quoting.core.workshop.motifs import Motif
from quoting.core.workshop.rounds import Rounds
from quoting.core.workshop.stitches import YARN_RATIO, Stitch

SCALED_LIMITS = 0.10
"""How far the yarn may be off besides, where other rounds are worked than were weighed, at 95 %."""

FEW_WEIGHED = 5
"""Of fewer motifs weighed together the scale's step is too much of each."""


class Sides(NamedTuple):
    """The side of what grows in rounds after round 1, and what each further one adds, in cm."""

    first_cm: float
    growth_cm: float

    def after(self, rounds: int) -> float:
        """Return the side after so many rounds: the short one of a rectangle."""
        return self.first_cm + self.growth_cm * (rounds - 1)

    def heights_cm(self, rounds: int) -> list[float]:
        """Return the height of each of so many rounds, which adds it at both ends."""
        return [self.first_cm / 2] + [self.growth_cm / 2] * (rounds - 1)


@dataclass(frozen=True, slots=True, kw_only=True)
class MotifWork:
    """So many `rounds` worked as a motif is, counted as `counted`, and the `sides` they have."""

    motif: Motif
    counted: Rounds
    rounds: int
    sides: Sides

    @property
    def side_cm(self) -> float:
        """The short side after all its rounds."""
        return self.sides.after(self.rounds)

    def fabric(self, number: int) -> Fabric:
        """Return what the yarn of one round is measured by."""
        apart = bool(self.motif.rounds_m) and number <= self.motif.rounds
        return Fabric(self.motif.name, number if apart else 0)

    def is_measured(self, fabric: Fabric) -> bool:
        """Whether its yarn was weighed as it is worked, or was unravelled for just this round."""
        return not self.counted.extra and (fabric.round > 0 or self.rounds == self.motif.rounds)


def motif_sides(motif: Motif, gauge: Gauge) -> Sides:
    """Return how a motif grows.

    By its two sides; else by the rows of its stitch's swatch, if they leave its first round as
    much as they add; else as all its rounds have done.
    """
    growth_cm = motif.growth_cm
    if growth_cm is None:
        even_cm = motif.side_cm / motif.rounds
        growth_cm = min(even_cm, 2 * gauge.height_cm) if gauge.swatched else even_cm
    return Sides(motif.side_cm - growth_cm * (motif.rounds - 1), growth_cm)


def motif_cautions(motif: Motif) -> Iterator[Caution]:
    """Yield what is to be said of how a motif was measured."""
    weighed = motif.weighed
    if weighed is not None and weighed.motifs < FEW_WEIGHED:
        yield for_maker(
            CautionCode.FEW_MOTIFS_WEIGHED,
            motif=motif.name,
            motifs=weighed.motifs,
            wanted=FEW_WEIGHED,
        )


def motif_gauges(work: MotifWork, setting: Setting) -> dict[Made, Gauge]:
    """Return the gauge of the motif's stitch and of its chains, round by round where measured.

    A yarn that the motif was not made in is taken to work up as the motif's own does.
    """
    yarns = [setting.design.yarn, *(s.yarn for s in setting.design.colours.values())]
    return dict(_gauges(work, setting, dict.fromkeys(yarns)))


def _gauges(
    work: MotifWork, setting: Setting, yarns: Iterable[str]
) -> Iterator[tuple[Made, Gauge]]:
    workshop, motif = setting.workshop, work.motif
    kind = workshop.basic_stitch(motif.stitch, "stitch")
    for fabric, unit_m in _units_m(work, setting):
        for stitch, basic in ((motif.stitch, kind), (Stitch.CH.value, Stitch.CH)):
            gauge = _gauge(work, stitch, basic, fabric, unit_m)
            for yarn in yarns:
                made = Made(yarn, stitch, fabric)
                yield made, gauge if yarn == motif.yarn else borrowed_gauge(gauge)


def _units_m(work: MotifWork, setting: Setting) -> Iterator[tuple[Fabric, float]]:
    """Yield the yarn of what takes as much as one single crochet, by fabric."""
    motif = work.motif
    metres = motif.metres(setting.workshop.yarn(motif.yarn).metres_per_gram)
    counted = motif.counted(work.counted.kind)
    units = [counted.yarn_units(number) for number in range(1, motif.rounds + 1)]
    yield Fabric(motif.name), metres / sum(units)
    for number, round_m in enumerate(motif.rounds_m, 1):
        part = round_m / sum(motif.rounds_m)
        yield Fabric(motif.name, number), metres * part / units[number - 1]


def _gauge(work: MotifWork, stitch: str, basic: Stitch, fabric: Fabric, unit_m: float) -> Gauge:
    motif, is_chain = work.motif, basic is Stitch.CH
    measured = work.is_measured(fabric)
    return Gauge(
        stitch=stitch,
        kind=basic,
        width_cm=work.counted.width_cm(work.rounds, work.side_cm),
        height_cm=0.0 if is_chain else work.sides.growth_cm / 2,
        yarn_m=unit_m * YARN_RATIO[basic],
        sureness=Sureness.MEASURED if measured else Sureness.ESTIMATED,
        basis=f"{motif.yarn}/{motif.name}",
        basis_error=motif.reading_error,
        guess_limits=0.0 if measured else SCALED_LIMITS,
        one_guess=True,
    )
