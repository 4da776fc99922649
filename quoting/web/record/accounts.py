"""The spreadsheet for the accounts, of a year or of all."""

from __future__ import annotations

from datetime import date

from flask import Blueprint, request
from flask.typing import ResponseReturnValue

from exports.accounts_workbook import Accounts, Booked, Received, accounts_bytes
from quoting.core.making.case import Case
from quoting.store.payments import PaymentReceived, payments_received
from quoting.web.downloads import download
from quoting.web.kept import book_now
from quoting.web.record import pages
from quoting.web.record.cases import cases_in
from quoting.web.shop import shop_now
from quoting.web.statuses import REFUSED

blueprint = Blueprint("accounts", __name__, url_prefix="/orders")

KIND = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet"
FIRST_YEAR, LAST_YEAR = 1900, 2999
NO_YEAR = "This is no year: four figures, such as 2026, or blank for all."


@blueprint.get("/accounts.xlsx")
def sheet() -> ResponseReturnValue:
    """Send the accounts of the year that is asked for."""
    typed = request.args.get("year", "").strip()
    if typed and not _is_year(typed):
        return pages.show(year=typed[:20], year_says=NO_YEAR), REFUSED
    year, shop = int(typed) if typed else None, shop_now()
    orders = [_booked(case) for case in cases_in(book_now())]
    payments = [_received(each) for each in payments_received(book_now())]
    accounts = Accounts(
        workshop=shop.workshop,
        day=shop.today(),
        year=year,
        orders=tuple(order for order in orders if _within(order.done, year)),
        payments=tuple(payment for payment in payments if _within(payment.day, year)),
    )
    return download(accounts_bytes(accounts), f"accounts {typed}", "xlsx", KIND)


def _is_year(typed: str) -> bool:
    digits = typed.isascii() and typed.isdecimal() and len(typed) == len(str(FIRST_YEAR))
    return digits and FIRST_YEAR <= int(typed) <= LAST_YEAR


def _within(day: date, year: int | None) -> bool:
    return year is None or day.year == year


def _booked(case: Case) -> Booked:
    stated, outcome = case.stated, case.outcome
    return Booked(
        number=case.number,
        agreed=case.agreed,
        done=case.handed_over or case.finished,
        buyer=case.buyer,
        currency=case.currency,
        total=stated.total,
        tax=stated.tax,
        fees=stated.fees,
        yarn=outcome.yarn_cost,
        other_costs=case.other_costs,
        hours=outcome.hours or None,
        earned=outcome.earned,
    )


def _received(received: PaymentReceived) -> Received:
    number, payment = received.number, received.payment
    return Received(
        day=payment.day,
        number="" if number is None else str(number),
        title=received.title,
        buyer=received.buyer,
        amount=payment.amount,
        currency=payment.currency,
    )
