"""A line of an order's log corrected, or taken back: a further line says so."""

from __future__ import annotations

from flask import Blueprint, abort, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue
from wtforms import Form

from quoting.core.ground.errors import Refused
from quoting.core.making.line_checks import check_line
from quoting.core.making.log_lines import LogEntry, Moved, Withdrawn
from quoting.core.making.made_rows import made_rows
from quoting.schema.log_shapes import log_kind
from quoting.web.making.at_hand import AtHand, at_hand
from quoting.web.making.choices import choices_of
from quoting.web.making.forms import new_forms
from quoting.web.making.labels import called_for
from quoting.web.making.line_forms import form_of_entry, line_form, read_line, say_of_form
from quoting.web.making.pages import page
from quoting.web.making.writing import put_in_place
from quoting.web.orders.order_answer import Said
from quoting.web.shop import shop_now
from quoting.web.statuses import REFUSED
from quoting.wording.log_words import log_words

blueprint = Blueprint(
    "corrections", __name__, url_prefix="/orders/<int:order_id>/making/<int:entry_id>"
)


@blueprint.get("")
def show(order_id: int, entry_id: int) -> ResponseReturnValue:
    """Show the line as it stands, to be corrected; one that stands no more leads to the log."""
    hand = at_hand(order_id)
    entry = _standing(hand, entry_id)
    if entry is None:
        return _to_log(order_id)
    return _page(hand, entry, form_of_entry(entry, shop_now()))


@blueprint.post("")
def save(order_id: int, entry_id: int) -> ResponseReturnValue:
    """Put what was typed in the place of the line."""
    hand, shop = at_hand(order_id), shop_now()
    entry = _standing(hand, entry_id)
    if entry is None:
        return _to_log(order_id)
    kind, sent = log_kind(entry.line), request.form
    try:
        line = read_line(kind, sent, shop)
        check_line(hand.quote, hand.entries, line, today=shop.today(), corrects=entry_id)
        put_in_place(hand, entry_id, (line,))
    except Refused as refused:
        form = line_form(kind, sent, shop)
        said = say_of_form(form, refused.mistakes, shop)
        return _page(hand, entry, form, said), REFUSED
    return _to_log(order_id)


@blueprint.post("/back")
def take_back(order_id: int, entry_id: int) -> ResponseReturnValue:
    """Take the line back; it stays in the log, struck."""
    hand = at_hand(order_id)
    if _standing(hand, entry_id) is not None:
        put_in_place(hand, entry_id, (Withdrawn(),))
    return _to_log(order_id)


@blueprint.get("/back")
def again(order_id: int, entry_id: int) -> ResponseReturnValue:
    """Lead whoever opens such an address anew to the log."""
    del entry_id
    return _to_log(order_id)


def resume() -> str:
    """Return the correction as it was typed, when it comes from before a restart."""
    given, shop = request.view_args or {}, shop_now()
    hand = at_hand(given["order_id"])
    entry = _standing(hand, given["entry_id"])
    if entry is None:
        return page(hand, new_forms(hand, shop))
    form = line_form(log_kind(entry.line), request.form, shop)
    return _page(hand, entry, form, stale=True)


def _page(
    hand: AtHand,
    entry: LogEntry,
    form: Form,
    said: tuple[Said, ...] = (),
    *,
    stale: bool = False,
) -> str:
    shop = shop_now()
    return render_template(
        "making/correct.html",
        here="orders",
        hand=hand,
        entry=entry,
        kind=log_kind(entry.line),
        words=log_words(entry.line, made_rows(hand.quote), shop.speech),
        form=called_for(hand, form),
        answer={"said": said},
        stale=stale,
        choices=choices_of(hand, shop),
    )


def _standing(hand: AtHand, entry_id: int) -> LogEntry | None:
    """Return the line that is to be corrected; stages are moved on the order's own page."""
    for entry in hand.standing:
        if entry.id == entry_id:
            if isinstance(entry.line, Moved):
                abort(404)
            return entry
    return None


def _to_log(order_id: int) -> ResponseReturnValue:
    return redirect(url_for("making.show", order_id=order_id, _anchor="log"), 303)
