"""`quoting serve --host`: to others only with a passphrase, and with a word of what it means."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from flask import Flask

from quoting.cli import main
from quoting.cli.books import opened_book, this_moment
from quoting.files.security_log import security_log_file
from quoting.store.door import set_passphrase
from quoting.web.address import address_of
from tests.cli.running import refusals

SERVE = ("serve", "--no-browser", "--port", "0")


class Quiet:
    """A server that serves nothing and keeps what it was given."""

    effective_port = 8123
    channel_class: type[object] = object

    def __init__(self) -> None:
        self.asked: dict[str, Any] = {}
        self.meanwhile: Callable[[Flask], object] = id
        self.app = Flask("none")

    def __call__(self, app: Flask, **asked: Any) -> Quiet:
        """Take the pages."""
        self.app, self.asked = app, asked
        return self

    def run(self) -> None:
        """Do what is to be done meanwhile, and return."""
        self.meanwhile(self.app)

    def close(self) -> None:
        """Have nothing to close."""


@pytest.fixture
def server(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> Quiet:
    """Return a server that takes the place of the real one, and name a book."""
    quiet = Quiet()
    monkeypatch.setattr("waitress.create_server", quiet)
    monkeypatch.setenv("QUOTING_BOOK", str(tmp_path / "book.db"))
    return quiet


@pytest.fixture
def shut(tmp_path: Path) -> Path:
    """Return the book, with a passphrase."""
    path = tmp_path / "book.db"
    with opened_book(str(path)) as book:
        set_passphrase(book, "three otters under a gate", maker="", now=this_moment())
    return path


def test_to_others_a_book_without_a_passphrase_is_not_shown(
    server: Quiet, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    status, said = refusals(capsys, *SERVE, "--host", "192.0.2.7")
    assert (status, "Set a passphrase first, with `quoting passphrase`." in said) == (2, True)
    named = str(tmp_path / "her book.db")
    status, said = refusals(capsys, *SERVE, "--host", "0.0.0.0", "--book", named)
    assert (status, f"`quoting passphrase --book '{named}'`" in said) == (2, True)
    status, said = refusals(capsys, *SERVE, "--host", "a.example", "--tls-in-front")
    assert (status, server.asked) == (2, {})


@pytest.mark.parametrize("what", [("--demo",), ("--workshop", "config/demo/workshop.toml")])
def test_what_has_no_passphrase_is_never_shown_to_others(
    what: tuple[str, ...], server: Quiet, capsys: pytest.CaptureFixture[str]
) -> None:
    status, said = refusals(capsys, *SERVE, "--host", "192.0.2.7", *what)
    assert (status, "only a book has a passphrase" in said) == (2, True)
    assert server.asked == {}


@pytest.mark.parametrize(
    ("host", "url"),
    [
        ("192.0.2.7", "http://192.0.2.7:8123/"),
        ("[2001:db8::7]", "http://[2001:db8::7]:8123/"),
        ("0.0.0.0", "http://127.0.0.1:8123/"),
        ("::", "http://127.0.0.1:8123/"),
    ],
)
def test_with_one_it_is_and_plain_http_is_warned_of(
    host: str, url: str, server: Quiet, shut: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main([*SERVE, "--host", host]) == 0
    said = capsys.readouterr().err
    assert "can be overheard and changed by anybody on the same network" in said
    assert f"Open {url} in a browser" in said
    assert server.asked["host"] == host.strip("[]")
    assert server.asked["url_scheme"] == "http"
    assert address_of(server.app).is_beyond
    assert shut.exists()


def test_what_happens_at_the_door_is_written_down_beside_the_book(
    server: Quiet, shut: Path
) -> None:
    def ask_under_another_name(app: Flask) -> None:
        reply = app.test_client().get("/orders", headers={"Host": "evil.example"})
        assert reply.status_code == 400

    server.meanwhile = ask_under_another_name
    assert main([*SERVE, "--host", "192.0.2.7"]) == 0
    text = security_log_file(shut).read_text("utf-8")
    assert text.endswith("Z turned away: asked under another name, from 127.0.0.1\n")


def test_behind_tls_nobody_but_the_proxy_is_listened_to(
    server: Quiet, shut: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main([*SERVE, "--host", "Blankets.example", "--tls-in-front"]) == 0
    said = capsys.readouterr().err
    assert "overheard" not in said
    assert "Open https://blankets.example/ in a browser" in said
    assert (server.asked["host"], server.asked["url_scheme"]) == ("127.0.0.1", "https")
    assert server.app.config["SESSION_COOKIE_SECURE"]
    assert shut.exists()


@pytest.mark.parametrize("host", ["127.0.0.2", "localhost"])
def test_an_address_of_this_computer_alone_wants_none(
    host: str, server: Quiet, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main([*SERVE, "--host", host]) == 0
    said = capsys.readouterr().err
    assert "overheard" not in said
    assert ("no other device can ask" in said) == (host == "127.0.0.2")
    assert server.asked["host"].startswith(("127.", "::1"))


@pytest.mark.parametrize(
    "host", ["http://192.0.2.7", "192.0.2.7:80", "a b", "", "-x", "nowhere.invalid", "é.example"]
)
def test_what_is_no_address_is_refused(
    host: str, server: Quiet, capsys: pytest.CaptureFixture[str]
) -> None:
    status, said = refusals(capsys, *SERVE, f"--host={host}")
    assert (status, said.startswith("--host: ")) == (2, True)
    assert server.asked == {}


def test_tls_in_front_wants_the_name_that_the_proxy_is_asked_by(
    server: Quiet, capsys: pytest.CaptureFixture[str]
) -> None:
    status, said = refusals(capsys, *SERVE, "--tls-in-front")
    assert (status, "say with --host" in said) == (2, True)
    assert server.asked == {}
