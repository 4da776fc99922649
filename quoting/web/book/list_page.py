"""The list of orders: searched, sorted by a column, by stage, a page at a time."""

from __future__ import annotations

from collections.abc import Mapping
from enum import StrEnum
from types import MappingProxyType
from typing import Any, TypeVar

from flask import Blueprint, render_template, request, url_for

from quoting.core.order.stage import Stage
from quoting.store.order_list import OrderQuery, SortedBy, list_orders
from quoting.web.kept import book_now

Choice = TypeVar("Choice", bound=StrEnum)
Other = TypeVar("Other")

blueprint = Blueprint("order_list", __name__)

MOST_WORDS = 200

COLUMNS: Mapping[SortedBy, str] = MappingProxyType(
    {
        SortedBy.STAGE: "Stage",
        SortedBy.BUYER: "Buyer",
        SortedBy.TITLE: "Title",
        SortedBy.QUOTE: "Quote",
        SortedBy.WANTED_BY: "Wanted by",
        SortedBy.READY_BY: "Ready by",
        SortedBy.PRICE: "Price",
        SortedBy.EARNED_PER_HOUR: "An hour earns",
        SortedBy.CHANGED: "Changed",
    }
)

_FALLING_FIRST = frozenset(
    {SortedBy.CHANGED, SortedBy.QUOTE, SortedBy.PRICE, SortedBy.EARNED_PER_HOUR}
)
"""What is of most interest where it is most."""


@blueprint.get("/orders")
def show() -> str:
    """Show the orders that are asked for."""
    query = read_query(request.args)
    found = list_orders(book_now(), query)
    return render_template(
        "book/list.html",
        here="orders",
        query=query,
        found=found,
        counted=sum(found.by_stage.values()),
        before=str(found.page - 1) if found.page > 1 else "",
        after=str(found.page + 1) if found.page < found.pages else "",
        stages=tuple(Stage),
        columns=COLUMNS,
        address=_address,
        turned=_turned,
    )


def read_query(asked: Mapping[str, str]) -> OrderQuery:
    """Return what an address asks of the list; what it cannot mean is left as it usually is."""
    by = _one_of(SortedBy, asked.get("by", ""), SortedBy.CHANGED)
    stage = _one_of(Stage, asked.get("stage", ""), None)
    page = asked.get("page", "")
    return OrderQuery(
        words=asked.get("words", "")[:MOST_WORDS].replace("\0", "").strip(),
        stages=() if stage is None else (stage,),
        by=by,
        falling={"down": True, "up": False}.get(asked.get("way", ""), by in _FALLING_FIRST),
        page=int(page) if page.isascii() and page.isdecimal() and len(page) < len("1000000") else 1,
    )


def _one_of(choices: type[Choice], text: str, other: Other) -> Choice | Other:
    try:
        return choices(text)
    except ValueError:
        return other


def _address(query: OrderQuery, **changes: str) -> str:
    """Return where a list is found that differs in something; a change leads to its first page."""
    asked = {
        "words": query.words,
        "stage": query.stages[0].value if query.stages else "",
        "by": query.by.value,
        "way": "down" if query.falling else "up",
    }
    wanted: dict[str, Any] = {name: text for name, text in (asked | changes).items() if text}
    return url_for("order_list.show", **wanted)


def _turned(query: OrderQuery, by: SortedBy) -> str:
    """Return which way a column's heading sorts by it: the other way than now, if it does now."""
    falling = not query.falling if query.by is by else by in _FALLING_FIRST
    return "down" if falling else "up"
