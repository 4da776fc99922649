"""`quoting passphrase`: set, set anew, taken away, and never shown or written down."""

from __future__ import annotations

import io
from pathlib import Path

import pytest

from quoting.cli import main
from quoting.cli.books import opened_book, this_moment
from quoting.files.security_log import security_log_file
from quoting.places import demo_workshop
from quoting.schema import load_workshop
from quoting.store.door import LetIn, has_passphrase, try_passphrase
from quoting.store.workshops import save_workshop
from tests.cli.running import refusals, run

RIGHT = "three otters under a gate"


@pytest.fixture
def book(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Return a book with the demo's workshop in it."""
    path = tmp_path / "book.db"
    monkeypatch.setenv("QUOTING_BOOK", str(path))
    with opened_book(str(path)) as kept:
        save_workshop(kept, load_workshop(demo_workshop()), now=this_moment())
    return path


class Terminal(io.StringIO):
    """What somebody sits at."""

    def isatty(self) -> bool:
        """Say so."""
        return True


@pytest.fixture
def typed(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """Return what will be typed, a line for each question."""
    lines: list[str] = []

    def ask(prompt: str) -> str:
        assert ": " in prompt
        if not lines:
            raise EOFError
        return lines.pop(0)

    monkeypatch.setattr("sys.stdin", Terminal())
    monkeypatch.setattr("quoting.cli.passphrase.getpass", ask)
    return lines


def lets_in(book: Path, passphrase: str) -> bool:
    with opened_book(str(book)) as kept:
        return isinstance(try_passphrase(kept, passphrase, now=this_moment()), LetIn)


def test_it_is_asked_twice_and_set(
    book: Path, typed: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    typed += [RIGHT, RIGHT]
    assert main(["passphrase"]) == 0
    said = capsys.readouterr()
    assert said.out == "The passphrase is set. Whoever was signed in has to sign in again.\n"
    assert RIGHT not in said.err
    assert lets_in(book, RIGHT)


@pytest.mark.parametrize(
    ("lines", "reason"),
    [
        ([RIGHT, f"{RIGHT}s"], "not alike"),
        ([], "No passphrase was typed"),
        ([RIGHT], "No passphrase was typed"),
        (["otters", "otters"], "15 characters or more"),
        (["Ottermoor Blankets"] * 2, "anybody would try first"),
    ],
)
def test_what_does_not_serve_is_refused_and_all_is_as_it_was(
    lines: list[str],
    reason: str,
    book: Path,
    typed: list[str],
    capsys: pytest.CaptureFixture[str],
) -> None:
    typed += lines
    status, said = refusals(capsys, "passphrase")
    assert (status, reason in said) == (2, True)
    assert not [line for line in lines if line in said]
    with opened_book(str(book)) as kept:
        assert not has_passphrase(kept)


def test_from_a_pipe_one_line_is_read(book: Path) -> None:
    done = run("passphrase", "--book", str(book), input=f"{RIGHT}\nand more\n")
    assert (done.returncode, done.stderr) == (0, "")
    assert lets_in(book, RIGHT)
    done = run("passphrase", "--book", str(book), input="")
    assert (done.returncode, done.stderr) == (2, "No passphrase came; all is as it was.\n")


def test_one_that_is_taken_away_is_asked_no_more(
    book: Path, typed: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    typed += [RIGHT, RIGHT]
    main(["passphrase"])
    assert main(["passphrase", "--remove"]) == 0
    assert "the pages are for this computer alone" in capsys.readouterr().out
    with opened_book(str(book)) as kept:
        assert not has_passphrase(kept)


def test_it_is_written_down_that_it_was_set_and_not_what_it_is(
    book: Path, typed: list[str]
) -> None:
    typed += [RIGHT, RIGHT]
    main(["passphrase"])
    main(["passphrase", "--remove"])
    log = security_log_file(book)
    lines = log.read_text("utf-8").splitlines()
    assert [line.split(" ", 1)[1] for line in lines] == [
        "passphrase set, every sign-in ended",
        "passphrase taken away, every sign-in ended",
    ]
    assert RIGHT.encode() not in book.read_bytes()


def test_a_book_that_is_not_there_is_not_begun(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    none = tmp_path / "none.db"
    status, said = refusals(capsys, "passphrase", "--book", str(none))
    assert (status, said) == (2, f"{none}: There is no book here yet; `quoting serve` makes one.\n")
