"""What a line of a costing is called, counts and is charged at: alike wherever it is shown."""

from __future__ import annotations

from decimal import Decimal

from quoting.core.ground.currencies import minor_digits
from quoting.core.ground.money import HOUR_DIGITS, round_half_up
from quoting.core.price.cost_lines import Line, LineKind, Unit
from quoting.wording.catalogues import sentence
from quoting.wording.confirmed import confirming_digits
from quoting.wording.figures import RATE_DIGITS
from quoting.wording.speech import Speech

PERCENT_DIGITS = 4
"""Decimals of a rate in per cent, where it has so many."""

_KINDS = {
    LineKind.YARN: "Yarn",
    LineKind.EXTRA: "Extra",
    LineKind.PACKAGING: "Packaging",
    LineKind.MAKING: "Making",
    LineKind.OFFICE: "Admin: photos, packing, messages",
    LineKind.OVERHEAD: "Overhead",
    LineKind.DELIVERY: "Delivery and post",
    LineKind.RUSH: sentence("Rush"),
    LineKind.DISCOUNT: sentence("Discount"),
    LineKind.MINIMUM: sentence("Up to the minimum charge"),
    LineKind.FEE: "Fee",
}

_SHARES = {
    LineKind.RUSH: sentence("Rush, {share}"),
    LineKind.DISCOUNT: sentence("Discount, {share}"),
}

_UNITS = {
    Unit.SKEIN: ("ball", "balls"),
    Unit.PACK: ("pack", "packs"),
    Unit.GRAM: ("g", "g"),
    Unit.HOUR: ("h", "h"),
    Unit.PIECE: ("piece", "pieces"),
    Unit.PAYMENT: ("payment", "payments"),
}


def line_what(line: Line, speech: Speech) -> str:
    """Return what a line is: `Yarn, oat: 100 g skeins`, `Making`, `Card payment, on £297.00`."""
    match line.kind:
        case LineKind.YARN:
            return ": ".join(yarn_line_parts(line, speech))
        case LineKind.FEE if line.unit is Unit.PAYMENT:
            return f"{line.subject}, on each payment"
        case LineKind.FEE:
            return f"{line.subject}, on {speech.money(line.quantity)}"
        case _:
            return line.subject or move_words(line.kind, line.share, speech)


def move_words(kind: LineKind, share: Decimal | None, speech: Speech) -> str:
    """Return what a kind of line is, with its share of the price if it is one: `Rush, 10%`."""
    if share is None or kind not in _SHARES:
        return speech.worded(_KINDS[kind])
    return speech.worded(_SHARES[kind]).format(share=speech.percent(share, 2))


def yarn_line_parts(line: Line, speech: Speech) -> tuple[str, str]:
    """Return what a line of yarn is, and how it is sold: `Yarn, oat` and `100 g skeins`."""
    sold = "by the gram" if line.ball_g is None else sold_as(line.ball_g, line.pack, speech)
    return f"{_KINDS[line.kind]}, {line.subject}", sold


def sold_as(ball_g: float, pack: int, speech: Speech) -> str:
    """Return how a yarn is sold: `100 g skeins`, `packs of 10 × 50 g`."""
    ball = speech.weight(ball_g)
    return f"{ball} {speech.worded('balls')}" if pack == 1 else f"packs of {pack} × {ball}"


def line_unit(line: Line, speech: Speech) -> str:
    """Return what the quantity counts; for a share of money, the currency's code."""
    if line.unit is Unit.MONEY:
        return speech.currency
    one, many = _UNITS[line.unit]
    return speech.worded(one if line.quantity == 1 else many)


def line_quantity(line: Line, speech: Speech) -> str:
    """Return the quantity, with the decimals that it is reckoned with."""
    if line.unit is Unit.MONEY:
        return speech.number(line.quantity, minor_digits(speech.currency))
    return speech.number(line.quantity, HOUR_DIGITS if line.unit is Unit.HOUR else 0)


def line_rate(line: Line, speech: Speech) -> str:
    """Return the rate: money for one, or for a share of money a percentage.

    It has the decimals that the quantity, multiplied by it, gives the amount with.
    """
    places = minor_digits(speech.currency)

    def confirms(digits: int) -> bool:
        return round_half_up(line.quantity * round_half_up(line.rate, digits), places) == (
            line.amount
        )

    if line.unit is Unit.MONEY:
        digits = confirming_digits(PERCENT_DIGITS + 2, confirms)
        return speech.percent(line.rate, digits - 2)
    return speech.rate(line.rate, digits=confirming_digits(RATE_DIGITS, confirms))
