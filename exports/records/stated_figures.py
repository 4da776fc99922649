"""A quote's figures read back from its kept results, as `quote_record` wrote them.

Results of an earlier version lack what was added since: it is not known then, or as it was before.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from decimal import Decimal
from types import MappingProxyType
from typing import Any

from quoting.core.estimate.chores import Part
from quoting.core.making.stated import Stated, YarnStated
from quoting.core.price.cost_lines import LineKind, Unit

Results = Mapping[str, Any]

OTHERS = (LineKind.EXTRA, LineKind.PACKAGING, LineKind.DELIVERY)


def stated_figures(results: Results) -> Stated:
    """Return what the results of a quote state."""
    blanket, hours, price = results["blanket"], results["hours"], results["price"]
    rows_of_one = blanket["rows"] + len(blanket["border_rounds"])
    lines: list[Results] = price["lines"]
    return Stated(
        width_cm=blanket["asked"]["width_cm"],
        height_cm=blanket["asked"]["height_cm"],
        stitch=blanket.get("stitch", ""),
        rows=rows_of_one * results["quote"]["quantity"],
        hours=MappingProxyType({part: _hours(hours[part.value]) for part in Part}),
        low_hours=_hours(hours["low"]),
        high_hours=_hours(hours["high"]),
        hours_widened_by=hours.get("widened_by", 1.0),
        yarn=tuple(_yarn(yarn, results, rows_of_one) for yarn in results["yarn"]),
        by_the_gram=_by_the_gram(results),
        currency=price["currency"],
        total=Decimal(price["total"]),
        tax=Decimal(price["tax"]),
        fees=Decimal(price["fees"]),
        other_costs=_sum(line["amount"] for line in lines if line["kind"] in OTHERS),
        overhead_per_hour=_sum(line["rate"] for line in lines if line["kind"] == LineKind.OVERHEAD),
        earned=Decimal(price["earned_per_hour"]),
    )


def _hours(hours: float) -> Decimal:
    return Decimal(str(hours))


def _yarn(yarn: Results, results: Results, rows_of_one: int) -> YarnStated:
    strands = results["strands"]["list"]
    ends = [strand["ends"] for strand in strands if strand["colour"] == yarn["colour"]]
    return YarnStated(
        colour=yarn["colour"],
        grams=yarn["grams"],
        high_g=yarn.get("grams_high"),
        widened_by=yarn.get("widened_by", 1.0),
        cost=Decimal(yarn["cost"]),
        last_row=max((_row(end, rows_of_one) for end in ends), default=0),
        is_bought=bool(yarn["skeins"]),
    )


def _row(end: Results, rows_of_one: int) -> int:
    """Return the row at a strand's end, or the one after it: a chain is no row of its own."""
    row: int = end.get("piece", 0) * rows_of_one + min(end["pass"] + 1, rows_of_one)
    return row


def _by_the_gram(results: Results) -> bool | None:
    """Return whether used yarn is charged; what came from the shelf is by the gram either way."""
    lines = results["price"]["lines"]
    units = {line["unit"] for line in lines if line["kind"] == LineKind.YARN}
    if units - {Unit.GRAM}:
        return False
    return True if any(yarn["skeins"] for yarn in results["yarn"]) else None


def _sum(amounts: Iterable[str]) -> Decimal:
    return sum(map(Decimal, amounts), Decimal(0))
