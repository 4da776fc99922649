"""What the buyer reads of the order on the worktable, to be sent: a PDF, and a message."""

from __future__ import annotations

from flask import Blueprint, redirect, url_for
from flask.typing import ResponseReturnValue

from exports.papers.offers import quote_paper
from quoting.web.book.mark import order_home
from quoting.web.orders.pages import asked, show_refused
from quoting.web.papers.showing import message_page, paper_file

blueprint = Blueprint("to_send", __name__, url_prefix="/quote")


@blueprint.post("/file.pdf")
def pdf() -> ResponseReturnValue:
    """Send the quote as a PDF."""
    found = asked()
    if found.quote is None:
        return show_refused(found)
    name = f"quote {found.quote.number} {found.quote.order.title}"
    return paper_file(quote_paper(found.quote), name)


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
