"""An older book becomes one of today, whole or not at all; a newer one is left as it is."""

from __future__ import annotations

import shutil
import sqlite3
from collections.abc import Iterator
from contextlib import ExitStack, contextmanager
from datetime import date
from decimal import Decimal
from pathlib import Path

import pytest
from alembic.autogenerate import compare_metadata
from alembic.migration import MigrationContext
from sqlalchemy import Connection, inspect, select, text

from quoting.core.ground.codes import MistakeCode
from quoting.core.order.stage import Stage
from quoting.core.papers.head import PaperKind
from quoting.schema.log_shapes import LOG_SHAPES
from quoting.store import schema_version
from quoting.store.book import Book, open_book
from quoting.store.door import remove_passphrase
from quoting.store.engines import WAIT_S, file_engine, server_engine
from quoting.store.first_answers import kept_answers
from quoting.store.log import log_of
from quoting.store.order_list import OrderQuery, SortedBy, list_orders
from quoting.store.orders import asides_of, create_order, kept_order
from quoting.store.papers import papers_of
from quoting.store.quotes import agreed_quote, quotes_of
from quoting.store.schema_version import NEWEST, VERSION_TABLE, take_steps
from quoting.store.shelf import lots_on_shelf
from quoting.store.tables import CLOCKS, METADATA, PASSPHRASE, SIGN_INS
from quoting.store.workshops import current_workshop, workshop_version, workshop_versions
from quoting.web import create_app
from quoting.web.kept import KeptShop
from tests.store.contents import whole
from tests.store.filled_book import BOOKS, LOG_LINES, WORKED_ON, kept_keys, keys_file
from tests.store.moments import NOW, later
from tests.store.next_version import NEXT, bring_program_ahead
from tests.store.refusals import refused

LONG_AFTER = date(2031, 5, 4)
THE_REST = (CLOCKS, PASSPHRASE, SIGN_INS)


def version_of(book: Book) -> str:
    with book.reading() as connection:
        return str(connection.scalar(text(f"SELECT version_num FROM {VERSION_TABLE}")))


def test_the_migrations_lead_to_the_tables_of_today(address: str) -> None:
    with database_of_steps(address) as connection:
        options = {"version_table": VERSION_TABLE, "compare_type": True}
        context = MigrationContext.configure(connection, opts=options)
        assert compare_metadata(context, METADATA) == []


def test_a_new_book_is_as_one_that_took_every_step(book: Book, another_address: str) -> None:
    with database_of_steps(another_address) as connection:
        of_steps = made_as(connection)
    with book.reading() as connection:
        assert made_as(connection) == of_steps
    assert version_of(book) == NEWEST


@contextmanager
def database_of_steps(address: str) -> Iterator[Connection]:
    """Yield an empty database that has become a book by the steps alone."""
    engine = server_engine(address, WAIT_S) if "://" in address else file_engine(Path(address), 0)
    with ExitStack() as undo:
        undo.callback(engine.dispose)
        connection = undo.enter_context(engine.begin())
        take_steps(connection)
        yield connection


def made_as(connection: Connection) -> object:
    """Return all that a database says of its tables, and the version in it."""
    tables = inspect(connection)
    words = "SELECT name, sql FROM sqlite_master WHERE sql IS NOT NULL ORDER BY name"
    is_file = connection.dialect.name == "sqlite"
    return (
        sorted(tables.get_table_names()),
        {
            name: (
                [(*map(str, column.values()),) for column in tables.get_columns(name)],
                tables.get_pk_constraint(name),
                tables.get_foreign_keys(name),
                tables.get_indexes(name),
            )
            for name in tables.get_table_names()
        },
        [tuple(row) for row in connection.execute(text(words))] if is_file else None,
        connection.scalar(text(f"SELECT version_num FROM {VERSION_TABLE}")),
    )


def test_an_older_book_is_brought_up_to_date_with_all_that_is_in_it(
    address: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    with open_book(address, now=NOW) as older:
        order = create_order(older, whole(), now=NOW)
    bring_program_ahead(monkeypatch, tmp_path)
    with open_book(address, now=NOW) as book:
        assert version_of(book) == NEXT
        assert kept_order(book, order.id) == order
        with book.reading() as connection:
            assert connection.scalar(text("SELECT colour_card FROM orders")) == "none yet"


def test_a_file_is_copied_before_it_is_brought_up_to_date(
    path: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    with open_book(str(path), now=NOW) as older:
        order = create_order(older, whole(), now=NOW)
    with monkeypatch.context() as ahead:
        bring_program_ahead(ahead, tmp_path)
        open_book(str(path), now=later(days=1)).close()
    copy = path.with_name("book before update, 2026-11-26 09.30.15.db")
    with open_book(str(copy), now=NOW) as book:
        assert kept_order(book, order.id) == order


def test_a_newer_book_is_refused_and_left_as_it_is(
    address: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    open_book(address, now=NOW).close()
    with monkeypatch.context() as ahead:
        bring_program_ahead(ahead, tmp_path)
        with open_book(address, now=NOW) as newer:
            create_order(newer, whole(), now=NOW)
    assert refused(lambda: open_book(address, now=NOW)) == MistakeCode.BOOK_NEWER
    monkeypatch.setattr(schema_version, "NEWEST", NEXT)
    with open_book(address, now=NOW) as book:
        assert kept_order(book, 1).content == whole()


def test_a_step_that_fails_halfway_changes_nothing(
    address: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    with open_book(address, now=NOW) as older:
        order = create_order(older, whole(), now=NOW)
    with monkeypatch.context() as ahead:
        bring_program_ahead(ahead, tmp_path, further='raise RuntimeError("power cut")')
        with pytest.raises(RuntimeError, match="power cut"):
            open_book(address, now=NOW)
    with open_book(address, now=NOW) as book:
        assert version_of(book) == NEWEST
        assert kept_order(book, order.id) == order


def test_two_programs_that_open_an_older_book_bring_it_up_to_date_once(
    address: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    with open_book(address, now=NOW) as older:
        create_order(older, whole(), now=NOW)
        bring_program_ahead(monkeypatch, tmp_path)
        with open_book(address, now=NOW) as one, open_book(address, now=NOW) as other:
            assert kept_order(one, 1) == kept_order(other, 1)


@pytest.mark.parametrize("version", ["", "next spring", "12", "00010"])
def test_a_version_that_is_none_of_this_program_is_no_book(path: Path, version: str) -> None:
    open_book(str(path), now=NOW).close()
    with sqlite3.connect(path) as connection:
        connection.execute(f"UPDATE {VERSION_TABLE} SET version_num = ?", (version,))
    connection.close()
    assert refused(lambda: open_book(str(path), now=NOW)) == MistakeCode.NOT_A_BOOK


@pytest.mark.parametrize("kept", sorted(BOOKS.glob("*.db")), ids=lambda kept: kept.stem)
def test_a_book_of_every_version_that_there_was_can_be_read(kept: Path, path: Path) -> None:
    shutil.copy(kept, path)
    with open_book(str(path), now=NOW) as book:
        assert [version.number for version in workshop_versions(book)] == [3, 2, 1]
        assert workshop_versions(book)[0].brought_back == 1
        assert workshop_version(book, 2).workshop.hours_per_week == 9
        now = current_workshop(book)
        assert now is not None
        assert now.workshop.name == "Ottermoor Blankets"
        assert now.workshop.pay.making_per_hour == Decimal("14.00")
        assert [(lot.colour, lot.lot, lot.grams) for lot in lots_on_shelf(book)] == [
            ("oat", "771", 42.5)
        ]
        lines = list_orders(book, OrderQuery(by=SortedBy.STAGE, falling=False)).lines
        assert [line.stage for line in lines] == list(Stage)
        first = kept_order(book, 1).content
        assert first.order is not None
        assert first.order.design.width_cm == 80
        assert (first.title, first.wanted_by) == (first.order.title, date(2027, 3, 20))
        assert first.typed["blanket.height"] == ("1OO cm",)
        assert first.figures is not None
        assert first.figures.price == Decimal("284.00")
        assert asides_of(book, 2)[0].typed == {"order.title": ("Pram blanket",)}
        answers = kept_answers(book)
        assert answers is not None
        assert (answers.asks, answers.typed) == ("yarn", {"workshop.name": ("Hollin Edge",)})


@pytest.mark.parametrize("kept", sorted(BOOKS.glob("*.page.html")), ids=lambda kept: kept.stem)
def test_the_page_of_a_quote_that_was_ever_given_is_the_same_to_the_byte(
    kept: Path, path: Path
) -> None:
    version = kept.name.partition(".")[0]
    shutil.copy(BOOKS / f"{version}.db", path)
    with open_book(str(path), now=NOW) as book:
        remove_passphrase(book)
        app = create_app(KeptShop(book=book, now=lambda: NOW, today=lambda: LONG_AFTER))
        assert app.test_client().get("/quotes/2026-001/1/page").data == kept.read_bytes()
        assert app.test_client().get("/quotes/2026-001").status_code == 200


def test_quotes_and_the_making_of_a_kept_book_can_be_read(path: Path) -> None:
    shutil.copy(BOOKS / "0002.db", path)
    with open_book(str(path), now=NOW) as book:
        second, first = quotes_of(book, WORKED_ON)
        assert [str(quote.number) for quote in (first, second)] == ["2026-001", "2026-001/2"]
        assert first.frozen.offer.title == "Cot blanket"
        assert agreed_quote(book, WORKED_ON) == second
        lines = [entry.line for entry in log_of(book, WORKED_ON)]
        assert {type(line) for line in lines} == {shape.value for shape in LOG_SHAPES.values()}
        assert [line for line in lines if line in LOG_LINES] == list(LOG_LINES)
        with book.reading() as connection:
            rows = {table.name: connection.execute(select(table)).all() for table in THE_REST}
    assert {name: len(found) for name, found in rows.items()} == {
        "clocks": 1,
        "passphrase": 1,
        "sign_ins": 1,
    }


def test_the_papers_of_a_kept_book_can_be_read(path: Path) -> None:
    shutil.copy(BOOKS / "0003.db", path)
    with open_book(str(path), now=NOW) as book:
        papers = papers_of(book, WORKED_ON)
    told = [(paper.kind, str(paper.number), paper.facts.head.cancels) for paper in papers]
    assert told == [
        (PaperKind.RECEIPT, "2026-001", ""),
        (PaperKind.BILL, "2026-001", ""),
        (PaperKind.BATCH, "2026-001", ""),
        (PaperKind.RECEIPT, "2026-002", "2026-001"),
    ]


def test_a_book_of_today_is_kept_for_the_versions_to_come() -> None:
    assert (BOOKS / f"{NEWEST}.db").is_file()


def test_a_key_that_is_new_to_what_is_kept_makes_a_new_version_of_the_book() -> None:
    """Or an older program would open the book and find a record that it cannot read.

    A new version needs a step in `migrations`, which may do nothing, `NEWEST`, and a filled book.
    """
    assert list(kept_keys()) == keys_file(NEWEST).read_text("utf-8").split("\n")[:-1]
