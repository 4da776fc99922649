"""How long motifs take, that were timed whole: from the first loop to fastening off."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from quoting.core.estimate.pace import Pace
from quoting.core.estimate.pace_guesses import Guess, Likeness, Unknown
from quoting.core.estimate.stitching_time import paces_of
from quoting.core.estimate.work_counted import MotifMade
from quoting.core.workshop.motifs import Motif
from quoting.core.workshop.timings import TimedStitch
from quoting.core.workshop.workshop import Workshop


@dataclass(frozen=True, slots=True, kw_only=True)
class MotifTime:
    """So many motifs in a yarn, and how sure their time is.

    All of one motif share its pace's error; `shared_min` is this one's part of that half-width.
    """

    motif: str
    yarn: str
    count: float
    basis: TimedStitch
    pace: Pace
    shared_min: float
    guesses: tuple[Guess, ...]


def motif_times(made: Mapping[MotifMade, float], workshop: Workshop) -> Iterator[MotifTime]:
    """Yield the time of each motif of the work."""
    together: dict[str, float] = {}
    for each, count in made.items():
        together[each.motif] = together.get(each.motif, 0.0) + count
    paces, likeness = paces_of(workshop), Likeness(workshop)
    for each, count in made.items():
        motif, total = workshop.motif(each.motif), together[each.motif]
        pace = paces[motif.timed]
        yield MotifTime(
            motif=motif.name,
            yarn=each.yarn,
            count=count,
            basis=motif.timed,
            pace=pace,
            shared_min=pace.predict(total).half_width * count / total,
            guesses=tuple(_guesses(each, motif, likeness)),
        )


def _guesses(made: MotifMade, motif: Motif, likeness: Likeness) -> Iterator[Guess]:
    if made.scaled:
        yield Guess(unknown=Unknown.ROUNDS, what=motif.name, like=motif.name)
    yield from likeness.yarn_guesses(made.yarn, motif.yarn)
