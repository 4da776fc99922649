"""The shopping list of kept orders: of one, or of all that are agreed and not finished."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import suppress
from dataclasses import dataclass

from flask import Blueprint, Response, abort, render_template, request

from quoting.core.ground.errors import Refused
from quoting.core.making.shopping_list import ToMake
from quoting.store.order_content import KeptOrder
from quoting.store.orders import kept_order
from quoting.store.queue import agreed_without_quote
from quoting.web.book.freezing import quote_of_today
from quoting.web.kept import book_now
from quoting.web.making.at_hand import NotMadeYet, at_hand
from quoting.web.papers.showing import drawn, kind_of, paper_file
from quoting.web.queue_now import queue_now
from quoting.web.shop import shop_now
from quoting.web.shopping.listing import list_paper
from quoting.web.turns import take_turn
from quoting.wording.paper import Paper

blueprint = Blueprint("shopping", __name__, url_prefix="/orders")


@dataclass(frozen=True, slots=True, kw_only=True)
class Offered:
    """An order that can be ticked, and what is to be made of it, if it can be worked out."""

    order: KeptOrder
    to_make: ToMake | None
    ticked: bool = True


@blueprint.get("/shopping")
def show() -> str:
    """Show the list of the agreed orders that are ticked, at first of all of them."""
    take_turn()
    return _page(_all_offered(), of_all=True)


@blueprint.get("/shopping/file.pdf")
def pdf() -> Response:
    """Send that list as a PDF."""
    return _file(_all_offered())


@blueprint.get("/<int:order_id>/shopping")
def of_order(order_id: int) -> str:
    """Show the list of one order, agreed or not."""
    take_turn()
    return _page([_offered(order_id)], of_all=False)


@blueprint.get("/<int:order_id>/shopping/file.pdf")
def pdf_of_order(order_id: int) -> Response:
    """Send the list of one order as a PDF."""
    return _file([_offered(order_id)])


def _offered(order_id: int) -> Offered:
    order = kept_order(book_now(), order_id)
    return Offered(order=order, to_make=_made(order_id) or _asked(order))


def _all_offered() -> list[Offered]:
    """Return the agreed orders, ticked as the page has them."""
    asked, ticks = "asked" in request.args, request.args.getlist("order")
    return [
        Offered(
            order=kept_order(book_now(), number),
            to_make=_made(number),
            ticked=not asked or str(number) in ticks,
        )
        for number in _agreed()
    ]


def _agreed() -> Iterator[int]:
    """Yield the orders to buy for, in the order that they are made."""
    yield from (turn.order.order_id for turn in queue_now().turns)
    yield from (each.order_id for each in agreed_without_quote(book_now()))


def _made(order_id: int) -> ToMake | None:
    """Return an order that is agreed, with its log; None of one that is not, or not whole."""
    try:
        hand = at_hand(order_id)
    except NotMadeYet:
        return None
    return ToMake(quote=hand.quote, entries=hand.entries)


def _asked(order: KeptOrder) -> ToMake | None:
    """Return an order as it would be quoted today; None where it is not whole."""
    with suppress(Refused):
        if order.content.order is not None:
            return ToMake(quote=quote_of_today(order.content.order, shop_now()))
    return None


def _paper(offered: list[Offered]) -> Paper | None:
    """Return the list of what is ticked, None where that is nothing."""
    orders = [one.to_make for one in offered if one.ticked and one.to_make is not None]
    spare = "spare" in request.args
    return list_paper(orders, shop_now(), spare=spare) if orders else None


def _file(offered: list[Offered]) -> Response:
    paper = _paper(offered)
    if paper is None:
        abort(404)
    return paper_file(paper, paper.name)


def _page(offered: list[Offered], *, of_all: bool) -> str:
    return render_template(
        "shopping/show.html",
        here="orders",
        offered=offered,
        of_all=of_all,
        spare="spare" in request.args,
        paper=_paper(offered),
        kind_of=kind_of,
        drawn=drawn,
    )
