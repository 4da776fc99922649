"""A workshop that can be paid in any currency that has a reference rate."""

from __future__ import annotations

from dataclasses import replace
from types import MappingProxyType

from quoting.core.ground.currencies import MINOR_DIGITS
from quoting.core.workshop.euro_rates import EURO, EuroRates
from quoting.core.workshop.workshop import Workshop


def with_reference_rates(workshop: Workshop, rates: EuroRates | None) -> Workshop:
    """Return the workshop with a cross rate for each currency it has no typed rate for.

    Its own cushion goes on them; rates of currencies that are no longer paid in are passed over.
    Where the workshop's currency has no reference rate, or there are none, the workshop as it is.
    """
    if rates is None or workshop.currency not in (EURO, *rates.rates):
        return workshop
    cushion = workshop.pricing.exchange_cushion
    crossed = {
        code: rates.between(workshop.currency, code, cushion)
        for code in (EURO, *rates.rates)
        if code in MINOR_DIGITS and code != workshop.currency
    }
    return replace(workshop, exchange=MappingProxyType(crossed | dict(workshop.exchange)))
