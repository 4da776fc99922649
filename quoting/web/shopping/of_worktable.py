"""The shopping list of the order on the worktable, as it is typed."""

from __future__ import annotations

from flask import Blueprint, redirect, request, url_for
from flask.typing import ResponseReturnValue

from quoting.core.making.shopping_list import ToMake
from quoting.web.orders.order_answer import answer_form
from quoting.web.orders.pages import show_refused
from quoting.web.papers.showing import Deeds, paper_file, paper_page
from quoting.web.shop import shop_now
from quoting.web.shopping.listing import list_paper

blueprint = Blueprint("worktable_shopping", __name__)


@blueprint.post("/shopping")
def show() -> ResponseReturnValue:
    """Show the list as a page to print, or the worktable with what is to be put right."""
    shop = shop_now()
    found = answer_form(request.form, shop, patient=False)
    if found.quote is None:
        return show_refused(found)
    deeds = Deeds(pdf=url_for("worktable_shopping.pdf"), sent=tuple(request.form.items(multi=True)))
    return paper_page(list_paper([ToMake(quote=found.quote)], shop), deeds)


@blueprint.post("/shopping/file.pdf")
def pdf() -> ResponseReturnValue:
    """Send the list as a PDF."""
    shop = shop_now()
    found = answer_form(request.form, shop, patient=False)
    if found.quote is None:
        return show_refused(found)
    paper = list_paper([ToMake(quote=found.quote)], shop)
    return paper_file(paper, f"shopping list {found.quote.order.title}")


@blueprint.get("/shopping")
@blueprint.get("/shopping/file.pdf")
def again() -> ResponseReturnValue:
    """Lead whoever opens such an address anew to the order."""
    return redirect(url_for("orders.show"))
