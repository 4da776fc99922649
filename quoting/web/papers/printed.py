"""A paper of an order, as it was made, to be printed or sent; and one that cancels it."""

from __future__ import annotations

from flask import Blueprint, Response, abort, redirect, url_for
from flask.typing import ResponseReturnValue

from exports.papers.pdf import paper_pdf
from quoting.core.quote.given_number import GivenNumber
from quoting.store.papers import cancel_paper, kept_paper
from quoting.web.downloads import download
from quoting.web.kept import book_now, moment_now
from quoting.web.papers.showing import paper_page
from quoting.web.shop import shop_now
from quoting.wording.paper import Paper
from quoting.wording.papers import Sheet, sheet_paper

blueprint = Blueprint("printed", __name__, url_prefix="/papers")

PDF = "application/pdf"


@blueprint.get("/<any(receipt, bill, batch, 'care-card', label):sheet>/<given:number>")
def show(sheet: str, number: GivenNumber) -> str:
    """Show a paper as a page of its own."""
    return paper_page(_paper(Sheet(sheet), number))


@blueprint.get("/<any(receipt, bill, batch, 'care-card', label):sheet>/<given:number>/paper.pdf")
def pdf(sheet: str, number: GivenNumber) -> Response:
    """Send a paper as a PDF."""
    paper = _paper(Sheet(sheet), number)
    return download(paper_pdf(paper), f"{sheet} {number} {paper.title}", "pdf", PDF)


@blueprint.post("/<any(receipt, bill, batch):sheet>/<given:number>/cancel")
def cancel(sheet: str, number: GivenNumber) -> ResponseReturnValue:
    """Make the paper that cancels one, and lead to it among the others."""
    kind = Sheet(sheet).kind
    made = cancel_paper(book_now(), kind, number, day=shop_now().today(), now=moment_now())
    anchor = f"{made.kind}-{made.number}"
    return redirect(url_for("papers.show", order_id=made.order_id, _anchor=anchor), 303)


@blueprint.get("/<any(receipt, bill, batch):sheet>/<given:number>/cancel")
def again(sheet: str, number: GivenNumber) -> ResponseReturnValue:
    """Lead whoever opens such an address anew to the papers of the order."""
    order_id = kept_paper(book_now(), Sheet(sheet).kind, number).order_id
    return redirect(url_for("papers.show", order_id=order_id))


def _paper(sheet: Sheet, number: GivenNumber) -> Paper:
    """Return a sheet in words. Errors: `paper-missing`; none goes with what only cancels."""
    facts = kept_paper(book_now(), sheet.kind, number).facts
    if sheet.goes_along and facts.head.cancels:
        abort(404)
    return sheet_paper(sheet, facts)
