"""Afterwards: the estimate beside what an order took, and what it teaches the workshop."""

from __future__ import annotations

from flask import Blueprint, Response, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue

from exports.costing_workbook import actuals_of, workbook_bytes
from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import Refused, refuse
from quoting.core.making.money_due import money_due
from quoting.core.making.outcome import outcome_of
from quoting.web.downloads import WORKBOOK, download
from quoting.web.making.at_hand import AtHand, at_hand
from quoting.web.making.forms import SEEN, seen_line
from quoting.web.making.offered import offered_by, take_in
from quoting.web.making.took_view import took_view
from quoting.web.shop import shop_now
from quoting.web.statuses import REFUSED
from quoting.web.turns import take_turn
from quoting.wording import mistake_sentence

blueprint = Blueprint("took", __name__, url_prefix="/orders/<int:order_id>/took")

BASED_ON = "based_on"
"""The hidden field with the version of the workshop that the page was shown from."""


@blueprint.get("")
def show(order_id: int) -> str:
    """Show what the order took, once it is finished."""
    return _page(at_hand(order_id))


@blueprint.post("")
def take(order_id: int) -> ResponseReturnValue:
    """Take what was ticked into the workshop, as its next version."""
    hand, shop = at_hand(order_id), shop_now()
    try:
        if seen_line() != hand.last:
            raise refuse("", MistakeCode.LOG_OVERTAKEN)
        based_on = request.form.get(BASED_ON, type=int)
        version = take_in(hand, shop, frozenset(request.form), based_on=based_on)
    except Refused as refused:
        said = [mistake_sentence(mistake, shop.speech) for mistake in refused.mistakes]
        return _page(hand, said), REFUSED
    return redirect(url_for("took.show", order_id=order_id, taken=version.number), 303)


@blueprint.get("/workbook")
def workbook(order_id: int) -> Response:
    """Send the costing as a spreadsheet, with what it really took filled in."""
    take_turn()
    hand = at_hand(order_id)
    outcome = outcome_of(hand.quote, hand.entries)
    known = actuals_of(hand.quote, outcome, money_due(hand.offer, hand.entries))
    name = f"what it took {hand.quote.number} {hand.quote.order.title}"
    return download(workbook_bytes(hand.quote, known), name, "xlsx", WORKBOOK)


def _page(hand: AtHand, said: list[str] | None = None) -> str:
    shop = shop_now()
    return render_template(
        "making/took.html",
        here="orders",
        hand=hand,
        view=took_view(hand, shop.speech),
        offered=offered_by(hand, shop),
        said=said or [],
        seen=SEEN,
    )
