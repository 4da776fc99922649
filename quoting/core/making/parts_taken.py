"""What one kind of work took, shared among the parts of it that no clock tells apart."""

from __future__ import annotations

from collections.abc import Mapping
from decimal import Decimal

from quoting.core.estimate.chores import Part
from quoting.core.estimate.hours import Hours
from quoting.core.ground.money import HOUR_DIGITS, round_half_up
from quoting.core.making.log_lines import Doing


def parts_taken(hours: Hours, doing: Doing, took: Decimal) -> Mapping[Part, Decimal]:
    """Return the hours of each part of one kind of work; they add up to those that it took.

    Nobody's clock tells turns, changes and joins from the stitches: they are taken as estimated,
    and the stitching is the rest.
    """
    first, *others = doing.parts
    shares = {part: hours.of(part) for part in others}
    if sum(shares.values()) > took:
        planned = hours.of(first) + sum(shares.values())
        shares = {
            part: round_half_up(took * share / planned, HOUR_DIGITS)
            for part, share in shares.items()
        }
    return {first: took - sum(shares.values()), **shares}
