"""A backup is whole though somebody is saving, and is put back whole or not at all."""

from __future__ import annotations

import stat
import threading
from datetime import date, timedelta
from pathlib import Path

import pytest

from quoting.core.ground.codes import MistakeCode
from quoting.store.backups import back_up, copies_folder, copy_of_the_day, daily_copies
from quoting.store.book import Book, open_book
from quoting.store.orders import create_order, kept_order, save_order
from quoting.store.restoring import restore
from tests.store.contents import half, whole
from tests.store.moments import NOW, later
from tests.store.next_version import bring_program_ahead
from tests.store.postgres import Server
from tests.store.refusals import refused
from tests.store.saver import WRITER, content_of
from tests.store.saver_to_kill import saver

TODAY = NOW.date()


def begin(path: Path, *titles: str) -> None:
    """Make a book with orders of these titles."""
    with open_book(str(path), now=NOW) as book:
        for title in titles:
            create_order(book, whole(title=title), now=NOW)


def titles_in(path: Path) -> list[str]:
    """Return the titles of the orders in a book, in the order that they were made."""
    with open_book(str(path), now=NOW) as book, book.reading() as connection:
        rows = connection.exec_driver_sql("SELECT title FROM orders ORDER BY id")
        return [row.title for row in rows]


@pytest.fixture
def backup(tmp_path: Path, path: Path) -> Path:
    """Make a backup of the book with one order, which has two by now."""
    copy = tmp_path / "stick" / "moor.backup"
    copy.parent.mkdir()
    with open_book(str(path), now=NOW) as book:
        create_order(book, whole(title="Cot"), now=NOW)
        back_up(book, copy)
        create_order(book, whole(title="Pram"), now=NOW)
    return copy


def test_a_backup_is_one_file_of_the_users_alone_with_all_that_was_saved(
    path: Path, backup: Path
) -> None:
    assert [file.name for file in backup.parent.iterdir()] == [backup.name]
    assert stat.S_IMODE(backup.stat().st_mode) == 0o600
    assert titles_in(backup) == ["Cot"]
    assert titles_in(path) == ["Cot", "Pram"]


def test_a_backup_made_while_somebody_saves_has_every_save_whole(
    path: Path, tmp_path: Path
) -> None:
    done = threading.Event()

    def save(book: Book) -> None:
        number = 1
        while not done.is_set():
            number += 1
            content = content_of(number)
            save_order(book, 1, content, revision=number - 1, writer=WRITER, now=NOW)

    with open_book(str(path), now=NOW) as book:
        create_order(book, content_of(1), now=NOW, writer=WRITER)
        saving = threading.Thread(target=save, args=(book,))
        saving.start()
        try:
            for number in range(10):
                back_up(book, tmp_path / f"{number}.backup")
        finally:
            done.set()
            saving.join()
    revisions = []
    for number in range(10):
        with open_book(str(tmp_path / f"{number}.backup"), now=NOW) as copy:
            order = kept_order(copy, 1)
            assert order.content == content_of(order.revision)
            revisions.append(order.revision)
    assert revisions == sorted(revisions)
    assert revisions[-1] > revisions[0]


def test_a_backup_takes_the_place_of_an_earlier_one(path: Path, backup: Path) -> None:
    with open_book(str(path), now=NOW) as book:
        back_up(book, backup)
    assert titles_in(backup) == ["Cot", "Pram"]


def test_a_backup_that_cannot_be_written_leaves_the_earlier_one(path: Path, backup: Path) -> None:
    with open_book(str(path), now=NOW) as book:
        assert refused(lambda: back_up(book, path)) == MistakeCode.BACKUP_IS_BOOK
        with pytest.raises(IsADirectoryError):
            back_up(book, backup.parent)
        with pytest.raises(FileNotFoundError):
            back_up(book, path.with_name("nowhere") / "x.backup")
    assert titles_in(backup) == ["Cot"]
    assert titles_in(path) == ["Cot", "Pram"]


def test_a_book_on_a_server_is_copied_by_the_servers_own_tools(
    server: Server, tmp_path: Path, backup: Path
) -> None:
    address = server.new_database()
    with open_book(address, now=NOW) as book:
        assert refused(lambda: back_up(book, tmp_path / "x")) == MistakeCode.BOOK_ON_SERVER
        assert copy_of_the_day(book, TODAY) is None
    assert refused(lambda: restore(address, backup, now=NOW)) == MistakeCode.BOOK_ON_SERVER


def test_one_copy_is_made_a_day_and_those_of_fourteen_days_are_kept(path: Path) -> None:
    begin(path, "Cot")
    with open_book(str(path), now=NOW) as book:
        mine = copies_folder(path) / "before the fair.db"
        for day in range(20):
            today = TODAY + timedelta(days=day)
            copy = copy_of_the_day(book, today)
            assert copy == copies_folder(path) / f"{today}.db"
            mine.write_text("kept by hand", "utf-8")
            create_order(book, half(), now=later(days=day))
            assert copy_of_the_day(book, today) == copy
    copies = daily_copies(path)
    assert [copy.stem for copy in copies] == [
        str(TODAY + timedelta(days=day)) for day in range(6, 20)
    ]
    assert mine.is_file()
    assert len(titles_in(copies[0])) == 7


def test_a_clock_that_was_wrong_once_takes_no_copies(path: Path) -> None:
    begin(path, "Cot")
    with open_book(str(path), now=NOW) as book:
        for today in (TODAY, date(2099, 1, 1), TODAY + timedelta(days=1)):
            copy_of_the_day(book, today)
    assert len(daily_copies(path)) == 3


def test_a_book_is_restored_whole_and_the_old_one_is_kept(path: Path, backup: Path) -> None:
    kept = restore(str(path), backup, now=NOW)
    assert kept == path.with_name("book before restore, 2026-11-25 09.30.15.db")
    assert titles_in(path) == ["Cot"]
    assert titles_in(kept) == ["Cot", "Pram"]
    assert titles_in(backup) == ["Cot"]
    assert stat.S_IMODE(path.stat().st_mode) == 0o600


def test_a_book_that_is_gone_is_restored(path: Path, backup: Path, tmp_path: Path) -> None:
    path.unlink()
    assert restore(str(path), backup, now=NOW) is None
    assert titles_in(path) == ["Cot"]
    elsewhere = tmp_path / "new" / "computer.db"
    restore(str(elsewhere), backup, now=NOW)
    assert titles_in(elsewhere) == ["Cot"]


def test_a_damaged_book_is_replaced_and_kept_as_it_is(path: Path, backup: Path) -> None:
    damaged = b"\xff" * 20_000
    path.write_bytes(damaged)
    kept = restore(str(path), backup, now=NOW)
    assert kept == path.with_name("book damaged, 2026-11-25 09.30.15.db")
    assert kept.read_bytes() == damaged
    assert titles_in(path) == ["Cot"]


def test_a_book_damaged_further_in_is_replaced_and_kept(path: Path, backup: Path) -> None:
    with path.open("r+b") as file:
        file.seek(20_000)
        file.write(b"\xff" * 9_000)
    damaged = path.read_bytes()
    kept = restore(str(path), backup, now=NOW)
    assert kept is not None
    assert kept.read_bytes()[20_000:29_000] == damaged[20_000:29_000]
    assert titles_in(path) == ["Cot"]


def test_a_book_that_is_open_is_not_restored(path: Path, backup: Path) -> None:
    with open_book(str(path), now=NOW) as book:
        restoring = lambda: restore(str(path), backup, now=NOW)  # noqa: E731
        assert refused(restoring) == MistakeCode.BOOK_IN_USE
        create_order(book, whole(title="Rug"), now=NOW)
    assert titles_in(path) == ["Cot", "Pram", "Rug"]


def test_a_book_that_another_program_has_open_is_not_restored(path: Path, backup: Path) -> None:
    path.unlink()
    with open_book(str(path), now=NOW) as book:
        create_order(book, content_of(1), now=NOW, writer=WRITER)
    with saver(str(path)) as program:
        program.start()
        program.hear(1)
        try:
            code = refused(lambda: restore(str(path), backup, now=NOW))
        finally:
            said = program.kill()
    assert code == MistakeCode.BOOK_IN_USE
    with open_book(str(path), now=NOW) as book:
        assert kept_order(book, 1).revision >= said["order"]


@pytest.mark.parametrize("part", [0, 0.1, 0.5, 0.9, 0.999])
def test_a_backup_that_was_cut_short_is_refused_and_the_book_stays(
    path: Path, backup: Path, part: float
) -> None:
    with backup.open("r+b") as file:
        file.truncate(int(backup.stat().st_size * part))
    code = refused(lambda: restore(str(path), backup, now=NOW))
    assert code in {MistakeCode.BOOK_DAMAGED, MistakeCode.NOT_A_BOOK}
    assert titles_in(path) == ["Cot", "Pram"]
    assert sorted(file.name for file in path.parent.iterdir()) == ["book.db", "stick"]


def test_what_is_no_backup_is_refused(path: Path, tmp_path: Path) -> None:
    begin(path, "Cot", "Pram")
    note = tmp_path / "note.txt"
    note.write_text("moor aran\n" * 500, "utf-8")
    for file, code in {
        note: MistakeCode.NOT_A_BOOK,
        tmp_path: MistakeCode.FILE_IS_FOLDER,
        tmp_path / "nowhere": MistakeCode.FILE_MISSING,
        path: MistakeCode.BACKUP_IS_BOOK,
    }.items():
        assert refused(lambda file=file: restore(str(path), file, now=NOW)) == code
    assert titles_in(path) == ["Cot", "Pram"]


def test_a_backup_of_a_newer_program_is_refused(
    path: Path, backup: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    with monkeypatch.context() as ahead:
        bring_program_ahead(ahead, tmp_path)
        open_book(str(backup), now=NOW).close()
    assert refused(lambda: restore(str(path), backup, now=NOW)) == MistakeCode.BOOK_NEWER
    assert titles_in(path) == ["Cot", "Pram"]


def test_a_backup_of_an_older_program_is_restored_and_brought_up_to_date(
    path: Path, backup: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    bring_program_ahead(monkeypatch, tmp_path)
    restore(str(path), backup, now=NOW)
    assert titles_in(path) == ["Cot"]


def test_saves_not_yet_in_the_file_itself_are_kept_with_the_old_book(
    path: Path, backup: Path
) -> None:
    """A program that was killed leaves its last saves in the log beside the file."""
    path.unlink()
    with open_book(str(path), now=NOW) as book:
        create_order(book, content_of(1), now=NOW, writer=WRITER)
    with saver(str(path)) as program:
        program.start()
        program.hear(1)
        said = program.kill()
    assert path.with_name("book.db-wal").stat().st_size > 0
    kept = restore(str(path), backup, now=NOW)
    assert kept is not None
    with open_book(str(kept), now=NOW) as old:
        assert kept_order(old, 1).revision >= said["order"]
    assert titles_in(path) == ["Cot"]
