"""The worktable: the order form, its answer beside it, and what is made of it."""

from __future__ import annotations

from typing import Any

from flask import Blueprint, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue
from werkzeug.datastructures import MultiDict

from quoting.core.ground.errors import Refused
from quoting.core.order.order import Order
from quoting.schema import load_order_text, order_text
from quoting.schema.figures import SIDE
from quoting.web.downloads import download
from quoting.web.forms.sent import Sent
from quoting.web.orders.body_forms import chosen_body, constructions
from quoting.web.orders.choices import offers_of
from quoting.web.orders.form_room import check_room
from quoting.web.orders.line_moves import make_move, read_move
from quoting.web.orders.order_answer import Answer, answer_form
from quoting.web.orders.order_form import bind_form, sent_order, start_sent
from quoting.web.orders.quote_page import quote_page
from quoting.web.orders.quote_view import view_of
from quoting.web.orders.stripe_list import as_asked
from quoting.web.shop import shop_now
from quoting.web.turns import take_turn
from quoting.wording import mistake_sentence

blueprint = Blueprint("orders", __name__)

REFUSED = 422
WORKBOOK = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet"


@blueprint.get("/")
def show() -> str:
    """Show the form with the order that it starts with."""
    shop = shop_now()
    sent = start_sent(shop.workshop) if shop.sample is None else sent_order(shop.sample, shop)
    start = "afresh" if "afresh" in request.args else "sample"
    return _page(sent, start=start, patient=True)


@blueprint.get("/blank")
def blank() -> str:
    """Show a form with nothing filled in that a maker would have to change."""
    return _page(start_sent(shop_now().workshop), start="blank", patient=True)


@blueprint.post("/")
def follow() -> ResponseReturnValue:
    """Do what a button asks, and show the form with its answer."""
    shop, focus = shop_now(), ""
    sent: Sent = request.form
    asked = sent.get("do", "")
    move = read_move(asked)
    if move is not None:
        sent, focus = make_move(move, sent, offers_of(bind_form(shop, sent), shop).colour_names)
    elif asked == "size":
        sent = _sized(sent)
    else:
        sent = as_asked(asked, sent)
    return _page(sent, focus=focus, patient=bool(asked))


@blueprint.post("/answer")
def answer() -> str:
    """Return the answer alone, for a page that follows as one types."""
    shop = shop_now()
    found = answer_form(request.form, shop, patient=True)
    return render_template("orders/following.html", **_seen(found), live=True)


@blueprint.post("/quote")
def quote() -> ResponseReturnValue:
    """Show the page for the buyer."""
    found = _asked()
    if found.quote is None:
        return show_refused(found)
    return quote_page(found.quote)


@blueprint.get("/quote")
def again() -> ResponseReturnValue:
    """Lead whoever opens the address anew to the order: no quote is kept."""
    return redirect(url_for("orders.show"))


@blueprint.post("/workbook")
def workbook() -> ResponseReturnValue:
    """Send the costing as a spreadsheet."""
    take_turn()
    found = _asked()
    if found.quote is None:
        return show_refused(found)
    # Imported here because it takes longer than a page does.
    from exports.costing_workbook import workbook_bytes

    name = f"costing {found.quote.number} {found.quote.order.title}"
    return download(workbook_bytes(found.quote), name, "xlsx", WORKBOOK)


@blueprint.post("/order-file")
def order_file() -> ResponseReturnValue:
    """Send the order as a file that can be read again."""
    found = _asked()
    if found.quote is None:
        return show_refused(found)
    order = found.quote.order
    text = order_text(order, shop_now().workshop.speaks)
    return download(text.encode(), f"order {order.title}", "toml", "application/toml")


@blueprint.post("/read")
def read() -> ResponseReturnValue:
    """Show the form with the order of a file, or the file's mistakes."""
    shop, sent = shop_now(), request.files.get("file")
    if sent is None or not sent.filename:
        return redirect(url_for("orders.show"))
    try:
        order = load_order_text(sent.read(), shop.workshop)
        return show_order(order)
    except Refused as refused:
        said = [(m.path, mistake_sentence(m, shop.speech)) for m in refused.mistakes]
        page = render_template("orders/unread.html", name=sent.filename, said=said)
        return page, REFUSED


@blueprint.get("/read")
def once_more() -> str:
    """Ask again for a file that was sent from a page from before a restart."""
    return render_template("orders/once_more.html")


def show_order(order: Order) -> str:
    """Return the worktable with an order that comes from elsewhere. Errors: as `check_room`."""
    shop = shop_now()
    sent = sent_order(order, shop)
    check_room(sent, shop)
    return _page(sent, start="read")


def resume() -> str:
    """Return the form with all that was typed, when it comes from before a restart."""
    return _page(request.form, patient=True, stale=True)


def _asked() -> Answer:
    shop = shop_now()
    return answer_form(request.form, shop, patient=False)


def show_refused(found: Answer) -> ResponseReturnValue:
    """Return the worktable with what is to be put right."""
    return render_template("orders/worktable.html", **_seen(found)), REFUSED


def _page(sent: Sent, *, patient: bool = False, **changes: Any) -> str:
    found = answer_form(sent, shop_now(), patient=patient)
    return render_template("orders/worktable.html", **(_seen(found) | changes))


def _seen(found: Answer) -> dict[str, Any]:
    shop = shop_now()
    view = None if found.quote is None else view_of(found.quote, shop)
    offers = offers_of(found.form, shop)
    return {
        "form": found.form,
        "body": chosen_body(found.form),
        "constructions": constructions(),
        "answer": found,
        "view": view,
        "offers": offers,
    }


def _sized(sent: Sent) -> Sent:
    """Return the form with the size that was picked in its fields."""
    shop = shop_now()
    size = next((size for size in shop.sizes if size.name == sent.get("size")), None)
    sized = MultiDict(sent)
    if size is not None:
        sized["blanket.width"] = SIDE.show(size.width_cm, shop.notation)
        sized["blanket.height"] = SIDE.show(size.height_cm, shop.notation)
    return sized
