"""The table of a quote: it says what the JSON says, briefly and in plain words."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest

from quoting.cli import columns, main
from quoting.cli.quote_table import quote_table
from quoting.core.order.order import Terms
from quoting.core.quote.quote import quote_order
from quoting.core.workshop.selling import Target
from quoting.core.workshop.yarns import PutUp
from tests.cli.running import change, record_of
from tests.examples import (
    TODAY,
    sample_design,
    sample_minutes,
    sample_order,
    sample_quote,
    sample_workshop,
    sample_yarn,
    section,
)


def test_the_table_says_what_the_json_says(capsys: pytest.CaptureFixture[str]) -> None:
    record = record_of(capsys, "--demo")
    assert main(["quote", "--demo"]) == 0
    said = capsys.readouterr().out.replace("\u00a0", " ")
    for text in (
        "103: oat 35, teal 34, rust 34",
        "chain 100, first hdc in the 3rd chain from the hook",
        "80 × 100 cm",
        f"{record['strands']['ends']} ends",
        record["price"]["total"],
        record["price"]["profit"],
        record["price"]["earned_per_hour"],
        "Yarn, oat: 100 g skeins",
    ):
        assert text in said
    flat = " ".join(said.split())
    assert all(warning["text"] in flat for warning in record["warnings"])


def test_work_without_minutes_is_named_below_the_hours() -> None:
    some = sample_minutes(wash=None, pack=None)
    page = quote_table(sample_quote(None, sample_workshop(minutes=some)))
    assert "Not counted yet: blocking, packing" in page
    assert "Not counted yet" not in quote_table(sample_quote())


def test_no_line_of_the_table_is_wider_than_eighty_columns(
    capsys: pytest.CaptureFixture[str], demo: Path
) -> None:
    change(demo / "order.toml", "Cot blanket in moorland stripes", "A long, long title " * 4)
    change(demo / "order.toml", 'what = "Gift box"', f'what = "{"a gift box of card " * 4}"')
    assert main(["quote", str(demo / "order.toml")]) == 0
    lines = capsys.readouterr().out.splitlines()
    assert max(columns.shown_width(line) for line in lines) <= 80


def test_three_hundred_rows_print_as_briefly_as_a_hundred(
    capsys: pytest.CaptureFixture[str], demo: Path
) -> None:
    assert main(["quote", str(demo / "order.toml")]) == 0
    short = capsys.readouterr().out.count("\n")
    change(demo / "order.toml", 'height = "100 cm"', 'height = "300 cm"')
    assert main(["quote", str(demo / "order.toml")]) == 0
    long = capsys.readouterr().out
    assert "31" in long
    assert long.count("\n") < short + 15


def test_the_words_of_the_program_are_not_printed(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["quote", "--demo"]) == 0
    said = capsys.readouterr().out.lower()
    assert not {"pass", "put-up", "opening", "none", "decimal"} & set(said.split())


def test_inches_yards_and_uk_names_are_printed_where_the_workshop_says_so(
    capsys: pytest.CaptureFixture[str], demo: Path
) -> None:
    change(demo / "workshop.toml", 'units = "cm"', 'units = "in"')
    change(demo / "workshop.toml", 'speaks = "US"', 'speaks = "UK"')
    assert main(["quote", str(demo / "order.toml")]) == 0
    said = capsys.readouterr().out.replace("\u00a0", " ")
    assert "31.5 × 39.4 in" in said
    assert "98 htr" in said
    assert "440 dc" in said
    assert " yd" in said


def test_packs_and_several_blankets_are_printed() -> None:
    pack = PutUp(weight_g=50, length_m=100, price=Decimal("20.00"), pack=10)
    workshop = sample_workshop(yarns=(sample_yarn(put_ups=(pack,)),))
    sections = (section("oat", "teal", rows=2), section("teal", "rust", share=2))
    order = sample_order(quantity=40, design=sample_design(sections=sections))
    said = quote_table(quote_order(order, workshop, today=TODAY)).replace("\u00a0", " ")
    assert "packs of 10 × 50 g" in said
    assert "more" in said
    assert "In sections" in said
    assert "Price of each" in said
    assert said.count("\n") < 150


@pytest.mark.parametrize(
    ("changes", "told"),
    [
        ({"deposit": None}, []),
        ({}, ["Deposit 148.50", "Balance 148.50"]),
        ({"at_half": 0.25}, ["Deposit 148.50", "When half is made 74.25", "Rest 74.25"]),
        ({"deposit": None, "at_half": 1.0}, ["When half is made 297.00"]),
    ],
)
def test_what_is_paid_when_stands_under_the_total(changes: dict[str, Any], told: list[str]) -> None:
    pricing = replace(sample_workshop().pricing, **changes)
    order = sample_order(terms=Terms(target=Target(given=Decimal(292))))
    lines = quote_table(sample_quote(order, sample_workshop(pricing=pricing))).splitlines()
    said = [" ".join(line.split()) for line in lines]
    total = said.index("Total 297.00")
    assert said[total + 1 : total + 1 + len(told)] == told
    assert said[total + 1 + len(told)].startswith("An hour earns")
