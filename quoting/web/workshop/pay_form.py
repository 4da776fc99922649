"""A year as the maker plans it, and the hourly rates that follow."""

from __future__ import annotations

from dataclasses import dataclass

from werkzeug.datastructures import MultiDict
from wtforms import Form

from quoting.core.ground.errors import Refused
from quoting.core.ground.place import Document
from quoting.core.workshop.pay_rates import PayRates, Year, pay_rates
from quoting.schema.figures import NUMBER
from quoting.schema.reading import read_value
from quoting.schema.selling_shapes import YEAR
from quoting.web.beside import label_of, say_beside
from quoting.web.forms.from_shape import form_of
from quoting.web.forms.sent import Sent, content_of
from quoting.web.orders.order_answer import Said
from quoting.web.shop import Shop


@dataclass(frozen=True, slots=True, kw_only=True)
class PayAnswer:
    """The form, and the year with its rates where it can be read."""

    form: Form
    year: Year | None = None
    rates: PayRates | None = None
    said: tuple[Said, ...] = ()


def blank_pay(shop: Shop) -> PayAnswer:
    """Return the form as it begins: with the hours that the workshop has."""
    hours = NUMBER.show(shop.workshop.hours_per_week, shop.notation)
    return PayAnswer(form=_bound(MultiDict({"hours_a_week": hours}), shop))


def answer_pay(sent: Sent, shop: Shop) -> PayAnswer:
    """Return the rates of a form, or what is wrong, each thing said beside its field."""
    form = _bound(sent, shop)
    try:
        year = read_value(content_of(sent), YEAR, Document.FORM, shop.notation)
    except Refused as refused:
        said = say_beside(form, refused.mistakes, shop.speech, label_of)
        return PayAnswer(form=form, said=said)
    return PayAnswer(form=form, year=year, rates=pay_rates(year, shop.workshop.currency))


def _bound(sent: Sent, shop: Shop) -> Form:
    return form_of(YEAR)(sent, meta={"shop": shop, "lines": {}})
