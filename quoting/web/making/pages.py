"""While it is made: rows, minutes, yarn, ends and money written down, the clock, what is left."""

from __future__ import annotations

from datetime import datetime

from flask import Blueprint, abort, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue

from quoting.core.ground.errors import Refused
from quoting.core.making.line_checks import check_line, is_paid_again
from quoting.core.order.stage import Stage
from quoting.schema.log_shapes import LogKind
from quoting.schema.words import DAY
from quoting.store.clocks import drop_clock, start_clock, stop_clock
from quoting.store.orders import change_stage
from quoting.web.kept import book_now, moment_now
from quoting.web.making.at_hand import AtHand, NotMadeYet, at_hand
from quoting.web.making.choices import choices_of
from quoting.web.making.forms import (
    AGAIN,
    SESSION,
    Forms,
    line_sent,
    new_forms,
    sitting_sent,
    timed_session,
)
from quoting.web.making.line_forms import WRITTEN_ALONE, read_line
from quoting.web.making.view import making_view
from quoting.web.making.writing import with_minutes, write_lines, write_sitting
from quoting.web.shop import shop_now
from quoting.web.statuses import REFUSED

blueprint = Blueprint("making", __name__, url_prefix="/orders/<int:order_id>/making")


@blueprint.get("")
def show(order_id: int) -> str:
    """Show how far the order is, and what to write down."""
    hand = at_hand(order_id)
    timed = timed_session(hand, request.args.get(SESSION, 0, type=int))
    return page(hand, new_forms(hand, shop_now(), timed))


def page(hand: AtHand, forms: Forms) -> str:
    """Return the page of an order that is made."""
    shop = shop_now()
    return render_template(
        "making/show.html",
        here="orders",
        hand=hand,
        view=making_view(hand, shop),
        answer=forms,
        choices=choices_of(hand, shop),
        today=DAY.show(shop.today(), shop.notation),
        moment=_moment,
    )


def _moment(moment: datetime) -> str:
    """Return a moment by this computer's clock, its day where that is not today."""
    here, shop = moment.astimezone(), shop_now()
    day = "" if here.date() == shop.today() else f", {shop.speech.day(here.date())}"
    return f"{here:%H:%M}{day}"


@blueprint.post("")
def write(order_id: int) -> ResponseReturnValue:
    """Write a sitting down, all of it or nothing."""
    hand, shop, sent = at_hand(order_id), shop_now(), request.form
    timed = timed_session(hand, sent.get(SESSION, 0, type=int))
    try:
        write_sitting(sent, hand, shop, timed)
    except Refused as refused:
        now = hand.anew()
        return page(now, sitting_sent(sent, now, shop, refused.mistakes)), REFUSED
    return _to_page(order_id)


@blueprint.post("/lines/<kind>")
def line(order_id: int, kind: str) -> ResponseReturnValue:
    """Write one line down: money, yarn that was got, a note."""
    if kind not in WRITTEN_ALONE:
        abort(404)
    hand, shop, sent, of = at_hand(order_id), shop_now(), request.form, LogKind(kind)
    try:
        read = read_line(of, sent, shop)
        check_line(hand.quote, hand.entries, read, today=shop.today())
        if is_paid_again(hand.entries, read) and not sent.get(AGAIN):
            return page(hand, line_sent(of, sent, hand, shop, asks_again=True)), REFUSED
        write_lines(hand, (read,))
    except Refused as refused:
        now = hand.anew()
        return page(now, line_sent(of, sent, now, shop, refused.mistakes)), REFUSED
    return _to_page(order_id)


@blueprint.post("/clock")
def clock(order_id: int) -> ResponseReturnValue:
    """Start or stop the clock, or put it away; what is typed on the page stays."""
    hand, shop, sent, book = at_hand(order_id), shop_now(), request.form, book_now()
    timed = None
    try:
        match sent.get("do"):
            case "start":
                start_clock(book, hand.id, now=moment_now())
            case "stop":
                timed = stop_clock(book, hand.id, now=moment_now())
            case "drop":
                drop_clock(book, hand.id)
    except Refused as refused:
        return page(hand, sitting_sent(sent, hand, shop, refused.mistakes)), REFUSED
    now = hand.anew()
    typed = sent if timed is None else with_minutes(sent, timed, shop)
    return page(now, sitting_sent(typed, now, shop))


@blueprint.post("/hook")
def hook(order_id: int) -> ResponseReturnValue:
    """Put the order on the hook."""
    if at_hand(order_id).order.stage is Stage.AGREED:
        change_stage(book_now(), order_id, Stage.ON_THE_HOOK, now=moment_now())
    return _to_page(order_id)


@blueprint.get("/clock")
@blueprint.get("/hook")
@blueprint.get("/lines/<kind>")
def again(order_id: int, kind: str = "") -> ResponseReturnValue:
    """Lead whoever opens such an address anew to the page itself."""
    del kind
    return redirect(url_for("making.show", order_id=order_id))


@blueprint.app_errorhandler(NotMadeYet)
def not_made_yet(too_soon: NotMadeYet) -> ResponseReturnValue:
    """Say that there is nothing to make yet, and lead to the order."""
    status = REFUSED if request.method == "POST" else 200
    return render_template("making/not_yet.html", here="orders", too_soon=too_soon), status


def resume() -> str:
    """Return the page with all that was typed, when it comes from before a restart."""
    given = request.view_args or {}
    hand, shop, sent = at_hand(given["order_id"]), shop_now(), request.form
    if given.get("kind") in WRITTEN_ALONE:
        kind = LogKind(given["kind"])
        return page(hand, line_sent(kind, sent, hand, shop, stale=True))
    return page(hand, sitting_sent(sent, hand, shop, stale=True))


def _to_page(order_id: int) -> ResponseReturnValue:
    return redirect(url_for("making.show", order_id=order_id), 303)
