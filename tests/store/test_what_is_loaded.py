"""What takes long to load is loaded where it is used."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

from quoting.places import book_file

ROOT = Path(__file__).parents[2]


def loaded_by(code: str, *heavy: str) -> set[str]:
    """Return which of the heavy packages a program has loaded at its end."""
    done = subprocess.run(
        [sys.executable, "-c", f"{code}; import sys; print(*({set(heavy)} & set(sys.modules)))"],
        capture_output=True,
        text=True,
        env=os.environ | {"PYTHONPATH": str(ROOT)},
        check=True,
    )
    return set(done.stdout.split())


def test_what_an_order_is_kept_as_is_known_without_a_database() -> None:
    code = "import quoting.store.order_content, quoting.core.order.stage, quoting.places"
    assert loaded_by(code, "sqlalchemy", "alembic", "platformdirs") == set()


def test_a_book_that_is_new_or_of_today_takes_no_migrations(path: Path) -> None:
    code = (
        "import datetime; from quoting.store.book import open_book;"
        f"open_book({str(path)!r}, now=datetime.datetime.now(datetime.UTC)).close()"
    )
    for _ in ("new", "of today"):
        assert loaded_by(code, "alembic", "psycopg") == set()
    assert path.exists()


def test_the_book_is_among_the_users_own_data(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("platformdirs.user_data_path", lambda name, **_: Path("/data") / name)
    assert book_file() == Path("/data/quoting/book.db")


def test_the_pages_of_a_book_are_served_without_what_only_a_download_or_a_step_needs(
    path: Path,
) -> None:
    code = (
        "from quoting.cli.books import opened_book, this_moment;"
        "from quoting.cli.job import this_day;"
        "from quoting.web import create_app; from quoting.web.kept import KeptShop;"
        f"book = opened_book({str(path)!r});"
        "app = create_app(KeptShop(book=book, now=this_moment, today=this_day));"
        "assert app.test_client().get('/', follow_redirects=True).status_code == 200; book.close()"
    )
    assert loaded_by(code, "alembic", "openpyxl", "psycopg", "requests", "typst") == set()
