"""The papers of an order: what can be made now, and what was made."""

from __future__ import annotations

from datetime import date

from flask import Blueprint, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import Refused, refuse
from quoting.core.papers.batch import BatchAsked, BatchRecord, batch_of
from quoting.core.papers.bill import bill_of
from quoting.core.papers.head import PaperKind
from quoting.core.papers.receipt import receipt_of
from quoting.core.papers.series import PaperFacts
from quoting.schema.paper_shapes import BATCH_ASKED, BILL_ASKED
from quoting.store.papers import make_paper, papers_of
from quoting.web.kept import book_now, moment_now
from quoting.web.making.at_hand import AtHand, at_hand
from quoting.web.making.forms import SEEN, seen_line
from quoting.web.orders.order_answer import Said
from quoting.web.papers.asked import (
    PaperForms,
    new_paper_forms,
    paper_forms_sent,
    read_asked,
)
from quoting.web.papers.view import papers_view
from quoting.web.shop import shop_now
from quoting.web.statuses import REFUSED
from quoting.wording import mistake_sentence
from quoting.wording.papers import order_paper_words

blueprint = Blueprint("papers", __name__, url_prefix="/orders/<int:order_id>/papers")

LINE = "line"
"""The hidden field with the line of the log that a receipt is for."""


@blueprint.get("")
def show(order_id: int) -> str:
    """Show the papers of an order."""
    hand = at_hand(order_id)
    return page(hand, new_paper_forms(hand, shop_now()))


@blueprint.post("/receipt")
def receipt(order_id: int) -> ResponseReturnValue:
    """Make the receipt of a payment; one that has one keeps it."""
    hand, shop = at_hand(order_id), shop_now()
    line = request.form.get(LINE, 0, type=int)
    try:
        return _made(hand, receipt_of(hand.offer, hand.entries, line, day=shop.today()))
    except Refused as refused:
        said = tuple(
            Said(where="", sentence=mistake_sentence(mistake, shop.speech), field_id="")
            for mistake in refused.mistakes
        )
        return page(hand, new_paper_forms(hand, shop), said), REFUSED


@blueprint.post("/bill")
def bill(order_id: int) -> ResponseReturnValue:
    """Make a bill for what is due."""
    hand, shop = at_hand(order_id), shop_now()
    try:
        asked = read_asked(PaperKind.BILL, BILL_ASKED, request.form, shop)
        return _made(hand, bill_of(hand.offer, hand.entries, asked, day=shop.today()))
    except Refused as refused:
        return _refused(hand, PaperKind.BILL, refused)


@blueprint.post("/batch")
def batch(order_id: int) -> ResponseReturnValue:
    """Make the record of the blankets that were finished."""
    hand, shop = at_hand(order_id), shop_now()
    try:
        asked = read_asked(PaperKind.BATCH, BATCH_ASKED, request.form, shop)
        return _made(hand, _record(hand, asked, shop.today()))
    except Refused as refused:
        return _refused(hand, PaperKind.BATCH, refused)


@blueprint.get("/<any(receipt, bill, batch):deed>")
def again(order_id: int, deed: str) -> ResponseReturnValue:
    """Lead whoever opens such an address anew to the page itself."""
    del deed
    return redirect(url_for("papers.show", order_id=order_id))


def page(hand: AtHand, forms: PaperForms, said: tuple[Said, ...] = ()) -> str:
    """Return the page of an order's papers; what is `said` is wrong with none of the fields."""
    shop = shop_now()
    return render_template(
        "papers/order.html",
        here="orders",
        hand=hand,
        view=papers_view(hand, papers_of(book_now(), hand.id), shop.speech),
        forms=forms,
        answer={"said": said or forms.said},
        order_paper_words=order_paper_words,
        seen=SEEN,
        line=LINE,
    )


def resume() -> str:
    """Return the page with what was typed, when it comes from before a restart."""
    hand, shop = at_hand((request.view_args or {})["order_id"]), shop_now()
    kind = PaperKind(request.path.rsplit("/", 1)[1])
    return page(hand, paper_forms_sent(kind, request.form, hand, shop, stale=True))


def _record(hand: AtHand, asked: BatchAsked, day: date) -> BatchRecord:
    locale = hand.quote.workshop.locale
    offer, entries, sources = hand.offer, hand.entries, hand.sources
    return batch_of(offer, entries, sources, asked, makers_locale=locale, day=day)


def _made(hand: AtHand, paper: PaperFacts) -> ResponseReturnValue:
    """Keep a paper, and lead to it among the others. Errors: as the store."""
    seen = seen_line()
    if seen is None:
        raise refuse("", MistakeCode.LOG_OVERTAKEN)
    made = make_paper(book_now(), hand.id, paper, seen=seen, now=moment_now())
    anchor = f"{made.kind}-{made.number}"
    return redirect(url_for("papers.show", order_id=hand.id, _anchor=anchor), 303)


def _refused(hand: AtHand, kind: PaperKind, refused: Refused) -> ResponseReturnValue:
    shop = shop_now()
    forms = paper_forms_sent(kind, request.form, hand, shop, refused.mistakes)
    return page(hand.anew(), forms), REFUSED
