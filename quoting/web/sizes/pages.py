"""The Sizes page: the order at hand over several sizes, at the target, at prices, in a budget."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from flask import Blueprint, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue
from werkzeug.datastructures import MultiDict

from quoting.core.ground.errors import Refused
from quoting.core.order.order import Order
from quoting.core.quote.quote import Quote
from quoting.schema import load_order_text
from quoting.web.choices.card import (
    TICK,
    Choice,
    card_page,
    ticked,
    without_page_fields,
    wrong_ticks,
)
from quoting.web.downloads import WORKBOOK, download
from quoting.web.forms.lines import entries_of, typed_of
from quoting.web.orders.beginning import beginning_order
from quoting.web.orders.order_form import sent_order
from quoting.web.orders.pages import show_refused, show_sent
from quoting.web.shop import shop_now
from quoting.web.sizes.size_answers import SizesAnswer, answer_sizes, unread_order
from quoting.web.sizes.size_form import ADD, bind_sizes, order_text, start_sizes
from quoting.web.sizes.size_reading import compared_size, ordered_size, own_size_words
from quoting.web.sizes.size_travel import for_order
from quoting.web.sizes.size_views import view_sizes
from quoting.web.sizes.stand_ins import (
    FIELD,
    SIDES,
    answer_with_stand_ins,
    stand_in_words,
    stood_in,
    without_fields,
)
from quoting.web.statuses import REFUSED
from quoting.web.turns import take_turn

blueprint = Blueprint("sizes", __name__, url_prefix="/sizes")


@blueprint.get("")
def show() -> str:
    """Show the demo's order, or a plain blanket, at some customary sizes."""
    shop = shop_now()
    order = shop.sample or beginning_order(shop)
    return _page(answer_sizes(start_sizes(shop, order), order, shop), start="sample")


@blueprint.post("")
def follow() -> ResponseReturnValue:
    """Show the page again with its answer."""
    found = _asked()
    adds = request.form.get("do") == ADD
    page = _page(found, focus=f"own.{len(found.form.own.entries)}.size" if adds else "")
    return page, _status(found)


@blueprint.post("/of-order")
def of_order() -> ResponseReturnValue:
    """Show the order of the worktable's form, or the worktable with what is to be put right.

    Blanks alone are nothing to put right first: something stands in for them.
    """
    shop, sent = shop_now(), request.form
    found, names = answer_with_stand_ins(sent, shop)
    if found.quote is None:
        return show_refused(found)
    order = found.quote.order
    form = start_sizes(shop, order, names)
    if "asks" in sent:
        own = {"order_file": order_text(order), FIELD: " ".join(names)}
        typed = MultiDict(sent.to_dict() | own)
        form = bind_sizes(shop, for_order(typed, order, shop), order)
    return _page(answer_sizes(form, order, shop), start="order")


@blueprint.get("/of-order")
@blueprint.get("/take")
@blueprint.get("/card")
def again() -> ResponseReturnValue:
    """Lead whoever opens such an address anew to the page itself."""
    return redirect(url_for("sizes.show"))


@blueprint.post("/answer")
def answer() -> ResponseReturnValue:
    """Return the answer alone, for a page that follows as one types."""
    found = _asked()
    return render_template("sizes/following.html", **_seen(found)), _status(found)


@blueprint.post("/take")
def take() -> ResponseReturnValue:
    """Show the worktable with the order at the size, or with the change, of the button pressed."""
    found = _asked()
    if found.order is None:
        return _page(found), REFUSED
    taken, names = request.form.get("take", ""), set(_stood_in(found))
    sizes = {key: quote.order for key, quote in _quotes(found)}
    if taken in sizes:
        names -= SIDES
    order = (dict(_changes(found)) | sizes).get(taken, found.order)
    sent = without_fields(sent_order(order, shop_now()), names)
    return show_sent(sent, patient=bool(names))


@blueprint.post("/card")
def card() -> ResponseReturnValue:
    """Show the card of the sizes that are ticked for it, or what is wrong with the ticks."""
    found = _asked()
    quotes = dict(_quotes(found))
    said = _unfit_for_a_card(found) or wrong_ticks(quotes, "sizes")
    if said:
        return _page(found, said_of_card=said), REFUSED
    sent = without_page_fields(request.form, TICK)
    take = url_for("sizes.take")
    choices = [
        Choice(
            quote=quotes[key],
            address=take,
            sent=MultiDict([*sent.items(multi=True), ("take", key)]),
        )
        for key in quotes
        if key in ticked()
    ]
    return card_page(choices, here="sizes")


@blueprint.post("/workbook")
def workbook() -> ResponseReturnValue:
    """Send the comparison as a spreadsheet."""
    take_turn()
    found = _asked()
    if found.order is None or found.comparison is None or not found.comparison.sizes:
        return _page(found), REFUSED
    # Imported here because it takes longer than a page does.
    from exports.comparison_workbook import comparison_bytes

    content = comparison_bytes(found.comparison)
    return download(content, f"sizes {found.order.title}", "xlsx", WORKBOOK)


def resume() -> str:
    """Return the page with all that was typed, when it comes from before a restart."""
    return _page(_asked(), stale=True)


def _asked() -> SizesAnswer:
    """Return the answer to what was sent."""
    shop = shop_now()
    form = bind_sizes(shop, request.form)
    try:
        order = load_order_text(typed_of(form, "order_file").typed, shop.workshop)
    except Refused as refused:
        return unread_order(form, refused, shop)
    return answer_sizes(bind_sizes(shop, for_order(request.form, order, shop), order), order, shop)


def _status(found: SizesAnswer) -> int:
    return REFUSED if found.order is None else 200


def _stood_in(found: SizesAnswer) -> tuple[str, ...]:
    return stood_in(typed_of(found.form, FIELD).typed)


def _quotes(found: SizesAnswer) -> Iterator[tuple[str, Quote]]:
    """Yield the quote of every size of the answer, by what the button beside it sends."""
    for row in view_sizes(found.comparison, shop_now().speech).rows if found.comparison else ():
        yield row.key, row.compared.quote


def _unfit_for_a_card(found: SizesAnswer) -> str:
    """Return what of the order is still to be given before a buyer is shown it, or nothing."""
    names = [name for name in _stood_in(found) if name not in SIDES]
    if found.order is None or not names:
        return ""
    return stand_in_words(found.order, names, shop_now().speech)


def _changes(found: SizesAnswer) -> Iterator[tuple[str, Order]]:
    """Yield the order with every change of the answer, by what the button beside it sends."""
    for saving in found.budget.savings if found.budget else ():
        yield saving.change.value, saving.quote.order


def _page(found: SizesAnswer, **changes: Any) -> str:
    return render_template("sizes/show.html", **(_seen(found) | changes))


def _seen(found: SizesAnswer) -> dict[str, Any]:
    shop = shop_now()
    view = view_sizes(found.comparison, shop.speech) if found.comparison is not None else None
    names, order = _stood_in(found), found.order
    ordered = ordered_size(order, shop, names) if order is not None else None
    not_given = stand_in_words(order, names, shop.speech) if order is not None and names else ""
    lines = zip(shop.sizes, entries_of(found.form, "customary"), strict=True)
    return {
        "form": found.form,
        "answer": found,
        "ticked": ticked(),
        "view": view,
        "order": order,
        "ordered": ordered,
        "ordered_sides": own_size_words(order, shop) if order is not None else "",
        "not_given": not_given,
        "customary": [(size, line, compared_size(size)) for size, line in lines],
    }
