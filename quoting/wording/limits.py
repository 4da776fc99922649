"""Figures that are past a limit, and the limit, in the unit that their place is given in."""

from __future__ import annotations

from decimal import ROUND_CEILING, ROUND_FLOOR, Decimal

from quoting.core.errors import Mistake
from quoting.core.measures import CM_PER, GRAMS_PER
from quoting.core.money import exact
from quoting.wording.speech import Speech, as_decimal

LEAST_DIGITS = 2
"""Digits that a least is said with after its zeros, and decimals that it has in any case."""

SHARE_DIGITS = 6
"""Decimals of a share in per cent, where it has so many."""

_LENGTHS = frozenset({"width", "height", "carry_height", "tail", "length", "ruler_step"})
_WEIGHTS = frozenset({"grams", "weight", "scale_step", "up_to", "packaging_weight"})
_SHARES = frozenset({"margin", "markup", "discount", "rush", "rate", "share", "cushion"}) | {
    "rest_allowance",
    "confidence",
    "allowance",
    "tension",
    "rip_back",
}
_MONEY = frozenset({"cost", "price", "given", "minimum", "charged", "paid", "packaging"}) | {
    "round_up_to",
    "fixed",
    "making_per_hour",
    "office_per_hour",
    "overhead_per_hour",
}


def past_limit(name: str, fact: Decimal | float, mistake: Mistake, speech: Speech) -> str:
    """Return what was read, or the limit it is past, as text with its unit."""
    table, _, key = mistake.place.rpartition(".")
    unit = _unit(key, speech)
    if mistake.code == "too-small" and unit is not None:
        return _under(name, fact, mistake, unit, speech)
    if key in _LENGTHS:
        return speech.length(float(fact), 2)
    if key in _WEIGHTS:
        return speech.weight(fact)
    if key == "metres":
        return speech.yarn_length(float(fact))
    if key in _MONEY:
        return speech.rate(as_decimal(fact))
    if key in _SHARES and not table.startswith(("exchange", "blanket")):
        return f"{speech.percent(fact, SHARE_DIGITS)} ({speech.number(fact)})"
    return speech.number(fact)


def _unit(key: str, speech: Speech) -> tuple[float, str] | None:
    """Return the unit that a measure is said in: its size in cm, g or m, and its sign."""
    if key in _LENGTHS:
        return CM_PER[speech.length_unit], speech.length_unit
    if key in _WEIGHTS:
        return GRAMS_PER[speech.weight_unit], speech.weight_unit
    if key == "metres":
        return CM_PER[speech.yarn_unit] / CM_PER["m"], speech.yarn_unit
    return None


def _under(
    name: str, fact: Decimal | float, mistake: Mistake, unit: tuple[float, str], speech: Speech
) -> str:
    """Return a least rounded up, so that it will do as it is said, and what is under it down."""
    size, sign = unit
    limit = mistake.facts.get("limit")
    assert isinstance(limit, int | float | Decimal), "what is too small has a limit"  # noqa: S101
    least = as_decimal(limit) / exact(size)
    digits = max(LEAST_DIGITS, LEAST_DIGITS - 1 - least.adjusted()) if least else LEAST_DIGITS
    towards = ROUND_CEILING if name == "limit" else ROUND_FLOOR
    said = (as_decimal(fact) / exact(size)).quantize(Decimal(1).scaleb(-digits), towards)
    return f"{speech.number(said)}\u00a0{sign}"
