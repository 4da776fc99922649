"""Fewer ends: stripes near the ones asked for, each with what it leaves and what it costs."""

from __future__ import annotations

from dataclasses import dataclass

from flask import Blueprint, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue
from markupsafe import Markup

from exports.drawing import draw_blanket
from quoting.core.quote.advice import MANY_ENDS
from quoting.core.quote.quote import Quote
from quoting.core.weighing.calmer_designs import calmer_designs
from quoting.web.choices.card import (
    TICK,
    Choice,
    card_page,
    ticked,
    without_page_fields,
    wrong_ticks,
)
from quoting.web.forms.sent import Sent
from quoting.web.orders.order_answer import Answer, answer_form
from quoting.web.orders.order_form import sent_with_design
from quoting.web.orders.pages import show_refused
from quoting.web.shop import Shop, shop_now
from quoting.web.statuses import REFUSED
from quoting.web.turns import take_turn
from quoting.wording import body_words, calmer_words

blueprint = Blueprint("calmer", __name__)


@dataclass(frozen=True, slots=True, kw_only=True)
class Striping:
    """One striping: its quote, its drawing, and the order form that takes it over."""

    quote: Quote
    drawing: Markup
    rows_elsewhere: float
    sent: Sent

    @property
    def stripes(self) -> tuple[str, ...]:
        """Its stripes in words, section by section."""
        return body_words(self.quote.order.design.body)


@blueprint.post("/calmer")
def show() -> ResponseReturnValue:
    """Show up to three stripings with fewer ends beside the one asked for."""
    found = _answer()
    return show_refused(found) if found.quote is None else _page(_stripings(found.quote))


@blueprint.post("/calmer/card")
def card() -> ResponseReturnValue:
    """Show the card of the stripings that are ticked for it, or what is wrong with the ticks."""
    found = _answer()
    if found.quote is None:
        return show_refused(found)
    stripings = {str(number): one for number, one in enumerate(_stripings(found.quote))}
    said = wrong_ticks(stripings, "stripings")
    if said:
        return _page(list(stripings.values()), said_of_card=said), REFUSED
    chosen = [one for number, one in stripings.items() if number in ticked()]
    follow = url_for("orders.follow")
    choices = [Choice(quote=one.quote, address=follow, sent=one.sent) for one in chosen]
    return card_page(choices, here="orders")


def _answer() -> Answer:
    take_turn()
    return answer_form(without_page_fields(request.form, TICK), shop_now(), patient=False)


def _stripings(quote: Quote) -> list[Striping]:
    """Return the striping asked for, and after it those with fewer ends."""
    shop, sent = shop_now(), without_page_fields(request.form, TICK)
    return [
        _striping(quote, 0.0, sent, shop, 0),
        *(
            _striping(
                other.quote,
                other.distance,
                sent_with_design(sent, quote.order, other.quote.order, shop),
                shop,
                number,
            )
            for number, other in enumerate(calmer_designs(quote, today=shop.today()), 1)
        ),
    ]


def _page(stripings: list[Striping], said_of_card: str = "") -> str:
    asked, *offered = stripings
    return render_template(
        "calmer/show.html",
        here="orders",
        asked=asked,
        words=calmer_words(asked.quote.order.design.body),
        offered=offered,
        many=asked.quote.estimate.ends >= MANY_ENDS,
        ticked=ticked(),
        said_of_card=said_of_card,
    )


@blueprint.get("/calmer")
@blueprint.get("/calmer/card")
def again() -> ResponseReturnValue:
    """Lead whoever opens the address anew to the order."""
    return redirect(url_for("orders.show"))


def _striping(quote: Quote, elsewhere: float, sent: Sent, shop: Shop, number: int) -> Striping:
    drawing = draw_blanket(quote, shop.speech, prefix=f"striping-{number}")
    return Striping(
        quote=quote,
        # The drawing escapes every word that it writes.
        drawing=Markup(drawing),  # noqa: S704
        rows_elsewhere=elsewhere,
        sent=sent,
    )
