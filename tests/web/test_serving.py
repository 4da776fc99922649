"""What the pages are started with."""

from __future__ import annotations

import logging
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


class Quiet:
    """A server that serves nothing and keeps what it was given."""

    effective_port = 0
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
    main(["serve", "--workshop", str(demo_workshop()), "--port", "0"])
    maker = Maker(started.app.test_client())
    rows = {row[0]: row[1:] for row in maker.open("/workshop").table("Rate")}
    assert rows["USD"][2:] == ["24 November 2026", "reference rate"]
    assert rows["EUR"][-1] == "typed"


def test_without_kept_rates_the_pages_start_all_the_same(started: Quiet) -> None:
    main(["serve", "--workshop", str(demo_workshop()), "--port", "0"])
    text = Maker(started.app.test_client()).open("/workshop").root.text
    assert "No reference rates are kept." in text


def test_requests_that_wait_their_turn_are_not_warned_of(
    started: Quiet, caplog: pytest.LogCaptureFixture
) -> None:
    logging.getLogger("waitress.queue").setLevel(logging.NOTSET)
    main(["serve", "--workshop", str(demo_workshop()), "--port", "0"])
    logging.getLogger("waitress.queue").warning("Task queue depth is 1")
    assert caplog.records == []
    assert started.app
