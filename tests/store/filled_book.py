"""Makes the filled book that stands for the newest version from then on.

Run as `python -m tests.store.filled_book` once, when a version is new; a book that was released is
never made again.
"""

from __future__ import annotations

import argparse
from collections.abc import Iterator, Sequence
from datetime import date
from decimal import Decimal
from pathlib import Path
from typing import Any

from sqlalchemy import Table, insert

from quoting.core.making.log_lines import (
    Doing,
    EndsWoven,
    LogLine,
    Payment,
    Remark,
    RowsReached,
    Session,
    Withdrawn,
    YarnTaken,
    YarnUsed,
)
from quoting.core.order.stage import Stage
from quoting.core.papers.batch import BatchAsked, batch_of
from quoting.core.papers.bill import BillAsked, bill_of
from quoting.core.papers.head import PaperKind
from quoting.core.papers.payments import payments_in
from quoting.core.papers.receipt import receipt_of
from quoting.core.quote.given_number import GivenNumber
from quoting.schema.chosen import Chosen
from quoting.schema.kind import Kind
from quoting.schema.log_shapes import LOG_SHAPES
from quoting.schema.offer_shape import OFFER
from quoting.schema.order_shape import ORDER
from quoting.schema.paper_shapes import PAPER_SHAPES
from quoting.schema.several import NamedBy
from quoting.schema.shape import Shape
from quoting.schema.workshop_shape import WORKSHOP
from quoting.store.answers import accept_quote
from quoting.store.book import Book, open_book
from quoting.store.first_answers import FirstAnswers, keep_answers
from quoting.store.log import add_line, log_of
from quoting.store.orders import call_off, create_order, save_order
from quoting.store.papers import cancel_paper, make_paper
from quoting.store.quotes import agreed_quote, give_quote, kept_quote
from quoting.store.schema_version import NEWEST
from quoting.store.shelf import lots_on_shelf, weigh_lot
from quoting.store.tables import CLOCKS, PASSPHRASE, SIGN_INS
from quoting.store.workshops import bring_back, save_workshop
from quoting.web import create_app
from quoting.web.book.freezing import freezing, quote_of_today
from quoting.web.kept import KeptShop
from quoting.web.shop import shop_now
from tests.examples import sample_order, sample_workshop
from tests.store.contents import half, whole
from tests.store.moments import DESK, NOW, TABLET, later

BOOKS = Path(__file__).parent / "books"

WORKED_ON = 4
"""The order on the hook, which has quotes and a log."""

GIVEN_ON = date(2026, 12, 1)

LOG_LINES: tuple[LogLine, ...] = (
    Session(
        day=GIVEN_ON,
        doing=Doing.AT_THE_HOOK,
        minutes=95.5,
        started=NOW,
        first_row=1,
        last_row=12,
    ),
    YarnUsed(day=GIVEN_ON, colour="oat", rows=12, balls=1, ball_g=100),
    YarnTaken(day=GIVEN_ON, colour="oat", grams=42.5, lot="771", from_shelf=True),
    EndsWoven(day=GIVEN_ON, ends=6),
    Payment(day=GIVEN_ON, amount=Decimal("142.00"), currency="GBP"),
    Remark(day=GIVEN_ON, text="Row 9 was pulled back."),
    RowsReached(day=GIVEN_ON, rows=14),
)
"""A line of each kind that is written down by hand; the last is withdrawn."""


def page_file(version: str) -> Path:
    """Return the file that has the page of the quote that a version's book keeps."""
    return BOOKS / f"{version}.page.html"


def keys_file(version: str) -> Path:
    """Return the file that lists the keys of what a version keeps."""
    return BOOKS / f"{version}.keys"


def kept_keys() -> Iterator[str]:
    """Yield the place of every key of the records that a book keeps."""
    log = ((f"log.{kind}", shape) for kind, shape in LOG_SHAPES.items())
    papers = ((f"paper.{kind}", shape) for kind, shape in PAPER_SHAPES.items())
    alone = (("workshop", WORKSHOP), ("order", ORDER), ("offer", OFFER))
    for name, shape in (*alone, *log, *papers):
        yield from sorted(_keys_of(shape, name))


def _keys_of(kind: Kind[Any], place: str) -> Iterator[str]:
    if isinstance(kind, NamedBy):
        yield from _keys_of(kind.shape, f"{place}.*")
    elif isinstance(kind, Chosen):
        for word, shape in kind.shapes.items():
            yield from _keys_of(shape, f"{place}.{word}")
    elif isinstance(kind, Shape):
        for key in kind.all_keys():
            inner = ".".join(part for part in (place, key.table, key.name) if part)
            yield inner
            yield from _keys_of(key.kind, inner)
    elif isinstance(each := getattr(kind, "each", None), Kind):
        yield from _keys_of(each, f"{place}.*")


def fill(book: Book) -> None:
    """Keep something in every table."""
    save_workshop(book, sample_workshop(), now=NOW)
    save_workshop(book, sample_workshop(hours_per_week=9), now=later(days=1))
    bring_back(book, 1, now=later(days=2))
    (lot,) = lots_on_shelf(book)
    weigh_lot(book, lot.id, 42.5)
    for stage in Stage:
        create_order(book, whole(), now=NOW, writer=DESK, stage=stage)
    save_order(book, 2, half("Cot blanket"), revision=1, writer=DESK, now=later(days=4))
    save_order(book, 2, half("Pram blanket"), revision=1, writer=TABLET, now=later(days=4))
    call_off(book, 7, now=later(days=5))
    keep_answers(book, FirstAnswers(asks="yarn", typed={"workshop.name": ("Hollin Edge",)}))
    give_quotes(book)
    for line in LOG_LINES:
        add_line(book, WORKED_ON, line, now=later(days=8))
    reached = log_of(book, WORKED_ON)[-1]
    add_line(book, WORKED_ON, Withdrawn(), now=later(days=9), corrects=reached.id)
    make_papers(book)
    keep_the_rest(book)


def give_quotes(book: Book) -> None:
    """Give two versions of a quote through the pages, and agree the order by the second."""
    app = create_app(KeptShop(book=book, now=lambda: later(days=6), today=lambda: GIVEN_ON))
    with app.test_request_context():
        for title in ("Cot blanket", "Cot blanket with a border"):
            shop = shop_now()
            freeze = freezing(quote_of_today(sample_order(title=title), shop), shop)
            give_quote(book, WORKED_ON, freeze, revision=1, day=GIVEN_ON, now=later(days=6))
    accept_quote(book, GivenNumber(2026, 1, 2), day=GIVEN_ON, now=later(days=7))


def make_papers(book: Book) -> None:
    """Make a paper of each kind, with all that it can say, and cancel the receipt."""
    agreed, entries = agreed_quote(book, WORKED_ON), log_of(book, WORKED_ON)
    assert agreed is not None, "the order was agreed"
    offer, design = agreed.frozen.offer, agreed.frozen.order.design
    (payment,) = payments_in(entries)
    sources = {colour.name: design.source_of(colour.name) for colour in offer.colours}
    measured = BatchAsked(finished=GIVEN_ON, width_cm=81, height_cm=99.5, weight_g=612)
    for paper in (
        receipt_of(offer, entries, payment, day=GIVEN_ON),
        bill_of(offer, entries, BillAsked(pay_by=GIVEN_ON), day=GIVEN_ON),
        batch_of(offer, entries, sources, measured, makers_locale="en_GB", day=GIVEN_ON),
    ):
        make_paper(book, WORKED_ON, paper, seen=entries[-1].id, now=later(days=9))
    cancel_paper(book, PaperKind.RECEIPT, GivenNumber(2026, 1), day=GIVEN_ON, now=later(days=9))


def keep_the_rest(book: Book) -> None:
    """Keep a clock that runs, a passphrase and a browser that was let in, as plain rows."""
    rows: dict[Table, dict[str, object]] = {
        CLOCKS: {"order_id": WORKED_ON, "started_at": later(days=10)},
        PASSPHRASE: {"number": 1, "digest": "none", "set_at": NOW, "failures": 2, "failed_at": NOW},
        SIGN_INS: {"token_digest": "none", "begun_at": NOW, "seen_at": later(days=1)},
    }
    with book.writing() as connection:
        for table, row in rows.items():
            connection.execute(insert(table).values(**row))


def main(argv: Sequence[str] | None = None) -> None:
    """Write the book and the list of its keys, unless more is asked than that, or only about it."""
    argparse.ArgumentParser(
        prog="python -m tests.store.filled_book", description=__doc__
    ).parse_args(argv)
    BOOKS.mkdir(exist_ok=True)
    path = BOOKS / f"{NEWEST}.db"
    path.unlink(missing_ok=True)
    with open_book(str(path), now=NOW) as book:
        fill(book)
        page = kept_quote(book, GivenNumber(2026, 1)).frozen.page
    page_file(NEWEST).write_bytes(page.encode())
    keys_file(NEWEST).write_text("".join(f"{key}\n" for key in kept_keys()), "utf-8")


if __name__ == "__main__":
    main()
