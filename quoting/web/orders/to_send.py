"""What the buyer reads of the order on the worktable, to be sent: a PDF, and a message."""

from __future__ import annotations

from flask import Blueprint, redirect, url_for
from flask.typing import ResponseReturnValue

from exports.papers.offers import quote_paper
from exports.papers.pdf import paper_pdf
from quoting.web.book.mark import order_home
from quoting.web.downloads import download
from quoting.web.orders.pages import asked, show_refused
from quoting.web.papers.showing import message_page
from quoting.web.turns import take_turn

blueprint = Blueprint("to_send", __name__, url_prefix="/quote")

PDF = "application/pdf"


@blueprint.post("/file.pdf")
def pdf() -> ResponseReturnValue:
    """Send the quote as a PDF."""
    take_turn()
    found = asked()
    if found.quote is None:
        return show_refused(found)
    name = f"quote {found.quote.number} {found.quote.order.title}"
    return download(paper_pdf(quote_paper(found.quote)), name, "pdf", PDF)


@blueprint.post("/message")
def message() -> ResponseReturnValue:
    """Show the quote as a message to be copied."""
    found = asked()
    if found.quote is None:
        return show_refused(found)
    return message_page(quote_paper(found.quote), order_home())


@blueprint.get("/<any('file.pdf', message):name>")
def again(name: str) -> ResponseReturnValue:
    """Lead whoever opens such an address anew to the order: no quote is kept."""
    del name
    return redirect(url_for("orders.show"))
