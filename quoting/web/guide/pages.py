"""The working guide of the order on the worktable, as a page to print."""

from __future__ import annotations

from flask import Blueprint, redirect, request, url_for
from flask.typing import ResponseReturnValue

from quoting.web.guide.showing import drawn_guide, guide_file
from quoting.web.orders.order_answer import answer_form
from quoting.web.orders.pages import show_refused
from quoting.web.papers.showing import Deeds, paper_page
from quoting.web.shop import shop_now

blueprint = Blueprint("guide", __name__)


@blueprint.post("/guide")
def show() -> ResponseReturnValue:
    """Show the guide of what is typed."""
    found = answer_form(request.form, shop_now(), patient=False)
    if found.quote is None:
        return show_refused(found)
    sent = tuple(request.form.items(multi=True))
    return paper_page(drawn_guide(found.quote), Deeds(pdf=url_for("guide.pdf"), sent=sent))


@blueprint.post("/guide/file.pdf")
def pdf() -> ResponseReturnValue:
    """Send the guide of what is typed as a PDF."""
    found = answer_form(request.form, shop_now(), patient=False)
    return show_refused(found) if found.quote is None else guide_file(found.quote)


@blueprint.get("/guide")
@blueprint.get("/guide/file.pdf")
def again() -> ResponseReturnValue:
    """Lead whoever opens such an address anew to the order: no guide is kept."""
    return redirect(url_for("orders.show"))
