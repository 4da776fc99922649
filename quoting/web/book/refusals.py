"""What an order's stage does not allow, told with a link to what would do."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from types import MappingProxyType

from flask import render_template, url_for
from flask.typing import ResponseReturnValue

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import Refused
from quoting.store.quotes import quote_lines
from quoting.web.kept import book_now
from quoting.web.shop import shop_now
from quoting.web.statuses import REFUSED
from quoting.wording import mistake_sentence


@dataclass(frozen=True, slots=True, kw_only=True)
class WayOn:
    """A link, and what there is to do there."""

    words: str
    address: str


def refused_page(refused: Refused, order_id: int) -> ResponseReturnValue:
    """Return a page that says what is not done and where it could be.

    Errors: `refused` itself, where it is none of a stage or of an order that was overtaken.
    """
    mistake = refused.mistakes[0]
    way_on = _WAYS_ON.get(mistake.code)
    if way_on is None:
        raise refused
    said = mistake_sentence(mistake, shop_now().speech)
    page = render_template("book/not_done.html", here="orders", said=said, way_on=way_on(order_id))
    return page, REFUSED


def _to_order(words: str) -> Callable[[int], WayOn]:
    def way_on(order_id: int) -> WayOn:
        return WayOn(words=words, address=url_for("kept_orders.show", order_id=order_id))

    return way_on


def _to_quote(order_id: int) -> WayOn:
    """Return the way to the quote that was given last, or to where one is given."""
    lines = quote_lines(book_now(), order_id)
    if not lines:
        return _to_order("Give a quote first")(order_id)
    number = lines[0].number
    return WayOn(words=f"To quote {number}", address=url_for("given_quotes.show", number=number))


_WAYS_ON: Mapping[MistakeCode, Callable[[int], WayOn]] = MappingProxyType(
    {
        MistakeCode.ORDER_OVERTAKEN: _to_order("Look at the order as it is now"),
        MistakeCode.QUOTE_AGREED: _to_order("To the order"),
        MistakeCode.STAGE_CLOSED: _to_order("To the order"),
        MistakeCode.STAGE_SKIPPED: _to_order("To the order"),
        MistakeCode.STAGE_TAKES_ACCEPTING: _to_quote,
        MistakeCode.STAGE_TAKES_QUOTE: _to_order("Give a quote first"),
    }
)
