"""The rows of an offer: each amount that the buyer is told, in the order that it is read."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum

from quoting.core.ground.money import exact
from quoting.core.price.payments import Payments
from quoting.core.price.price import ADJUSTMENTS, Price
from quoting.core.workshop.selling import RestDue, Tax, TaxShown


class RowCode(StrEnum):
    """What a row of an offer is the amount of.

    `together` is the price after what moves it; tax is `added` to the price or `inside` the total;
    `whole` is a total that is paid at once; the `balance` is the last of several payments.
    """

    BLANKETS = "blankets"
    RUSH = "rush"
    DISCOUNT = "discount"
    MINIMUM = "minimum"
    TOGETHER = "together"
    DELIVERY = "delivery"
    TAX_ADDED = "tax added"
    TOTAL = "total"
    TAX_INSIDE = "tax inside"
    WHOLE = "whole"
    DEPOSIT = "deposit"
    AT_HALF = "at half"
    BALANCE = "balance"


class Due(StrEnum):
    """When a payment is due."""

    ON_ACCEPTING = "on accepting"
    AT_HALF = "at half"
    BEFORE_SENDING = RestDue.BEFORE_SENDING.value
    ON_DELIVERY = RestDue.ON_DELIVERY.value


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """One amount, in whole minor units of `currency` (ISO 4217).

    `each` is that of one blanket, where there are several; `share` the rate of a tax, or what part
    of the price of one a rush or a discount is; `due` is when a payment is.
    """

    code: RowCode
    amount: Decimal
    currency: str
    each: Decimal | None = None
    share: Decimal | None = None
    due: Due | None = None


def rows_of(price: Price, tax: Tax, rest_due: RestDue) -> Iterator[Row]:
    """Yield what the blankets, delivery and tax come to, and what is paid when."""
    yield from _price_rows(price)
    yield _row(price, RowCode.DELIVERY, price.delivery)
    rate = exact(tax.rate) if tax.registered else None
    if rate is not None and tax.shown is TaxShown.ADDED:
        yield _row(price, RowCode.TAX_ADDED, price.tax, share=rate)
    yield _row(price, RowCode.TOTAL, price.total)
    if rate is not None and tax.shown is TaxShown.INCLUDED:
        yield _row(price, RowCode.TAX_INSIDE, price.tax, share=rate)
    yield from _payment_rows(price, Due(rest_due))
    yield from _rows_abroad(price, Due(rest_due))


def _price_rows(price: Price) -> Iterator[Row]:
    """Yield the price of the blankets, and what moves it there from the one that was asked."""
    moves = [line for line in price.lines if line.kind in ADJUSTMENTS]
    several = price.quantity > 1
    yield _row(
        price,
        RowCode.BLANKETS,
        price.listed,
        each=price.listed_each if several else None,
    )
    for line in moves:
        each = line.rate if several else None
        yield _row(price, RowCode(line.kind.value), line.amount, each=each, share=line.share)
    if moves:
        each = price.each if several else None
        yield _row(price, RowCode.TOGETHER, price.price, each=each)


def _payment_rows(price: Price, rest_due: Due) -> Iterator[Row]:
    """Yield what is paid when; nothing where none of it is agreed.

    That is where all of it is the rest: neither a deposit nor a second payment is asked for.
    """
    told = list(_told(price.parts, rest_due))
    if len(told) > 1:
        yield from (_row(price, code, amount, due=due) for code, amount, due in told)
    elif not price.parts.rest:
        yield from (_row(price, RowCode.WHOLE, amount, due=due) for _, amount, due in told)


def _rows_abroad(price: Price, rest_due: Due) -> Iterator[Row]:
    """Yield the total, and what is paid of it when, in the buyer's currency if that is another.

    The payments are not repeated where one of them comes to nothing there.
    """
    rate = price.exchange
    if rate is None:
        return
    parts = price.parts.exchanged(rate)
    yield Row(code=RowCode.TOTAL, amount=parts.total, currency=rate.currency)
    if parts.count == price.parts.count > 1:
        for code, amount, due in _told(parts, rest_due):
            yield Row(code=code, amount=amount, currency=rate.currency, due=due)


def _told(parts: Payments, rest_due: Due) -> Iterator[tuple[RowCode, Decimal, Due]]:
    """Yield the payments that are more than nothing, and when each is due."""
    for code, amount, due in (
        (RowCode.DEPOSIT, parts.deposit, Due.ON_ACCEPTING),
        (RowCode.AT_HALF, parts.at_half, Due.AT_HALF),
        (RowCode.BALANCE, parts.rest, rest_due),
    ):
        if amount > 0:
            yield code, amount, due


def _row(
    price: Price,
    code: RowCode,
    amount: Decimal,
    *,
    each: Decimal | None = None,
    share: Decimal | None = None,
    due: Due | None = None,
) -> Row:
    return Row(
        code=code,
        amount=amount,
        currency=price.currency,
        each=each,
        share=share,
        due=due,
    )
