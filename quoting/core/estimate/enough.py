"""Whether the balls of a colour are enough by their metres, and how many packs would be."""

from __future__ import annotations

import math

from quoting.core.estimate.estimate import ColourEstimate
from quoting.core.estimate.skeins import Bought

ROUNDING_M = 0.001
"""What balls that are counted in whole micrometres may lose: half of one for each, of very many."""


def metres_short(colour: ColourEstimate) -> float:
    """Return the metres that the balls are short of those to have; 0 where they are enough."""
    missing = -metres_spare(colour)
    return missing if missing > ROUNDING_M else 0.0


def metres_spare(colour: ColourEstimate) -> float:
    """Return the metres of all balls beyond those to have."""
    return math.fsum(colour.balls_m) - colour.metres_to_buy


def packs_enough(colour: ColourEstimate, some: Bought) -> int:
    """Return the fewest packs of one put-up that are enough beside the other balls of a colour.

    Each ball more brings a join, which takes two tails. By metres alone: joins at an edge only
    can take more.
    """
    pack_m = some.put_up.pack * (some.put_up.length_m - 2 * colour.tail_m)
    spared = math.floor((metres_spare(colour) + ROUNDING_M) / pack_m)
    least = int(some.balls == len(colour.balls_m))
    return max(least, some.packs - spared)
