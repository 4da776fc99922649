"""A kept order on the worktable: shown, followed, saved; begun, copied, moved between stages."""

from __future__ import annotations

from flask import Blueprint, abort, g, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue
from werkzeug.exceptions import TooManyRequests

from quoting.core.ground.errors import Refused
from quoting.core.order.stage import Stage
from quoting.schema import load_order_text
from quoting.store.order_content import KeptOrder, OrderContent
from quoting.store.orders import (
    asides_of,
    bring_back_order,
    change_stage,
    copy_order,
    create_order,
    drop_aside,
    kept_order,
)
from quoting.web.book.keeping import (
    Standing,
    content_of_answer,
    save_content,
    sent_again,
    typed_in,
)
from quoting.web.book.mark import Mark, new_writer, sent_mark
from quoting.web.book.refusals import refused_page
from quoting.web.forms.sent import Sent
from quoting.web.kept import book_now, moment_now
from quoting.web.orders import pages as worktable
from quoting.web.orders.form_room import check_room
from quoting.web.orders.order_answer import answer_form
from quoting.web.orders.order_form import sent_order, start_sent
from quoting.web.shop import shop_now
from quoting.web.statuses import REFUSED
from quoting.wording import mistake_sentence

blueprint = Blueprint("kept_orders", __name__, url_prefix="/orders")


@blueprint.get("/<int:order_id>")
def show(order_id: int) -> str:
    """Show the order as it was typed last."""
    kept = kept_order(book_now(), order_id)
    mark = Mark(order_id=order_id, revision=kept.revision, writer=new_writer())
    g.standing = Standing(order=kept, mark=mark, asides=asides_of(book_now(), order_id))
    return worktable.worktable_page(sent_again(kept.content.typed), patient=True)


@blueprint.post("/<int:order_id>")
def follow(order_id: int) -> ResponseReturnValue:
    """Save the order, do what a button asks, and show it with its answer."""
    _check_mark(order_id)
    if request.form.get("do") == "save":
        standing = _saved()
        if not standing.overtaken:
            return redirect(f"{standing.home}#kept-state", 303)
        g.standing = standing
    return worktable.follow()


@blueprint.post("/<int:order_id>/save")
def save(order_id: int) -> ResponseReturnValue:
    """Save the order as it is typed, and return when that was done."""
    _check_mark(order_id)
    return render_template("book/kept_state.html", standing=_saved())


@blueprint.post("/new")
def new() -> ResponseReturnValue:
    """Begin an order, with all filled in that a maker need not change."""
    return _begin(start_sent(shop_now().workshop))


@blueprint.post("/read")
def read() -> ResponseReturnValue:
    """Begin an order with what is in a file, or show the file's mistakes."""
    shop, file = shop_now(), request.files.get("file")
    if file is None or not file.filename:
        return redirect(url_for("order_list.show"), 303)
    try:
        sent = sent_order(load_order_text(file.read(), shop.workshop), shop)
        check_room(sent, shop)
    except Refused as refused:
        said = [(m.path, mistake_sentence(m, shop.speech)) for m in refused.mistakes]
        page = render_template("orders/unread.html", name=file.filename, said=said)
        return page, REFUSED
    return _begin(sent)


@blueprint.post("/<int:order_id>/copy")
def copy(order_id: int) -> ResponseReturnValue:
    """Begin an order as another is."""
    return _to(copy_order(book_now(), order_id, now=moment_now(), writer=new_writer()))


@blueprint.post("/<int:order_id>/stage")
def stage(order_id: int) -> ResponseReturnValue:
    """Put the order to its next stage or back to its last, or call it off."""
    try:
        wanted = Stage(request.form.get("stage", ""))
    except ValueError:
        abort(400)
    try:
        return _to(change_stage(book_now(), order_id, wanted, now=moment_now()))
    except Refused as refused:
        return refused_page(refused, order_id)


@blueprint.post("/<int:order_id>/bring-back")
def bring_back(order_id: int) -> ResponseReturnValue:
    """Bring back an order that was called off, to the stage it was at."""
    return _to(bring_back_order(book_now(), order_id, now=moment_now()))


@blueprint.post("/<int:order_id>/aside")
def aside(order_id: int) -> ResponseReturnValue:
    """Make what was set aside an order of its own, or throw it away."""
    book, writer = book_now(), request.form.get("writer", "")
    found = next((a for a in asides_of(book, order_id) if a.writer == writer), None)
    if found is None:
        return redirect(url_for("kept_orders.show", order_id=order_id), 303)
    if request.form.get("do") == "drop":
        drop_aside(book, order_id, writer)
        return redirect(url_for("kept_orders.show", order_id=order_id), 303)
    begun = _begin(sent_again(found.typed))
    drop_aside(book, order_id, writer)
    return begun


@blueprint.get("/<int:order_id>/<any(save, copy, stage, 'bring-back', aside):deed>")
def again(order_id: int, deed: str) -> ResponseReturnValue:
    """Lead whoever opens such an address anew to the order itself."""
    del deed
    return redirect(url_for("kept_orders.show", order_id=order_id))


@blueprint.get("/new")
@blueprint.get("/read")
def to_list() -> ResponseReturnValue:
    """Lead whoever opens such an address anew to the list."""
    return redirect(url_for("order_list.show"))


def begin_order(sent: Sent) -> KeptOrder:
    """Keep a form as a new order, and return it."""
    return create_order(book_now(), _content(sent), now=moment_now(), writer=new_writer())


def _begin(sent: Sent) -> ResponseReturnValue:
    return _to(begin_order(sent))


def _to(order: KeptOrder) -> ResponseReturnValue:
    return redirect(url_for("kept_orders.show", order_id=order.id), 303)


def _check_mark(order_id: int) -> None:
    """Refuse a form that is not of this order."""
    mark = sent_mark()
    if mark is None or mark.order_id != order_id:
        abort(400)


def _saved() -> Standing:
    mark = sent_mark()
    assert mark is not None, "the form has been looked at"  # noqa: S101
    return save_content(mark, _content(request.form))


def _content(sent: Sent) -> OrderContent:
    """Return what is kept of a form; what cannot be worked out just now is kept without figures."""
    try:
        return content_of_answer(answer_form(sent, shop_now(), patient=True))
    except TooManyRequests:
        return OrderContent(
            typed=typed_in(sent),
            title=sent.get("order.title", ""),
            buyer=sent.get("order.buyer", ""),
        )
