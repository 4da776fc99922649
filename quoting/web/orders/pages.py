"""The worktable: the order form, its answer beside it, and what is made of it."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from flask import Blueprint, g, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue
from werkzeug.datastructures import MultiDict

from exports.papers.offers import quote_paper
from quoting.core.ground.errors import Refused
from quoting.core.order.order import Order
from quoting.schema import load_order_text, order_text
from quoting.schema.figures import SIDE
from quoting.web.book.mark import sent_mark
from quoting.web.downloads import WORKBOOK, download
from quoting.web.forms.line_changes import removed_lines
from quoting.web.forms.sent import Sent
from quoting.web.kept import kept_shop
from quoting.web.orders.body_forms import chosen_body, constructions, line_names
from quoting.web.orders.choices import offers_of
from quoting.web.orders.form_room import check_room
from quoting.web.orders.line_moves import make_move, read_move
from quoting.web.orders.order_answer import Answer, answer_form
from quoting.web.orders.order_form import bind_form, sent_order, start_sent
from quoting.web.orders.quote_view import view_of
from quoting.web.orders.resting import resting
from quoting.web.orders.stripe_list import as_asked
from quoting.web.papers.showing import Deeds, paper_page
from quoting.web.shop import shop_now
from quoting.web.statuses import REFUSED
from quoting.web.turns import take_turn
from quoting.wording import mistake_sentence

if TYPE_CHECKING:
    from quoting.web.book.keeping import Standing

blueprint = Blueprint("orders", __name__)


@blueprint.get("/")
def show() -> ResponseReturnValue:
    """Show the form with the order that it starts with; of a book, its list of orders."""
    if kept_shop() is not None:
        return redirect(url_for("order_list.show"))
    shop = shop_now()
    sent = start_sent(shop.workshop) if shop.sample is None else sent_order(shop.sample, shop)
    start = "afresh" if "afresh" in request.args else "sample"
    return worktable_page(sent, start=start, patient=True)


@blueprint.get("/blank")
def blank() -> str:
    """Show a form with nothing filled in that a maker would have to change."""
    return worktable_page(start_sent(shop_now().workshop), start="blank", patient=True)


@blueprint.post("/")
def follow() -> ResponseReturnValue:
    """Do what a button asks, and show the form with its answer."""
    shop, focus = shop_now(), ""
    sent: Sent = request.form
    deed = sent.get("do", "")
    move = read_move(deed)
    if move is not None:
        sent, focus = make_move(move, sent, offers_of(bind_form(shop, sent), shop).colour_names)
    elif deed == "size":
        sent = _sized(sent)
    else:
        sent = as_asked(deed, sent)
    changed = chosen_body(bind_form(shop, sent)).part.deed(deed, sent, shop.workshop)
    sent, focus = changed.sent, changed.focus or focus
    return worktable_page(sent, focus=focus, patient=bool(deed))


@blueprint.post("/answer")
def answer() -> str:
    """Return the answer alone, for a page that follows as one types."""
    shop = shop_now()
    found = answer_form(request.form, shop, patient=True)
    return render_template("orders/following.html", **_seen(found), live=True)


@blueprint.post("/quote")
def quote() -> ResponseReturnValue:
    """Show the page for the buyer, with what the maker can do with it above."""
    found = asked()
    if found.quote is None:
        return show_refused(found)
    sent = tuple(request.form.items(multi=True))
    deeds = Deeds(pdf=url_for("to_send.pdf"), message=url_for("to_send.message"), sent=sent)
    return paper_page(quote_paper(found.quote), deeds)


@blueprint.get("/quote")
def again() -> ResponseReturnValue:
    """Lead whoever opens the address anew to the order: no quote is kept."""
    return redirect(url_for("orders.show"))


@blueprint.post("/workbook")
def workbook() -> ResponseReturnValue:
    """Send the costing as a spreadsheet."""
    take_turn()
    found = asked()
    if found.quote is None:
        return show_refused(found)
    # Imported here because it takes longer than a page does.
    from exports.costing_workbook import workbook_bytes

    name = f"costing {found.quote.number} {found.quote.order.title}"
    return download(workbook_bytes(found.quote), name, "xlsx", WORKBOOK)


@blueprint.post("/order-file")
def order_file() -> ResponseReturnValue:
    """Send the order as a file that can be read again."""
    found = asked()
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


def show_order(order: Order) -> ResponseReturnValue:
    """Return the worktable with an order that comes from elsewhere. Errors: as `check_room`."""
    return show_sent(sent_order(order, shop_now()))


def show_sent(sent: Sent, *, patient: bool = False) -> ResponseReturnValue:
    """Return the worktable with a form that comes from elsewhere. Errors: as `check_room`."""
    check_room(sent, shop_now())
    if kept_shop() is not None and sent_mark() is None:
        from quoting.web.book.order_pages import begin_order  # there is a database to read it

        return redirect(url_for("kept_orders.show", order_id=begin_order(sent).id), 303)
    return worktable_page(sent, start="read", patient=patient)


def resume() -> str:
    """Return the form with all that was typed, when it comes from before a restart."""
    mark = sent_mark()
    if mark is not None:
        from quoting.web.book.keeping import unsaved_standing  # there is a database to read it

        g.standing = unsaved_standing(mark)
    return worktable_page(request.form, patient=True, stale=True)


def asked() -> Answer:
    """Return the answer to a form of which something is to be made."""
    return answer_form(request.form, shop_now(), patient=False)


def show_refused(found: Answer) -> ResponseReturnValue:
    """Return the worktable with what is to be put right."""
    return _worktable(found), REFUSED


def worktable_page(sent: Sent, *, patient: bool = False, **changes: Any) -> str:
    """Return the worktable with what was sent; that of a kept order is saved."""
    return _worktable(answer_form(sent, shop_now(), patient=patient), **changes)


def _worktable(found: Answer, **changes: Any) -> str:
    standing = _standing(found)
    seen = _seen(found) | changes | {"standing": standing, "here": "orders"}
    return render_template("orders/worktable.html", **seen)


def _standing(found: Answer) -> Standing | None:
    """Return how a kept order stands, saved as it was sent unless that has been done."""
    if kept_shop() is None:
        return None
    from quoting.web.book.keeping import keep_answer  # there is a database to read it

    return g.get("standing") or keep_answer(found)


def _seen(found: Answer) -> dict[str, Any]:
    shop = shop_now()
    view = None if found.quote is None else view_of(found.quote, shop)
    offers = offers_of(found.form, shop)
    return {
        "form": found.form,
        "body": chosen_body(found.form),
        "constructions": [(word, shop.speech.worded(said)) for word, said in constructions()],
        "answer": found,
        "view": view,
        "offers": offers,
        "resting": resting(found.sent),
        "removed": removed_lines(found.sent),
        "line_names": {kind: shop.speech.worded(name) for kind, name in line_names().items()},
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
