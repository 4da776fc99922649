"""Fewer ends: stripes near the ones asked for, each with what it leaves and what it costs."""

from __future__ import annotations

from dataclasses import dataclass

from flask import Blueprint, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue
from markupsafe import Markup
from werkzeug.datastructures import MultiDict

from exports.drawing import draw_blanket
from quoting.core.quote.advice import MANY_ENDS
from quoting.core.quote.quote import Quote
from quoting.core.weighing.calmer_designs import calmer_designs
from quoting.web.forms.sent import Sent
from quoting.web.orders.order_answer import answer_form
from quoting.web.orders.order_form import sent_with_body
from quoting.web.orders.pages import show_refused
from quoting.web.shop import Shop, shop_now
from quoting.web.turns import take_turn
from quoting.wording import body_words

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
    take_turn()
    shop, sent = shop_now(), request.form
    found = answer_form(sent, shop, patient=False)
    quote = found.quote
    if quote is None:
        return show_refused(found)
    offered = [
        _striping(
            other.quote, other.distance, _striped(sent, quote, other.quote, shop), shop, number
        )
        for number, other in enumerate(calmer_designs(quote, today=shop.today()), 1)
    ]
    return render_template(
        "calmer/show.html",
        here="orders",
        asked=_striping(quote, 0.0, _plain(sent), shop, 0),
        offered=offered,
        many=quote.estimate.ends >= MANY_ENDS,
    )


@blueprint.get("/calmer")
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


def _plain(sent: Sent) -> Sent:
    """Return the form without what belongs to the page it came from."""
    kept = [(n, text) for n, text in sent.items(multi=True) if n not in {"csrf_token", "do"}]
    return MultiDict(kept)


def _striped(sent: Sent, asked: Quote, other: Quote, shop: Shop) -> Sent:
    """Return the form as it was typed, its stripes those of another design."""
    return sent_with_body(_plain(sent), asked.order, other.order, shop)
