"""Commands on the maker's book: out of it, into it, and how they fail."""

from __future__ import annotations

from pathlib import Path

import pytest
from openpyxl import load_workbook

from quoting.cli import main
from quoting.cli.books import opened_book, this_moment
from quoting.cli.demo_book import demo_book
from quoting.core.making.log_lines import Moved
from quoting.core.order.stage import Stage
from quoting.places import demo_order, demo_workshop
from quoting.schema import load_order, load_workshop
from quoting.store.log import log_of
from quoting.store.order_content import OrderContent
from quoting.store.order_list import OrderQuery, list_orders
from quoting.store.orders import create_order
from quoting.store.quotes import agreed_quote
from quoting.store.workshops import current_workshop, save_workshop
from tests.cli.running import record_of, refusals
from tests.store.given import give


@pytest.fixture
def book(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Return a book with the demo's workshop, its order, and one that is not whole."""
    path = tmp_path / "book.db"
    monkeypatch.setenv("QUOTING_BOOK", str(path))
    workshop = load_workshop(demo_workshop())
    order = load_order(demo_order(), workshop)
    with opened_book(str(path)) as kept:
        save_workshop(kept, workshop, now=this_moment())
        create_order(kept, OrderContent(title=order.title, order=order), now=this_moment())
        create_order(kept, OrderContent(title="Half typed"), now=this_moment())
    return path


def test_an_order_of_the_book_is_quoted_as_its_file_is(
    book: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert record_of(capsys, "--order", "1") == record_of(capsys, "--demo")
    assert record_of(capsys, "--order", "1", "--book", str(book))


def test_an_order_that_cannot_be_quoted_is_told_with_the_book(
    book: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    status, said = refusals(capsys, "quote", "--order", "2")
    assert (status, said.startswith(f"{book}: Order 2 is not whole yet")) == (2, True)
    status, said = refusals(capsys, "quote", "--order", "9")
    assert (status, said) == (2, f"{book}: There is no such order in the book.\n")


@pytest.mark.parametrize(
    "argv", [("--order", "1", "--demo"), ("--order", "1", "o.toml"), ("--demo", "--book", "b")]
)
def test_an_order_of_the_book_goes_with_no_other(
    argv: tuple[str, ...], book: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert refusals(capsys, "quote", *argv)[0] == 2
    assert book.exists()


def test_the_workshop_is_written_as_a_file_without_loss(
    book: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["workshop", "--write", str(tmp_path / "mine.toml")]) == 0
    assert load_workshop(tmp_path / "mine.toml") == load_workshop(demo_workshop())
    capsys.readouterr()
    assert main(["workshop"]) == 0
    assert capsys.readouterr().out == (tmp_path / "mine.toml").read_text("utf-8")
    assert book.exists()


def test_a_backup_is_put_back_and_the_book_before_it_kept(
    book: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    copy = tmp_path / "copy.db"
    assert main(["backup", str(copy)]) == 0
    workshop = load_workshop(demo_workshop())
    with opened_book(str(book)) as kept:
        create_order(kept, OrderContent(title="After the copy"), now=this_moment())
    assert main(["restore", str(copy)]) == 0
    said = capsys.readouterr().out
    assert "What was there before is kept in" in said
    assert refusals(capsys, "quote", "--order", "3")[0] == 2
    with opened_book(str(book)) as kept:
        now = current_workshop(kept)
    assert now is not None
    assert now.workshop == workshop


def test_a_restore_is_refused_while_the_book_is_open(
    book: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    copy = tmp_path / "copy.db"
    main(["backup", str(copy)])
    with opened_book(str(book)):
        status, said = refusals(capsys, "restore", str(copy))
    assert status == 1
    assert "The book is open in another program" in said


def test_a_backup_cut_short_is_refused_by_its_name(
    book: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    copy = tmp_path / "copy.db"
    main(["backup", str(copy)])
    copy.write_bytes(copy.read_bytes()[:-5000])
    before = book.read_bytes()
    status, said = refusals(capsys, "restore", str(copy))
    assert status == 2
    assert said.startswith(f"{copy}: ")
    assert book.read_bytes() == before


@pytest.mark.parametrize("argv", [("backup", "x.db"), ("workshop",), ("quote", "--order", "1")])
def test_a_book_that_is_not_there_is_not_begun_by_asking_it(
    argv: tuple[str, ...], tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    none = tmp_path / "none.db"
    status, said = refusals(capsys, *argv, "--book", str(none))
    assert (status, said) == (2, f"{none}: There is no book here yet; `quoting serve` makes one.\n")
    assert not none.exists()


def test_a_backup_over_the_book_itself_is_refused(
    book: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    status, said = refusals(capsys, "backup", str(book))
    assert status == 2
    assert "This is the book itself" in said


def test_a_backup_where_there_is_no_folder_is_told(
    book: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    status, said = refusals(capsys, "backup", str(tmp_path / "no" / "copy.db"))
    assert (status, "its folder is not there" in said) == (1, True)
    assert book.exists()


def test_a_quote_that_was_given_is_told_as_it_was_then(
    book: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    with opened_book(str(book)) as kept:
        first = give(kept, 1)
        second = give(kept, 1, title="Cot blanket with a border")
    assert record_of(capsys, "--order", "2026-001") == first.frozen.results
    assert record_of(capsys, "--order", "2026-001/2") == second.frozen.results
    costing = tmp_path / "costing.xlsx"
    assert main(["quote", "--order", "2026-001/2", "--workbook", str(costing)]) == 0
    told = capsys.readouterr().out
    assert "Quote 2026-001/2, Ottermoor Blankets" in told
    assert "Cot blanket with a border" in told
    assert load_workbook(costing).properties.title == "Costing of quote 2026-001/2"


def test_a_quote_that_there_is_not_is_told(book: Path, capsys: pytest.CaptureFixture[str]) -> None:
    status, said = refusals(capsys, "quote", "--order", "2026-001")
    assert (status, said) == (2, f"{book}: There is no quote of that number in the book.\n")
    assert (
        "the number neither of an order (12) nor of a quote (2026-014)"
        in refusals(capsys, "quote", "--order", "2026-14")[1]
    )


def test_the_book_of_the_demo_has_quotes_that_were_given_and_accepted() -> None:
    with demo_book() as kept:
        orders = {line.stage: line for line in list_orders(kept, OrderQuery()).lines}
        assert Stage.QUOTED not in orders
        for stage, line in orders.items():
            assert (line.quote is None) == (stage is Stage.ASKED)
            agreed = agreed_quote(kept, line.id)
            assert (agreed is None) == (stage in {Stage.ASKED, Stage.CALLED_OFF})
        handed_over = log_of(kept, orders[Stage.HANDED_OVER].id)
    assert [entry.line.stage for entry in handed_over if isinstance(entry.line, Moved)] == [
        Stage.QUOTED,
        Stage.AGREED,
        Stage.ON_THE_HOOK,
        Stage.FINISHED,
        Stage.HANDED_OVER,
    ]
