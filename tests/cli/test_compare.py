"""The table of sizes side by side."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from quoting.cli import main
from tests.cli.running import change


def test_a_comparison_in_inches_has_the_price_of_100_square_inches(
    capsys: pytest.CaptureFixture[str], demo: Path
) -> None:
    """An inch is 2.54 cm exactly (NIST Handbook 44), so the price is 6.4516 times as much."""
    files = ["compare", str(demo / "order.toml"), "--size", "80x100cm"]
    assert main(files) == 0
    in_cm = _price_of_area(capsys.readouterr().out, "100 cm²")
    change(demo / "workshop.toml", 'units = "cm"', 'units = "in"')
    assert main(files) == 0
    in_inches = _price_of_area(capsys.readouterr().out, "100 in²")
    assert in_inches == pytest.approx(in_cm * 6.4516, abs=0.005 * 6.4516 + 0.005)


def _price_of_area(said: str, area: str) -> float:
    (line,) = [line for line in said.splitlines() if line.startswith(f"Price per {area}")]
    return float(line.split()[-1])


@pytest.mark.parametrize("shown", [[], ["--json"]])
def test_where_no_size_can_be_made_the_sizes_are_bad_input_each_with_its_reason(
    demo: Path, capsys: pytest.CaptureFixture[str], shown: list[str]
) -> None:
    sizes = ["--size", "1x100cm", "--size", "80x2cm"]
    assert main(["compare", str(demo / "order.toml"), *sizes, *shown]) == 2
    said = capsys.readouterr()
    assert json.loads(said.out)["sizes"] == [] if shown else "Left out" in said.out
    none, narrow, low = said.err.splitlines()
    assert none == "None of these sizes can be made."
    assert narrow.startswith("1x100cm: This is too narrow for one stitch repeat and the border; ")
    assert low.startswith("80x2cm: This is too short for one of every stripe")


def test_too_many_sizes_are_told_where_they_are_named(
    demo: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    sizes = [part for n in range(51) for part in ("--size", f"{50 + n}x90cm")]
    assert main(["compare", str(demo / "order.toml"), *sizes]) == 2
    said = capsys.readouterr().err
    assert said == "--size: 51 of them are too many; at most 50 will do.\n"


def test_the_reasons_in_json_have_plain_spaces_as_a_quotes_sentences_have(
    demo: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    main(["compare", str(demo / "order.toml"), "--size", "80x2cm", "--json"])
    (refused,) = json.loads(capsys.readouterr().out)["refused"]
    assert refused["why"].endswith(" cm.")
    assert "\u00a0" not in refused["why"]
