"""Figures as a maker tells them to a buyer: none finer than the work is."""

from __future__ import annotations

from decimal import Decimal

from quoting.core.ground.measures import CM_PER, GRAMS_PER
from quoting.core.ground.money import exact, round_half_up
from quoting.wording.speech import Speech

INCH_STEP, CM_STEP = Decimal("0.5"), Decimal(1)
OUNCE_STEP, GRAM_STEP = Decimal(1), Decimal(10)
YARN_STEP = Decimal(10)
"""To what sizes, weights and lengths of yarn are rounded, each in its reader's unit."""


def rounded_size(width_cm: float, height_cm: float, speech: Speech) -> str:
    """Return a width and a length in whole centimetres, or whole and half inches."""
    sides = (_side(side, speech) for side in (width_cm, height_cm))
    return f"{' × '.join(sides)}\u00a0{speech.length_unit}"


def _side(side_cm: float, speech: Speech) -> str:
    step = INCH_STEP if speech.inches else CM_STEP
    return speech.number(_to_step(side_cm / CM_PER[speech.length_unit], step).normalize())


def rounded_side(side_cm: float, speech: Speech) -> str:
    """Return one length of a blanket as its size is rounded."""
    return f"{_side(side_cm, speech)}\u00a0{speech.length_unit}"


def rounded_weight(weight_g: float, speech: Speech) -> str:
    """Return a weight in tens of grams, or whole ounces."""
    unit, step = ("oz", OUNCE_STEP) if speech.inches else ("g", GRAM_STEP)
    return f"{speech.number(_to_step(weight_g / GRAMS_PER[unit], step))}\u00a0{unit}"


def rounded_yarn(yarn_m: float, speech: Speech) -> str:
    """Return a length of yarn in tens of metres, or of yards."""
    length = _to_step(speech.yarn_units(yarn_m), YARN_STEP)
    return f"{speech.number(length)}\u00a0{speech.yarn_unit}"


def _to_step(value: float, step: Decimal) -> Decimal:
    """Return the nearest whole number of steps; of less than half a step, one."""
    return max(Decimal(1), round_half_up(exact(value) / step, 0)) * step
