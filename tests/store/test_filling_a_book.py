"""The command that makes the book of a new version: it is told what it is for, and asked once."""

from __future__ import annotations

import pytest

from quoting.store.schema_version import NEWEST
from tests.store.filled_book import BOOKS, keys_file, main, page_file


@pytest.mark.parametrize(
    ("argument", "status", "said"),
    [("--help", 0, "Makes the filled book"), ("0004", 2, "0004"), ("--all", 2, "--all")],
)
def test_whoever_asks_for_more_is_answered_and_no_book_is_made(
    argument: str, status: int, said: str, capsys: pytest.CaptureFixture[str]
) -> None:
    files = (BOOKS / f"{NEWEST}.db", page_file(NEWEST), keys_file(NEWEST))
    before = [(file.stat().st_mtime_ns, file.read_bytes()) for file in files]
    with pytest.raises(SystemExit) as ended:
        main([argument])
    assert ended.value.code == status
    assert said in "".join(capsys.readouterr())
    assert [(file.stat().st_mtime_ns, file.read_bytes()) for file in files] == before
