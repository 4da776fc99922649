"""Sums of lengths, to be done again by hand: how often one goes into a side, what many come to."""

from __future__ import annotations

from quoting.core.ground.measures import CM_PER_INCH
from quoting.core.ground.money import round_half_up
from quoting.core.quote.quote import Quote
from quoting.web.orders.reckonings import DIGITS
from quoting.wording import Speech, confirming_digits

ROOM_DIGITS = 1


def room_sum(
    side_cm: float, each_cm: float, quote: Quote, say: Speech, *, more_cm: float = 0.0
) -> str:
    """Return how often a length goes into a side: `(80 − 2 × 0.63) / 0.8 = room for 98.4`.

    `more_cm` is what the side has more for it, or less: `(130 − 2 × 2.7 + 0.3) / 15.3 = ...`.
    """
    inside = [side_cm, quote.plan.border_depth_cm, abs(more_cm), each_cm]
    sign = -1 if more_cm < 0 else 1
    side, depth, more, each = (length / (CM_PER_INCH if say.inches else 1) for length in inside)
    room = round_half_up((side - 2 * depth + sign * more) / each, ROOM_DIGITS)

    def confirms(digits: int) -> bool:
        a, b, m, c = (round_half_up(length, digits) for length in (side, depth, more, each))
        return bool(c) and round_half_up((a - 2 * b + sign * m) / c, ROOM_DIGITS) == room

    digits = confirming_digits(DIGITS, confirms)
    whole, border, further, one = (say.trimmed(x, digits) for x in (side, depth, more, each))
    body = f"{whole} − 2 × {border}" if depth else whole
    if more:
        body = f"{body} {'−' if sign < 0 else '+'} {further}"
    return f"{f'({body})' if depth or more else body} / {one} = room for {say.number(room)}"


def times_sum(count: int, each_cm: float, say: Speech) -> str:
    """Return what so many of one length come to: `11 × 1.9 cm = 20.9 cm`."""
    each = each_cm / (CM_PER_INCH if say.inches else 1)
    total = round_half_up(count * each, 1)

    def confirms(digits: int) -> bool:
        return round_half_up(count * round_half_up(each, digits), 1) == total

    digits = confirming_digits(DIGITS, confirms)
    return f"{say.number(count)} × {say.length(each_cm, digits)} = {say.length(count * each_cm)}"
