"""The payments of an order, as the maker reads of them while she makes it."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from quoting.core.making.money_due import PaymentDue
from quoting.core.quote.offer_rows import Due, RowCode

_NAMES: Mapping[RowCode, str] = MappingProxyType(
    {
        RowCode.WHOLE: "All of it",
        RowCode.DEPOSIT: "Deposit",
        RowCode.AT_HALF: "Part payment",
        RowCode.BALANCE: "Rest",
    }
)

_WHEN: Mapping[Due, str] = MappingProxyType(
    {
        Due.ON_ACCEPTING: "when the order is agreed",
        Due.AT_HALF: "when half is made",
        Due.BEFORE_SENDING: "before it is sent",
        Due.ON_DELIVERY: "on delivery",
    }
)


def payment_name(payment: PaymentDue) -> str:
    """Return what a payment is called."""
    return _NAMES[payment.code]


def payment_when(payment: PaymentDue) -> str:
    """Return when a payment is due; empty where nothing was agreed of that."""
    return "" if payment.due is None else _WHEN[payment.due]
