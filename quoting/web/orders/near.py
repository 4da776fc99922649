"""A little larger or smaller: what one less and one more comes to, count by count."""

from __future__ import annotations

from dataclasses import dataclass

from flask import Blueprint, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue

from quoting.core.quote.quote import Quote
from quoting.core.weighing.closing import closing_of
from quoting.core.weighing.neighbours import neighbours
from quoting.web.choices.card import without_page_fields
from quoting.web.forms.sent import Sent
from quoting.web.orders.order_answer import answer_form
from quoting.web.orders.order_form import sent_with_design
from quoting.web.orders.pages import show_refused
from quoting.web.shop import shop_now, speech_now
from quoting.web.turns import take_turn
from quoting.wording import apart_words, closed_words, neighbour_words

blueprint = Blueprint("near", __name__)


@dataclass(frozen=True, slots=True, kw_only=True)
class Choice:
    """One blanket: what it is called, what it closes on, and the form that takes it over."""

    name: str
    closed: str
    quote: Quote
    sent: Sent


@blueprint.post("/near")
def show() -> ResponseReturnValue:
    """Show the neighbours of the order beside it as it is."""
    take_turn()
    sent = without_page_fields(request.form)
    found = answer_form(sent, shop_now(), patient=False)
    if found.quote is None:
        return show_refused(found)
    asked, *others = _choices(found.quote, sent)
    apart = apart_words(closing_of(found.quote))
    return render_template("near/show.html", here="orders", asked=asked, others=others, apart=apart)


@blueprint.get("/near")
def again() -> ResponseReturnValue:
    """Lead whoever opens the address anew to the order."""
    return redirect(url_for("orders.show"))


def _choices(quote: Quote, sent: Sent) -> list[Choice]:
    """Return the blanket as it is, and after it its neighbours."""
    shop, say = shop_now(), speech_now()
    closed = closed_words(quote, closing_of(quote), say)
    return [
        Choice(name="As it is", closed=closed, quote=quote, sent=sent),
        *(
            Choice(
                name=neighbour_words(each),
                closed=closed_words(each.quote, each.closing, say),
                quote=each.quote,
                sent=sent_with_design(sent, quote.order, each.quote.order, shop),
            )
            for each in neighbours(quote, today=shop.today())
        ),
    ]
