"""Rates are kept to the last digit, and kept ones that cannot be read are as good as none."""

from __future__ import annotations

import errno
import json
import os
from datetime import date
from decimal import Decimal
from pathlib import Path

import pytest
import responses
from hypothesis import given
from hypothesis import strategies as st

from quoting.core.workshop.euro_rates import EuroRates
from quoting.rates import MOST_BYTES, keep_rates, kept_rates
from tests.rates.bank_answers import DAY, RATES


def test_reading_kept_rates_asks_nobody(bank: responses.RequestsMock, tmp_path: Path) -> None:
    keep_rates(EuroRates(day=DAY, rates=RATES), tmp_path / "rates.json")
    assert kept_rates(tmp_path / "rates.json") is not None
    assert len(bank.calls) == 0


amounts = st.decimals("0.001", "999999", places=6)


@given(st.dictionaries(st.sampled_from(["USD", "JPY", "GBP", "CHF"]), amounts, min_size=1))
def test_kept_rates_come_back_to_the_last_digit(
    tmp_path_factory: pytest.TempPathFactory, rates: dict[str, Decimal]
) -> None:
    path = tmp_path_factory.mktemp("kept") / "deep" / "rates.json"
    kept = EuroRates(day=DAY, rates=rates)
    keep_rates(kept, path)
    assert kept_rates(path) == kept


def test_newer_rates_take_the_place_of_older_ones_and_leave_no_scraps(tmp_path: Path) -> None:
    path = tmp_path / "rates.json"
    for day in (date(2017, 3, 7), DAY):
        keep_rates(EuroRates(day=day, rates=RATES), path)
    kept = kept_rates(path)
    assert kept is not None
    assert kept.day == DAY
    assert [file.name for file in tmp_path.iterdir()] == ["rates.json"]


@pytest.mark.parametrize(
    "text",
    [
        "",
        "[]",
        "null",
        "{}",
        '{"day": "2017-03-08"}',
        '{"day": "2017-03-08", "rates": []}',
        '{"day": "2017-03-08", "rates": {}}',
        '{"day": "2017-03-08", "rates": {"USD": 0}}',
        '{"day": "2017-03-08", "rates": {"USD": NaN}}',
        '{"day": "2017-03-08", "rates": {"USD": null}}',
        '{"day": "8 March", "rates": {"USD": "1.0556"}}',
        "[" * 100_000,
    ],
    ids=lambda text: text[:50],
)
def test_kept_rates_that_cannot_be_read_are_as_good_as_none(tmp_path: Path, text: str) -> None:
    path = tmp_path / "rates.json"
    path.write_text(text, encoding="utf-8")
    assert kept_rates(path) is None


def test_a_kept_file_longer_than_rates_can_be_is_as_good_as_none(tmp_path: Path) -> None:
    path = tmp_path / "rates.json"
    keep_rates(EuroRates(day=DAY, rates=RATES), path)
    plain = path.read_text("utf-8")
    path.write_text(plain + " " * (MOST_BYTES - len(plain)), "utf-8")
    assert kept_rates(path) is not None
    path.write_text(plain + " " * (MOST_BYTES - len(plain) + 1), "utf-8")
    assert kept_rates(path) is None


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="needs named pipes")
def test_a_pipe_in_place_of_kept_rates_is_not_waited_for(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "rates.json")
    assert kept_rates(tmp_path / "rates.json") is None


def test_rates_that_cannot_be_kept_leave_the_older_ones_and_no_scraps(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "rates.json"
    keep_rates(EuroRates(day=DAY, rates=RATES), path)

    def interrupted(*_: object) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr(Path, "replace", interrupted)
    with pytest.raises(KeyboardInterrupt):
        keep_rates(EuroRates(day=date(2017, 3, 9), rates=RATES), path)
    assert [file.name for file in tmp_path.iterdir()] == ["rates.json"]
    kept = kept_rates(path)
    assert kept is not None
    assert kept.day == DAY


def test_a_full_disk_leaves_the_older_rates_and_no_scraps(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "rates.json"
    keep_rates(EuroRates(day=DAY, rates=RATES), path)

    def full(_: int) -> None:
        raise OSError(errno.ENOSPC, "No space left on device")

    monkeypatch.setattr(os, "fsync", full)
    with pytest.raises(OSError, match="No space left"):
        keep_rates(EuroRates(day=date(2017, 3, 9), rates=RATES), path)
    assert [file.name for file in tmp_path.iterdir()] == ["rates.json"]
    kept = kept_rates(path)
    assert kept is not None
    assert kept.day == DAY


def test_where_nothing_was_kept_there_are_no_rates(tmp_path: Path) -> None:
    assert kept_rates(tmp_path / "rates.json") is None
    assert kept_rates(tmp_path) is None


def test_kept_bytes_that_are_no_text_are_as_good_as_none(tmp_path: Path) -> None:
    path = tmp_path / "rates.json"
    path.write_bytes(b"\xff\xfe\x00")
    assert kept_rates(path) is None


def test_the_kept_file_says_the_day_it_is_of(tmp_path: Path) -> None:
    path = tmp_path / "rates.json"
    keep_rates(EuroRates(day=DAY, rates=RATES), path)
    assert json.loads(path.read_text(encoding="utf-8"))["day"] == "2017-03-08"
