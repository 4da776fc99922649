"""One row at a time, for a phone beside the hook: each tick is the progress that the book keeps."""

from __future__ import annotations

from flask import Blueprint, Response, make_response, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue
from werkzeug.datastructures import MultiDict

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import Refused, refuse
from quoting.core.making.log_lines import Withdrawn
from quoting.core.order.stage import Stage
from quoting.schema.words import DAY
from quoting.web.forms.sent import Sent
from quoting.web.guide.row_view import last_tick, row_view
from quoting.web.making.at_hand import AtHand, at_hand
from quoting.web.making.forms import Forms, new_forms, seen_line, sitting_sent
from quoting.web.making.writing import put_in_place, write_sitting
from quoting.web.shop import shop_now
from quoting.web.statuses import REFUSED

blueprint = Blueprint("row", __name__, url_prefix="/orders/<int:order_id>/guide/row")


@blueprint.get("")
def show(order_id: int) -> Response:
    """Show the row to work now, as the book has it."""
    return _page(at_hand(order_id))


@blueprint.post("")
def done(order_id: int) -> ResponseReturnValue:
    """Write down how many rows are done; what is done already is not written twice."""
    hand, shop = at_hand(order_id), shop_now()
    if hand.order.stage is not Stage.ON_THE_HOOK or _is_sent_again(hand):
        return _to_page(order_id)
    sent = _told()
    try:
        _check_seen(hand)
        write_sitting(sent, hand, shop, None)
    except Refused as refused:
        now = hand.anew()
        return _page(now, sitting_sent(sent, now, shop, refused.mistakes)), REFUSED
    return _to_page(order_id)


@blueprint.post("/back")
def back(order_id: int) -> ResponseReturnValue:
    """Take the last tick back, unless it was taken back or more was written meanwhile."""
    hand = at_hand(order_id)
    tick = last_tick(hand)
    on_the_hook = hand.order.stage is Stage.ON_THE_HOOK
    if tick is not None and on_the_hook and seen_line() == hand.last:
        put_in_place(hand, tick, (Withdrawn(),))
    return _to_page(order_id)


@blueprint.get("/back")
def again(order_id: int) -> ResponseReturnValue:
    """Lead whoever opens such an address anew to the row."""
    return _to_page(order_id)


def resume() -> str:
    """Return the page as the book has it, when a form comes from before a restart."""
    hand = at_hand((request.view_args or {})["order_id"])
    return _shown(hand, sitting_sent(_told(), hand, shop_now(), stale=True))


def _told() -> Sent:
    """Return what was sent as a sitting of today, in which nothing but rows was told."""
    shop = shop_now()
    today = DAY.show(shop.today(), shop.notation)
    return MultiDict({"rows": request.form.get("rows", ""), "day": today})


def _check_seen(hand: AtHand) -> None:
    """Refuse a tick of a page to which more was written since. Errors: `log-overtaken`."""
    if seen_line() not in {None, hand.last}:
        raise refuse("", MistakeCode.LOG_OVERTAKEN)


def _is_sent_again(hand: AtHand) -> bool:
    """Return whether the rows of a tick are done already: a button was pressed twice."""
    return request.form.get("rows", type=int) == hand.progress.rows_done


def _page(hand: AtHand, answer: Forms | None = None) -> Response:
    """Return the page, which no browser keeps: a phone that wakes asks for it anew."""
    response = make_response(_shown(hand, answer))
    response.headers["Cache-Control"] = "private, no-store"
    return response


def _shown(hand: AtHand, answer: Forms | None = None) -> str:
    shop = shop_now()
    forms = answer or new_forms(hand, shop)
    return render_template(
        "guide/row.html", here="orders", hand=hand, view=row_view(hand, shop), answer=forms
    )


def _to_page(order_id: int) -> ResponseReturnValue:
    return redirect(url_for("row.show", order_id=order_id), 303)
