"""What the pages are started with."""

from __future__ import annotations

import logging
import sys
import webbrowser
from collections.abc import Callable
from datetime import date
from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest
from flask import Flask

from quoting.cli import main
from quoting.core.workshop.euro_rates import EuroRates
from quoting.places import demo_workshop
from quoting.rates import keep_rates
from tests.web.conftest import Maker

pytestmark = pytest.mark.slow

RATES = EuroRates(
    day=date(2026, 11, 24), rates={"GBP": Decimal("0.86753"), "USD": Decimal("1.0556")}
)

SERVE = ("serve", "--workshop", str(demo_workshop()), "--port", "0")


class Quiet:
    """A server that serves nothing and keeps what it was given."""

    effective_port = 8123
    channel_class: type[object] = object
    app: Flask

    def __call__(self, app: Flask, **_: Any) -> Quiet:
        """Take the pages."""
        self.app = app
        return self

    def run(self) -> None:
        """Return at once."""

    def close(self) -> None:
        """Have nothing to close."""


@pytest.fixture
def started(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> Quiet:
    """Return a server that takes the place of the real one; its user keeps nothing yet."""
    server = Quiet()
    monkeypatch.setattr("waitress.create_server", server)
    monkeypatch.setattr("quoting.cli.serve.kept_rates_path", lambda: tmp_path / "rates.json")
    monkeypatch.chdir(tmp_path)
    return server


def test_the_pages_start_with_the_rates_kept_before(started: Quiet, tmp_path: Path) -> None:
    keep_rates(RATES, tmp_path / "rates.json")
    main([*SERVE, "--no-browser"])
    maker = Maker(started.app.test_client())
    rows = {row[0]: row[1:] for row in maker.open("/workshop").table("Rate")}
    assert rows["USD"][2:] == ["24 November 2026", "reference rate"]
    assert rows["EUR"][-1] == "typed"


def test_without_kept_rates_the_pages_start_all_the_same(started: Quiet) -> None:
    main([*SERVE, "--no-browser"])
    text = Maker(started.app.test_client()).open("/workshop").root.text
    assert "No reference rates are kept." in text


def test_requests_that_wait_their_turn_are_not_warned_of(
    started: Quiet, caplog: pytest.LogCaptureFixture
) -> None:
    logging.getLogger("waitress.queue").setLevel(logging.NOTSET)
    main([*SERVE, "--no-browser"])
    logging.getLogger("waitress.queue").warning("Task queue depth is 1")
    assert caplog.records == []
    assert started.app


@pytest.fixture
def shown(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """Return what the browser, which is none, was asked to show."""
    addresses: list[str] = []
    monkeypatch.setattr("quoting.cli.browser.Thread", AtOnce)
    monkeypatch.setattr("webbrowser.open", addresses.append)
    monkeypatch.setenv("DISPLAY", ":0")
    return addresses


class AtOnce:
    """A thread that has done its work when it is started."""

    def __init__(self, target: Callable[..., None], args: tuple[str], **_: object) -> None:
        self.start = lambda: target(*args)


def test_the_pages_are_opened_in_the_browser_and_their_address_is_told(
    started: Quiet, shown: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(SERVE) == 0
    assert shown == [f"http://127.0.0.1:{started.effective_port}/"]
    assert f"Open {shown[0]} in a browser" in capsys.readouterr().err


def test_who_wants_no_browser_is_told_the_address_alone(
    started: Quiet, shown: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    assert main([*SERVE, "--no-browser"]) == 0
    assert shown == []
    assert f"http://127.0.0.1:{started.effective_port}/" in capsys.readouterr().err


@pytest.mark.parametrize("failure", [webbrowser.Error("none"), FileNotFoundError("none")])
def test_a_browser_that_cannot_be_opened_is_no_mistake(
    started: Quiet, shown: list[str], monkeypatch: pytest.MonkeyPatch, failure: Exception
) -> None:
    def fail(address: str) -> None:
        shown.append(address)
        raise failure

    monkeypatch.setattr("webbrowser.open", fail)
    assert main(SERVE) == 0
    assert (len(shown), bool(started.app)) == (1, True)


@pytest.mark.skipif(sys.platform in {"darwin", "win32"}, reason="has windows whatever is set")
def test_no_browser_takes_the_terminal_from_the_program(
    started: Quiet, shown: list[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    for name in ("DISPLAY", "WAYLAND_DISPLAY", "BROWSER"):
        monkeypatch.delenv(name, raising=False)
    assert main(SERVE) == 0
    assert (shown, bool(started.app)) == ([], True)
