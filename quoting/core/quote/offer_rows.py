"""The rows of an offer: each amount that the buyer is told, in the order that it is read."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum

from quoting.core.ground.money import exact
from quoting.core.price.price import ADJUSTMENTS, Price
from quoting.core.workshop.selling import Tax, TaxShown


class RowCode(StrEnum):
    """What a row of an offer is the amount of.

    `together` is the price after what moves it; tax is `added` to the price or `inside` the total;
    `whole` is a total that is paid at once.
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
    BALANCE = "balance"


class Due(StrEnum):
    """When a payment is due."""

    ON_ACCEPTING = "on accepting"
    BEFORE_SENDING = "before sending"


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


def rows_of(price: Price, tax: Tax) -> Iterator[Row]:
    """Yield what the blankets, delivery and tax come to, and what is paid when."""
    yield from _price_rows(price)
    yield _row(price, RowCode.DELIVERY, price.delivery)
    rate = exact(tax.rate) if tax.registered else None
    if rate is not None and tax.shown is TaxShown.ADDED:
        yield _row(price, RowCode.TAX_ADDED, price.tax, share=rate)
    yield _row(price, RowCode.TOTAL, price.total)
    if rate is not None and tax.shown is TaxShown.INCLUDED:
        yield _row(price, RowCode.TAX_INSIDE, price.tax, share=rate)
    yield from _payment_rows(price)
    yield from _rows_abroad(price)


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


def _payment_rows(price: Price) -> Iterator[Row]:
    """Yield what is paid when; nothing where no deposit is asked, as none of it is agreed then."""
    if not price.deposit:
        return
    if not price.balance:
        yield _row(price, RowCode.WHOLE, price.total, due=Due.ON_ACCEPTING)
        return
    yield _row(price, RowCode.DEPOSIT, price.deposit, due=Due.ON_ACCEPTING)
    yield _row(price, RowCode.BALANCE, price.balance, due=Due.BEFORE_SENDING)


def _rows_abroad(price: Price) -> Iterator[Row]:
    """Yield the total, and what is paid of it when, in the buyer's currency if that is another."""
    rate, total = price.exchange, price.buyer_total
    if rate is None or total is None:
        return
    money = rate.currency
    yield Row(code=RowCode.TOTAL, amount=total, currency=money)
    deposit, balance = price.buyer_deposit, price.buyer_balance
    if deposit and balance and price.balance:
        yield Row(code=RowCode.DEPOSIT, amount=deposit, currency=money, due=Due.ON_ACCEPTING)
        yield Row(code=RowCode.BALANCE, amount=balance, currency=money, due=Due.BEFORE_SENDING)


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
