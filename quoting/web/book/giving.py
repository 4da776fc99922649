"""Giving a quote: of an order on its worktable, or of an order as it is kept."""

from __future__ import annotations

from flask import Blueprint, abort, g, redirect, request, url_for
from flask.typing import ResponseReturnValue

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import Refused, refuse
from quoting.core.quote.given_number import GivenNumber
from quoting.core.quote.quote import Quote
from quoting.store.orders import kept_order
from quoting.store.quotes import give_quote
from quoting.web.book.freezing import freezing, quote_of_today
from quoting.web.book.keeping import content_of_answer, save_content
from quoting.web.book.mark import sent_mark
from quoting.web.book.refusals import refused_page
from quoting.web.kept import book_now, moment_now
from quoting.web.orders import pages as worktable
from quoting.web.orders.order_answer import answer_form
from quoting.web.shop import shop_now

blueprint = Blueprint("giving", __name__, url_prefix="/orders")


@blueprint.post("/<int:order_id>/give")
def give(order_id: int) -> ResponseReturnValue:
    """Save what is typed, and give it as a quote; what is not whole, or came too late, is not."""
    mark = sent_mark()
    if mark is None or mark.order_id != order_id:
        abort(400)
    found = answer_form(request.form, shop_now(), patient=False)
    standing = save_content(mark, content_of_answer(found))
    g.standing = standing
    if found.quote is None or standing.overtaken or not standing.saved:
        return worktable.show_refused(found)
    return _given(order_id, found.quote, standing.order.revision)


@blueprint.post("/<int:order_id>/give-as-kept")
def give_as_kept(order_id: int) -> ResponseReturnValue:
    """Give an order as it is kept, if it is still what the page has shown."""
    kept = kept_order(book_now(), order_id)
    shown = request.form.get("revision", type=int)
    try:
        if kept.content.order is None or kept.revision != shown:
            raise refuse("", MistakeCode.ORDER_OVERTAKEN)
        quote = quote_of_today(kept.content.order, shop_now())
    except Refused as refused:
        return refused_page(refused, order_id)
    return _given(order_id, quote, kept.revision)


@blueprint.get("/<int:order_id>/<any(give, 'give-as-kept'):deed>")
def again(order_id: int, deed: str) -> ResponseReturnValue:
    """Lead whoever opens such an address anew to the order itself."""
    del deed
    return redirect(url_for("kept_orders.show", order_id=order_id))


def _given(order_id: int, quote: Quote, revision: int) -> ResponseReturnValue:
    """Give a quote and lead to its page."""
    shop = shop_now()
    try:
        given = give_quote(
            book_now(),
            order_id,
            freezing(quote, shop),
            revision=revision,
            day=shop.today(),
            now=moment_now(),
        )
    except Refused as refused:
        return refused_page(refused, order_id)
    return to_quote(given.number)


def to_quote(number: GivenNumber) -> ResponseReturnValue:
    """Lead to the page of a quote."""
    return redirect(url_for("given_quotes.show", number=number), 303)
