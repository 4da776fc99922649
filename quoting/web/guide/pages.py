"""The working guide of the order on the worktable, as a page to print."""

from __future__ import annotations

from flask import Blueprint, redirect, request, url_for
from flask.typing import ResponseReturnValue

from quoting.web.guide.showing import guide_page
from quoting.web.orders.order_answer import answer_form
from quoting.web.orders.pages import show_refused
from quoting.web.shop import shop_now

blueprint = Blueprint("guide", __name__)


@blueprint.post("/guide")
def show() -> ResponseReturnValue:
    """Show the guide of what is typed."""
    found = answer_form(request.form, shop_now(), patient=False)
    if found.quote is None:
        return show_refused(found)
    return guide_page(found.quote)


@blueprint.get("/guide")
def again() -> ResponseReturnValue:
    """Lead whoever opens the address anew to the order: no guide is kept."""
    return redirect(url_for("orders.show"))
