"""A paper of an order, as it was made, to be printed or sent; and one that cancels it."""

from __future__ import annotations

from flask import Blueprint, Response, abort, redirect, url_for
from flask.typing import ResponseReturnValue

from quoting.core.papers.series import PaperFacts
from quoting.core.quote.given_number import GivenNumber
from quoting.store.papers import cancel_paper, kept_paper
from quoting.web.kept import book_now, moment_now
from quoting.web.papers.showing import Deeds, message_page, paper_file, paper_page
from quoting.web.shop import shop_now
from quoting.wording.papers import OrderPaper, order_paper

blueprint = Blueprint("printed", __name__, url_prefix="/papers")


@blueprint.get("/<any(receipt, bill, batch, 'care-card', label):what>/<given:number>")
def show(what: str, number: GivenNumber) -> str:
    """Show a paper as a page of its own."""
    facts = _facts(OrderPaper(what), number)
    deeds = Deeds(
        pdf=url_for("printed.pdf", what=what, number=number),
        message=url_for("printed.message", what=what, number=number),
    )
    return paper_page(order_paper(OrderPaper(what), facts), deeds)


@blueprint.get("/<any(receipt, bill, batch, 'care-card', label):what>/<given:number>/paper.pdf")
def pdf(what: str, number: GivenNumber) -> Response:
    """Send a paper as a PDF."""
    facts = _facts(OrderPaper(what), number)
    name = f"{what} {number} {facts.head.title}"
    return paper_file(order_paper(OrderPaper(what), facts), name)


@blueprint.get("/<any(receipt, bill, batch, 'care-card', label):what>/<given:number>/message")
def message(what: str, number: GivenNumber) -> str:
    """Show what a paper says as a message to be copied."""
    kind = OrderPaper(what)
    order_id = kept_paper(book_now(), kind.kind, number).order_id
    back = url_for("papers.show", order_id=order_id)
    return message_page(order_paper(kind, _facts(kind, number)), back)


@blueprint.post("/<any(receipt, bill, batch):what>/<given:number>/cancel")
def cancel(what: str, number: GivenNumber) -> ResponseReturnValue:
    """Make the paper that cancels one, and lead to it among the others."""
    kind = OrderPaper(what).kind
    made = cancel_paper(book_now(), kind, number, day=shop_now().today(), now=moment_now())
    anchor = f"{made.kind}-{made.number}"
    return redirect(url_for("papers.show", order_id=made.order_id, _anchor=anchor), 303)


@blueprint.get("/<any(receipt, bill, batch):what>/<given:number>/cancel")
def again(what: str, number: GivenNumber) -> ResponseReturnValue:
    """Lead whoever opens such an address anew to the papers of the order."""
    order_id = kept_paper(book_now(), OrderPaper(what).kind, number).order_id
    return redirect(url_for("papers.show", order_id=order_id))


def _facts(what: OrderPaper, number: GivenNumber) -> PaperFacts:
    """Return what it says. Errors: `paper-missing`; nothing goes along with what only cancels."""
    facts = kept_paper(book_now(), what.kind, number).facts
    if what.goes_along and facts.head.cancels:
        abort(404)
    return facts
