"""What happens at the door is written down beside the book, and nothing of anybody's with it."""

from __future__ import annotations

import re
import stat
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

from quoting.files import security_log
from quoting.files.security_log import (
    SecurityEvent,
    security_log_file,
    security_logged,
    tell_event,
)
from tests.web.book_pages import BookMaker, Clock
from tests.web.door_pages import RIGHT, WRONG, maker_at_the_door, sign_in, sign_out

LINE = re.compile(r"\d{4}-\d\d-\d\dT\d\d:\d\d:\d\dZ ([^,]+(?:, every sign-in ended)?)(, from \S+)?")


@pytest.fixture
def maker(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[BookMaker]:
    """Return a maker in front of the door of her book, with the log beside it."""
    monkeypatch.setattr("quoting.store.passphrases.SCRYPT", "scrypt:256:8:1")
    with (
        maker_at_the_door(tmp_path / "Rosalind's book.db") as maker,
        security_logged(maker.book.path),
    ):
        yield maker


def lines(maker: BookMaker) -> list[str]:
    """Return the lines, without their moments."""
    assert maker.book.path is not None
    text = security_log_file(maker.book.path).read_text("utf-8")
    return [line.split(" ", 1)[1] for line in text.splitlines()]


def test_who_comes_and_goes_is_written_down_with_the_address_of_the_connection(
    maker: BookMaker,
) -> None:
    maker.client.environ_base["REMOTE_ADDR"] = "192.0.2.44"
    headers = {"X-Forwarded-For": "203.0.113.9"}
    sign_in(maker, WRONG)
    sign_in(maker)
    sign_out(maker)
    maker.client.get("/orders", headers=headers | {"Host": "evil.example"})
    maker.client.post("/orders/new", headers=headers | {"Origin": "http://evil.example"})
    assert lines(maker) == [
        "wrong passphrase, from 192.0.2.44",
        "signed in, from 192.0.2.44",
        "signed out, from 192.0.2.44",
        "turned away: asked under another name, from 192.0.2.44",
        "turned away: sent by a page of another site, from 192.0.2.44",
    ]


def test_a_thousand_tries_in_one_wait_are_one_line(
    maker: BookMaker, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(Clock, "__call__", lambda clock: clock.moment)
    token = maker.token("/door")
    replies = [
        maker.client.post("/door", data={"csrf_token": token, "passphrase": WRONG}).status_code
        for _ in range(1000)
    ]
    assert (replies[0], set(replies[1:])) == (422, {429})
    assert lines(maker) == [
        "wrong passphrase, from 127.0.0.1",
        "tried again too soon after a wrong passphrase, from 127.0.0.1",
    ]


def test_no_private_word_is_in_it(maker: BookMaker) -> None:
    sign_in(maker, "Corin Dale is my guess", to="/orders?words=Maud+Hollin")
    sign_in(maker)
    maker.begin(order__buyer="Tam Fell", order__title="Fenland", order__notes="12 Reed Lane")
    evil = {"Host": "evil.example"}
    maker.client.post("/orders/1?words=Maud", data={"order.buyer": "Tam Fell"}, headers=evil)
    maker.client.get("/Maud/Hollin", headers={"Origin": "null", "User-Agent": "Maud's phone"})
    sign_out(maker)
    assert maker.book.path is not None
    text = security_log_file(maker.book.path).read_text("utf-8")
    assert all(LINE.fullmatch(line) for line in text.splitlines())
    assert {line.split(", from")[0] for line in lines(maker)} <= {e.value for e in SecurityEvent}
    private = ["Corin", "Maud", "Hollin", "Tam", "Fell", "Fenland", "Reed", "Rosalind", "evil"]
    assert not [word for word in (*private, RIGHT, "/orders", "otters") if word in text]


@pytest.mark.skipif(sys.platform == "win32", reason="has other ways to keep a file private")
def test_it_never_grows_beyond_its_bounds_and_only_its_owner_may_read_any_of_it(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(security_log, "MOST_BYTES", 1000)
    with security_logged(tmp_path / "book.db"):
        for _ in range(300):
            tell_event(SecurityEvent.SIGNED_IN, "192.0.2.44")
    files = sorted(tmp_path.iterdir())
    assert [file.name for file in files] == [
        "book security.log", *(f"book security.log.{n}" for n in (1, 2, 3))
    ]  # fmt: skip
    assert all(file.stat().st_size <= 1000 for file in files)
    assert {stat.S_IMODE(file.stat().st_mode) for file in files} == {0o600}


def test_a_book_on_a_server_has_none_beside_it(tmp_path: Path) -> None:
    with security_logged(None):
        tell_event(SecurityEvent.SIGNED_IN)
    assert not list(tmp_path.iterdir())


def test_it_is_told_only_while_the_book_is_open(tmp_path: Path) -> None:
    with security_logged(tmp_path / "book.db"):
        tell_event(SecurityEvent.SIGNED_OUT)
    tell_event(SecurityEvent.SIGNED_IN)
    text = security_log_file(tmp_path / "book.db").read_text("utf-8")
    assert text.endswith("Z signed out\n")
