"""The next smaller and larger blankets as plain tables: `near` of `quoting quote --near --json`."""

from __future__ import annotations

from collections.abc import Sequence

from exports.records.construction_record import closing_record
from exports.records.plain_values import Record, money_text, plain_float, plain_words
from quoting.core.weighing.neighbours import Neighbour
from quoting.wording import neighbour_words


def near_record(neighbours: Sequence[Neighbour]) -> list[Record]:
    """Return the neighbours, each with what it closes on and what it takes."""
    return [_neighbour(neighbour) for neighbour in neighbours]


def _neighbour(neighbour: Neighbour) -> Record:
    quote = neighbour.quote
    plan, estimate, price = quote.plan, quote.estimate, quote.price
    amounts = {"price": price.price, "total": price.total, "earned_per_hour": price.earned_per_hour}
    return {
        "varied": neighbour.varied.value,
        "by": 1 if neighbour.more else -1,
        "what": plain_words(neighbour_words(neighbour)),
        "width_cm": plain_float(plan.width_cm),
        "height_cm": plain_float(plan.height_cm),
        "closing": closing_record(neighbour.closing),
        "hours": float(estimate.hours.total),
        "ends": estimate.ends,
        "skeins": estimate.skeins,
        **{name: money_text(amount, price.currency) for name, amount in amounts.items()},
    }
