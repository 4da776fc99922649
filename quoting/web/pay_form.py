"""A year as the maker plans it, and the hourly rates that follow."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from werkzeug.datastructures import MultiDict
from wtforms import Form

from quoting.core.errors import Refused
from quoting.core.pay_rates import PayRates, Year, pay_rates
from quoting.web.answers import Said
from quoting.web.beside import label_of, say_beside
from quoting.web.drafts import Notes, Sheet
from quoting.web.fields import Money, Number
from quoting.web.shop import Shop


class PayForm(Form):
    """What the maker wants of a year."""

    income = Money("Income you want from making, a year")
    overhead = Money("Overhead, a year")
    weeks = Number("Weeks a year")
    hours_a_week = Number("Hours a week really worked on orders")


@dataclass(frozen=True, slots=True, kw_only=True)
class PayAnswer:
    """The form, and the year with its rates where it can be read."""

    form: PayForm
    year: Year | None = None
    rates: PayRates | None = None
    said: tuple[Said, ...] = ()


def blank_pay(shop: Shop) -> PayAnswer:
    """Return the form as it begins: with the hours that the workshop has."""
    values = {"hours_a_week": shop.workshop.hours_per_week}
    return PayAnswer(form=PayForm(data=values, meta=_meta(shop)))


def answer_pay(sent: MultiDict[str, str], shop: Shop) -> PayAnswer:
    """Return the rates of a form, or what is wrong, each thing said beside its field."""
    form = PayForm(sent, meta=_meta(shop))
    try:
        year = _read_year(form)
    except Refused as refused:
        said = say_beside(form, refused.mistakes, shop.speech, label_of)
        return PayAnswer(form=form, said=said)
    return PayAnswer(form=form, year=year, rates=pay_rates(year, shop.workshop.currency))


def _read_year(form: PayForm) -> Year:
    notes = Notes()
    sheet = Sheet(form, notes)
    values = {name: sheet.need(name, 1) for name in ("income", "overhead", "weeks", "hours_a_week")}
    try:
        year = Year(**values)
    except Refused as refused:
        notes.keep(refused.mistakes)
        raise Refused(*notes.mistakes) from refused
    notes.done()
    return year


def _meta(shop: Shop) -> dict[str, Any]:
    return {"shop": shop, "lines": {}}
