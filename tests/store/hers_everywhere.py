"""An order with its buyer's name in all that a book keeps of it, and how she is forgotten."""

from __future__ import annotations

import json
from collections.abc import Iterator
from dataclasses import replace
from datetime import date
from decimal import Decimal
from typing import Any

from sqlalchemy import Text, cast, select

from exports.records.quote_record import quote_record
from quoting.core.making.log_lines import EndsWoven, Moved, Remark
from quoting.core.order.order import Extra
from quoting.core.order.stage import Stage
from quoting.core.quote.given_number import GivenNumber
from quoting.core.quote.offer import offer_of
from quoting.core.quote.quote import quote_order
from quoting.store.book import Book
from quoting.store.forgetting import forget_buyer
from quoting.store.log import add_line
from quoting.store.order_content import OrderContent
from quoting.store.orders import create_order, kept_order, save_order
from quoting.store.papers import make_paper
from quoting.store.quote_content import FrozenQuote
from quoting.store.quotes import give_quote, quotes_of
from quoting.store.tables import METADATA
from quoting.store.workshops import save_workshop
from quoting.wording import people_texts
from tests.examples import sample_order, sample_workshop
from tests.store.contents import FIGURES
from tests.store.made_papers import bill
from tests.store.moments import DESK, NOW, TABLET, later

DAY = date(2026, 11, 25)
NAME = "Zephyrine Ückermann"
WORDS = ("zephyrine", "ückermann", "uckermann", "\\u00fcckermann")
PRIVATE = (*WORDS, "reed lane", "0555", "met her at the fair")


def content_of(buyer: str, title: str, **changes: Any) -> OrderContent:
    """Return an order of a buyer's, with her name wherever people write one."""
    tag = Extra(what=f"name tag {buyer.split()[0]}", cost=Decimal(9), optional=True)
    extras = (tag, Extra(what="gift box"))
    order = sample_order(
        buyer=buyer, title=title, notes=f"{buyer}, 12 Reed Lane, 0555 123", extras=extras
    )
    typed = {
        "order.title": (title,),
        "order.buyer": (buyer,),
        "order.notes": (order.notes,),
        "extras.1.what": (extras[0].what,),
        "blanket.width": ("80 cm",),
        "blanket.colours": ("oat", "teal"),
        "removed": (json.dumps(["extras", 0, [["what", f"for {buyer}"]]]),),
        "order_file": (f'buyer = "{buyer}"',),
    }
    return OrderContent(
        typed=typed | changes, title=title, buyer=buyer, order=order, figures=FIGURES
    )


def frozen(number: GivenNumber, content: OrderContent) -> FrozenQuote:
    """Return a quote with a page that says all that the buyer's page can."""
    assert content.order is not None
    quote = replace(quote_order(content.order, sample_workshop(), today=DAY), number=str(number))
    offer = offer_of(quote)
    told = people_texts(offer)
    places = "".join(f'<p data-of="{name}">{text}</p>' for name, text in told.items())
    colours = "".join(f"<td>{colour.name}</td>" for colour in offer.colours)
    drawing = f'<svg><title id="d-title">{told["drawing"]}</title><text>olive</text></svg>'
    return FrozenQuote(
        day=quote.day,
        valid_until=quote.valid_until,
        workshop_version=1,
        workshop=quote.workshop,
        order=quote.order,
        results=quote_record(quote),
        offer=offer,
        page=f"<main>{places}{drawing}{colours}<b>284.00</b></main>",
        program="0.1.0",
    )


def filled(book: Book, name: str = NAME, title: str = f"Cot blanket for {NAME}") -> int:
    """Return an order with the name in all that a book keeps of it, and typed again and again."""
    save_workshop(book, sample_workshop(), now=NOW)
    content = content_of(name, title)
    order_id = create_order(book, content, now=NOW, writer=DESK).id
    for turn in range(1, 12):
        again = content_of(name, title, **{"blanket.height": (f"{turn} cm",)})
        save_order(book, order_id, again, revision=turn, writer=DESK, now=later(seconds=turn))
    aside = content_of(f"{name}", f"Another for {name}")
    save_order(book, order_id, aside, revision=1, writer=TABLET, now=later(minutes=1))
    revision = kept_order(book, order_id).revision
    give_quote(
        book, order_id, lambda n: frozen(n, content), revision=revision, day=DAY, now=later(hours=1)
    )
    remark = Remark(day=DAY, text=f"{name} met her at the fair")
    add_line(book, order_id, remark, now=later(hours=2))
    moved = Moved(stage=Stage.CALLED_OFF, before=Stage.QUOTED, why=f"{name} is ill")
    add_line(book, order_id, moved, now=later(hours=3))
    woven = add_line(book, order_id, EndsWoven(day=DAY, ends=12), now=later(hours=4))
    (quote,) = quotes_of(book, order_id)
    paper = bill(offer=quote.frozen.offer)
    make_paper(book, order_id, paper, seen=woven.id, now=later(hours=5))
    return order_id


def forget(book: Book, order_id: int, *, everywhere: bool = False) -> bool:
    return forget_buyer(book, order_id, everywhere=everywhere, told=people_texts)


def all_texts(book: Book) -> Iterator[str]:
    """Yield every value of every row."""
    with book.reading() as connection:
        for table in METADATA.tables.values():
            for row in connection.execute(select(*(cast(c, Text) for c in table.c))):
                yield from (value for value in row if value)
