"""The working guide of a kept order, as a page to print."""

from __future__ import annotations

from flask import Blueprint, Response, url_for

from quoting.store.orders import kept_order
from quoting.web.guide.showing import drawn_guide, guide_file
from quoting.web.kept import book_now
from quoting.web.making.at_hand import quote_to_make
from quoting.web.papers.showing import Deeds, paper_page

blueprint = Blueprint("kept_guides", __name__, url_prefix="/orders/<int:order_id>/guide")


@blueprint.get("")
def show(order_id: int) -> str:
    """Show the guide, by the quote that the order was agreed by, or else as it stands."""
    quote, _ = quote_to_make(kept_order(book_now(), order_id))
    deeds = Deeds(pdf=url_for("kept_guides.pdf", order_id=order_id))
    return paper_page(drawn_guide(quote), deeds)


@blueprint.get("/file.pdf")
def pdf(order_id: int) -> Response:
    """Send it as a PDF."""
    quote, _ = quote_to_make(kept_order(book_now(), order_id))
    return guide_file(quote)
