"""Needs of one colour of the plain yarn, for tests of skeins that are bought together."""

from __future__ import annotations

from collections.abc import Sequence

from quoting.core.estimate.colour_work import ColourWork
from quoting.core.estimate.shared_skeins import Need, SharedSkeins
from quoting.core.estimate.skeins_apart import skeins_apart
from quoting.core.estimate.skeins_together import skeins_together
from quoting.core.estimate.yarn_needed import ColourYarn
from quoting.core.workshop.habits import Habits
from quoting.core.workshop.yarns import Yarn
from tests.core.plain_yarn import COLOUR, TAIL_M


def need(need_m: float, *, tail_m: float = TAIL_M, mix: bool = False) -> Need:
    """Return a need of so many metres, joined anywhere."""
    work = ColourWork(
        yarn=ColourYarn(colour=COLOUR, counts={}, stitches_m=need_m, error=0.0),
        visits=(),
        blankets=1,
        habits=Habits(tail_cm=tail_m * 100),
    )
    return Need(need_m=need_m, share=0.0, work=work, mix_lots=mix)


def together(needs: Sequence[Need], wool: Yarn) -> SharedSkeins:
    """Return what several needs get together."""
    return skeins_together(needs, wool, COLOUR)


def apart(needs: Sequence[Need], wool: Yarn) -> SharedSkeins:
    """Return what several needs get one after another."""
    return skeins_apart(needs, wool, COLOUR)


def bought(shared: SharedSkeins) -> dict[float, int]:
    """Return how many balls are bought of each weight."""
    return {new.bought[0].put_up.weight_g: new.balls for new in shared.new}


def taken(shared: SharedSkeins) -> dict[str, dict[int, float]]:
    """Return the metres that each need takes of each lot."""
    return {
        lot.lot: {portion.need: round(portion.metres, 6) for portion in lot.portions}
        for lot in shared.held
    }
