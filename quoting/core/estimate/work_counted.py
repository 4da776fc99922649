"""What there is to work, counted: stitches, whole motifs, rounds, changes of colour."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, field
from functools import cache
from itertools import pairwise
from typing import NamedTuple

from quoting.core.estimate.stitching_time import YarnAndStitch
from quoting.core.order.order import Order
from quoting.core.plan.gauge import Fabric, Made
from quoting.core.plan.passes import Pass, Plan
from quoting.core.workshop.stitches import TIME_RATIO, Stitch
from quoting.core.workshop.workshop import Workshop


class MotifMade(NamedTuple):
    """A motif in a yarn; `scaled` where other rounds of it are worked than were timed."""

    yarn: str
    motif: str
    scaled: bool


@dataclass(slots=True)
class WorkCounted:
    """How many of each stitch in its yarn, and of each motif that has timings.

    Motifs are counted by what all the rounds of a timed one take: part of one is a fraction, and
    its stitches, rounds and changes of colour are in it. `rounds` are those of all other work.
    """

    stitches: dict[YarnAndStitch, int] = field(default_factory=dict)
    motifs: dict[MotifMade, float] = field(default_factory=dict)
    rounds: int = 0


def count_work(
    passes: Iterable[tuple[Pass, int]], plan: Plan, order: Order, workshop: Workshop
) -> WorkCounted:
    """Return what is in some passes of a plan, each worked so many times."""
    counted, share_of_motif = WorkCounted(), _motif_shares(workshop)
    for worked, times in passes:
        yarn = order.design.source_of(worked.colour).yarn
        if is_timed_whole(worked, workshop):
            whole = plan.gauges[Made(yarn, worked.stitch, Fabric(worked.fabric.motif))]
            made = MotifMade(yarn, worked.fabric.motif, scaled=whole.guess_limits > 0)
            more = times * share_of_motif(worked)
            counted.motifs[made] = counted.motifs.get(made, 0.0) + more
            continue
        counted.rounds += times * worked.grows
        for stitch, count in worked.stitches.items():
            work = yarn, stitch
            counted.stitches[work] = counted.stitches.get(work, 0) + count * times
    return counted


def is_timed_whole(worked: Pass, workshop: Workshop) -> bool:
    """Return whether a pass is of a motif that was timed from its first loop to its last."""
    motif = worked.fabric.motif
    return bool(motif) and bool(workshop.motif(motif).timings)


def colour_changes(plan: Plan, workshop: Workshop) -> int:
    """Return the changes of colour within the parts of one blanket."""
    return sum(plan.times(worked) for worked in _changed_to(plan, workshop))


def _changed_to(plan: Plan, workshop: Workshop) -> Iterator[Pass]:
    for before, worked in pairwise(plan.passes):
        if is_changed_to(before, worked) and not is_timed_whole(worked, workshop):
            yield worked


def is_changed_to(before: Pass, worked: Pass) -> bool:
    """Return whether a pass is in another colour than the one before it in the same part."""
    return before.part == worked.part and before.colour != worked.colour


def _motif_shares(workshop: Workshop) -> Callable[[Pass], float]:
    """Return a function that says what part of a timed motif's time a pass takes."""

    @cache
    def whole(name: str) -> float:
        motif = workshop.motif(name)
        counted = motif.counted(workshop.basic_stitch(motif.stitch, "stitch"))
        return sum(counted.time_units(number) for number in range(1, motif.rounds + 1))

    def share(worked: Pass) -> float:
        units = sum(
            count * TIME_RATIO[_basic(stitch, workshop)]
            for stitch, count in worked.stitches.items()
        )
        return units / whole(worked.fabric.motif)

    return share


def _basic(stitch: str, workshop: Workshop) -> Stitch:
    return Stitch.CH if stitch == Stitch.CH else workshop.basic_stitch(stitch, "stitch")
