"""Rounding, in one place: half up, as HMRC VATREC12030 and Regulation (EC) 1103/97 have it.

A float is first read to 15 significant digits, which is what spreadsheet programs do, so that a
sheet's ROUND and these functions give the same cent.
"""

from __future__ import annotations

from decimal import ROUND_CEILING, ROUND_FLOOR, ROUND_HALF_UP, Context, Decimal

from quoting.core.ground.currencies import minor_digits

HOUR_DIGITS = 2
_SHEET = Context(prec=15, rounding=ROUND_HALF_UP)
MINUTES_PER_HOUR = 60


def exact(value: float) -> Decimal:
    """Return a float as the decimal number that a spreadsheet would show at 15 digits."""
    return Decimal(format(value, ".15g"))


def round_half_up(amount: Decimal | float, digits: int) -> Decimal:
    """Return `amount` to `digits` decimals, halves away from zero."""
    number = amount if isinstance(amount, Decimal) else exact(amount)
    return number.quantize(Decimal(1).scaleb(-digits), ROUND_HALF_UP)


def product(quantity: Decimal | int, rate: Decimal) -> Decimal:
    """Return quantity × rate to 15 significant digits, as a spreadsheet multiplies.

    So a rate that has no end, as of a gram, still gives the half cent that it stands for.
    """
    return _SHEET.multiply(Decimal(quantity), rate)


def round_money(amount: Decimal, currency: str) -> Decimal:
    """Return `amount` in whole minor units of `currency` (ISO 4217), halves up."""
    return round_half_up(amount, minor_digits(currency))


def round_money_down(amount: Decimal, currency: str) -> Decimal:
    """Return the most whole minor units of `currency` that are not over `amount`."""
    return amount.quantize(Decimal(1).scaleb(-minor_digits(currency)), ROUND_FLOOR)


def round_up_to_step(amount: Decimal, step: Decimal) -> Decimal:
    """Return the least multiple of `step` that is not under `amount`.

    The ratio is first rounded half up at six places, so that 12.0000001 steps are twelve.
    """
    steps = round_half_up(amount / step, 6).to_integral_value(ROUND_CEILING)
    return step * steps


def round_hours(minutes: float) -> Decimal:
    """Return minutes as hours to two decimals, as documents print them."""
    return round_half_up(minutes / MINUTES_PER_HOUR, HOUR_DIGITS)


def round_count(value: float) -> int:
    """Return the nearest whole number of a non-negative value, halves up."""
    return int(round_half_up(value, 0))
