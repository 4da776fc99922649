"""The command line: what it prints, what it refuses, and that it never leaves half a file."""

from __future__ import annotations

import errno
import json
import os
import shutil
import subprocess
import sys
from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest

from exports.record import quote_record
from quoting.cli import columns, main, whole_file
from quoting.cli.failures import NotDone
from quoting.cli.quote_table import quote_table
from quoting.core.exchange import ExchangeRate
from quoting.core.order import Terms
from quoting.core.quote import quote_order
from quoting.core.yarns import PutUp
from quoting.places import demo_order, demo_workshop
from tests.examples import TODAY, sample_design, sample_order, sample_workshop, sample_yarn, section

ROOT = Path(__file__).parents[1]
SPECIAL = {"discount", "rush", "minimum", "fee"}


@pytest.fixture
def demo(tmp_path: Path) -> Path:
    """Return a folder with a copy of the demo's order and workshop."""
    shutil.copy(demo_order(), tmp_path / "order.toml")
    shutil.copy(demo_workshop(), tmp_path / "workshop.toml")
    return tmp_path


def change(path: Path, old: str, new: str) -> None:
    text = path.read_text("utf-8")
    assert old in text
    path.write_text(text.replace(old, new, 1), "utf-8")


def record_of(capsys: pytest.CaptureFixture[str], *argv: str) -> Any:
    assert main(["quote", *argv, "--json"]) == 0
    said = capsys.readouterr()
    assert said.err == ""
    return json.loads(said.out)


def run(*argv: str, **more: Any) -> subprocess.CompletedProcess[str]:
    environment = os.environ | {"PYTHONPATH": str(ROOT)} | more.pop("env", {})
    command = [sys.executable, "-m", "quoting", *argv]
    return subprocess.run(
        command, capture_output=True, encoding="utf-8", env=environment, check=False, **more
    )


# -- JSON ------------------------------------------------------------------------------------

PROMISED = {
    "blanket": "stitches foundation_chain rows rows_by_colour rows_by_section border_rounds"
    " width_cm height_cm",
    "strands": "count ends carries cuts joins list",
    "hours": "stitching turning changing joining weaving_in finishing office total low high",
    "price": "currency lines cost fees tax price delivery total deposit balance profit margin"
    " earned_per_hour",
}
AMOUNTS = ["cost", "fees", "tax", "profit", "total", "deposit", "price", "delivery", "balance"]
PARTS = ["stitching", "turning", "changing", "joining", "weaving_in", "finishing", "office"]


def test_json_has_every_promised_key(capsys: pytest.CaptureFixture[str]) -> None:
    record = record_of(capsys, "--demo")
    for table, keys in PROMISED.items():
        assert set(keys.split()) <= set(record[table]), table
    yarn = "colour yarn metres grams metres_to_buy skeins purchase from_stock_grams cost"
    for entry in record["yarn"]:
        assert set(f"{yarn} metres_left".split()) <= set(entry)
        assert all(set(some) >= {"grams", "metres", "count", "price"} for some in entry["purchase"])
    for strand in record["strands"]["list"]:
        assert set(strand) == {"colour", "starts", "ends", "metres", "why"}
        assert set(strand["starts"]) == set(strand["ends"]) == {"pass", "edge"}
    for line in record["price"]["lines"]:
        assert set(line) == {"kind", "what", "quantity", "unit", "rate", "amount"}
    for warning in record["warnings"]:
        assert set(warning) == {"code", "for", "facts", "text"}


def test_the_demo_comes_out_as_it_is_reckoned_by_hand(capsys: pytest.CaptureFixture[str]) -> None:
    """98 stitches of 0.8 cm and 103 rows of 0.95 cm, with a round of sc (model, parts 3 and 4)."""
    record = record_of(capsys, "--demo")
    blanket = record["blanket"]
    assert blanket["stitches"] == 98
    assert blanket["foundation_chain"] == 100
    assert blanket["rows"] == 103
    assert blanket["rows_by_colour"] == {"oat": 35, "teal": 34, "rust": 34}
    assert blanket["border_rounds"] == [440]
    assert record["strands"]["carries"] == 100
    assert record["strands"]["ends"] == 2 * record["strands"]["count"]


def test_the_sums_of_the_demo_hold_to_the_cent(capsys: pytest.CaptureFixture[str]) -> None:
    record = record_of(capsys, "--demo")
    price = record["price"]
    money = {
        name: Decimal(price[name]) for name in ["cost", "fees", "tax", "profit", "total", "deposit"]
    }
    assert money["total"] == money["cost"] + money["fees"] + money["tax"] + money["profit"]
    assert Decimal(price["balance"]) == money["total"] - money["deposit"]
    amounts = [(line["kind"], Decimal(line["amount"])) for line in price["lines"]]
    assert sum(amount for kind, amount in amounts if kind == "fee") == money["fees"]
    assert sum(amount for kind, amount in amounts if kind not in SPECIAL) == money["cost"]
    yarn = sum(amount for kind, amount in amounts if kind == "yarn")
    assert sum(Decimal(entry["cost"]) for entry in record["yarn"]) == yarn


def test_every_line_is_its_quantity_times_its_rate(capsys: pytest.CaptureFixture[str]) -> None:
    for line in record_of(capsys, "--demo")["price"]["lines"]:
        product = Decimal(str(line["quantity"])) * Decimal(line["rate"])
        assert abs(product - Decimal(line["amount"])) <= Decimal("0.005"), line


def test_hours_are_numbers_whose_parts_add_up(capsys: pytest.CaptureFixture[str]) -> None:
    hours = record_of(capsys, "--demo")["hours"]
    total = sum(Decimal(str(hours[part])) for part in PARTS)
    assert total == Decimal(str(hours["total"]))
    assert hours["low"] <= hours["total"] <= hours["high"]


def test_metres_of_the_strands_are_those_of_the_yarn(capsys: pytest.CaptureFixture[str]) -> None:
    record = record_of(capsys, "--demo")
    for entry in record["yarn"]:
        mine = [s["metres"] for s in record["strands"]["list"] if s["colour"] == entry["colour"]]
        assert sum(mine) == pytest.approx(entry["metres"], abs=0.01)


def test_money_is_text_with_the_currencys_own_decimals() -> None:
    workshop = sample_workshop(currency="KWD", exchange={})
    record: Any = quote_record(quote_order(sample_order(pays_in=None), workshop, today=TODAY))
    for name in [
        "cost",
        "fees",
        "tax",
        "price",
        "delivery",
        "total",
        "deposit",
        "balance",
        "profit",
    ]:
        assert len(record["price"][name].partition(".")[2]) == 3, name


def test_a_discount_moves_the_price_and_is_no_cost() -> None:
    order = sample_order(terms=Terms(discount=0.05))
    record: Any = quote_record(quote_order(order, sample_workshop(), today=TODAY))
    price = record["price"]
    moves = [Decimal(x["amount"]) for x in price["lines"] if x["kind"] in {"discount", "minimum"}]
    assert moves
    assert all(move < 0 for move in moves)
    assert Decimal(price["listed"]) + sum(moves) == Decimal(price["price"])
    costs = [Decimal(x["amount"]) for x in price["lines"] if x["kind"] not in SPECIAL]
    assert sum(costs) == Decimal(price["cost"])


def test_several_blankets_say_of_which_each_strand_is() -> None:
    record: Any = quote_record(
        quote_order(sample_order(quantity=2), sample_workshop(), today=TODAY)
    )
    pieces = {strand["starts"]["piece"] for strand in record["strands"]["list"]}
    assert pieces == {0, 1}


def test_a_buyers_currency_is_kept_with_its_rate_and_day() -> None:
    rate = ExchangeRate(currency="EUR", rate=Decimal("1.17"), day=TODAY, cushion=0.02)
    workshop = sample_workshop(exchange={"EUR": rate})
    record: Any = quote_record(quote_order(sample_order(pays_in="EUR"), workshop, today=TODAY))
    said = record["price"]["in_buyers_currency"]
    total = Decimal(record["price"]["total"]) * Decimal("1.17") * Decimal("1.02")
    assert abs(Decimal(said["amount"]) - total) <= Decimal("0.005")
    assert (said["currency"], said["rate"], said["day"]) == ("EUR", "1.17", "2026-11-25")


# -- the table -------------------------------------------------------------------------------


def test_the_table_says_what_the_json_says(capsys: pytest.CaptureFixture[str]) -> None:
    record = record_of(capsys, "--demo")
    assert main(["quote", "--demo"]) == 0
    said = capsys.readouterr().out.replace("\u00a0", " ")
    for text in (
        "103: oat 35, teal 34, rust 34",
        "98 hdc, from a chain of 100",
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


def test_a_terminal_without_the_characters_gets_marks_instead() -> None:
    done = run("quote", "--demo", env={"PYTHONIOENCODING": "ascii"})
    assert done.returncode == 0
    assert "80 ? 100?cm" in done.stdout
    assert done.stderr == ""


def test_a_reader_who_stops_reading_is_no_trouble() -> None:
    script = f"{sys.executable} -m quoting quote --demo --json | head -c 10"
    done = subprocess.run(
        ["/bin/sh", "-c", script],
        capture_output=True,
        encoding="utf-8",
        env=os.environ | {"PYTHONPATH": str(ROOT)},
        check=False,
    )
    assert done.stderr == ""
    assert len(done.stdout) == 10


def test_an_interrupt_is_quiet(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    def stop(*_: object) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr("quoting.cli.quote.read_job", stop)
    assert main(["quote", "--demo"]) == 1
    assert capsys.readouterr() == ("", "")


def test_only_what_is_used_is_loaded() -> None:
    script = (
        "import sys; from quoting.cli import main; main(['quote', '--demo']);"
        "print(sorted({'openpyxl', 'flask', 'requests', 'waitress'} & set(sys.modules)))"
    )
    done = subprocess.run(
        [sys.executable, "-c", script],
        capture_output=True,
        encoding="utf-8",
        env=os.environ | {"PYTHONPATH": str(ROOT)},
        check=True,
    )
    assert done.stdout.endswith("\n[]\n")


# -- which files -----------------------------------------------------------------------------


def test_the_workshop_beside_the_order_is_taken(
    capsys: pytest.CaptureFixture[str], demo: Path
) -> None:
    change(demo / "workshop.toml", "Ottermoor Blankets", "Fellside Blankets")
    assert main(["quote", str(demo / "order.toml")]) == 0
    assert "Fellside Blankets" in capsys.readouterr().out


def test_without_one_beside_it_the_workshop_here_is_taken(
    capsys: pytest.CaptureFixture[str], demo: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (demo / "orders").mkdir()
    (demo / "order.toml").rename(demo / "orders" / "order.toml")
    monkeypatch.chdir(demo)
    assert main(["quote", "orders/order.toml"]) == 0
    assert "Ottermoor" in capsys.readouterr().out


def test_with_no_workshop_anywhere_it_is_said_how_to_name_one(
    capsys: pytest.CaptureFixture[str], demo: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (demo / "workshop.toml").unlink()
    monkeypatch.chdir(demo)
    assert main(["quote", "order.toml"]) == 2
    assert "--workshop" in capsys.readouterr().err


@pytest.mark.parametrize(
    "argv",
    [
        [],
        ["quote"],
        ["quote", "--demo", "order.toml"],
        ["quote", "--demo", "--workbook", "order.toml"],
        ["quote", "--demo", "--nonsense"],
        ["nonsense"],
        ["quote", "nowhere.toml", "--workshop", "nowhere.toml"],
        ["quote", "--demo", "--workshop", "\0"],
        ["quote", "."],
    ],
)
def test_a_command_that_cannot_be_understood_is_bad_input(
    capsys: pytest.CaptureFixture[str],
    argv: list[str],
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.chdir(tmp_path)
    assert main(argv) == 2
    said = capsys.readouterr()
    assert said.out == ""
    assert said.err
    assert list(tmp_path.iterdir()) == []


# -- bad input -------------------------------------------------------------------------------


def test_every_mistake_is_told_on_its_own_line_with_its_file_and_place(
    capsys: pytest.CaptureFixture[str], demo: Path
) -> None:
    order = demo / "order.toml"
    change(order, 'width = "80 cm"', 'width = "80"')
    change(order, '{ colour = "rust", rows = 1 }', '{ colour = "rust", rows = 0 }')
    change(order, "share = 1", "shore = 1")
    assert main(["quote", str(order), "--json", "--workbook", str(demo / "new.xlsx")]) == 2
    said = capsys.readouterr()
    assert said.out == ""
    lines = said.err.splitlines()
    assert all(line.startswith(f"{order}: blanket.") for line in lines)
    places = [line.split(": ")[1] for line in lines]
    assert places == [
        "blanket.width",
        "blanket.sections.1.stripes.2.rows",
        "blanket.sections.1.shore",
    ]
    assert "Did you mean share?" in said.err
    assert not (demo / "new.xlsx").exists()


def test_a_blanket_that_is_too_small_is_told_the_smallest_that_works(
    capsys: pytest.CaptureFixture[str], demo: Path
) -> None:
    order = demo / "order.toml"
    change(order, 'height = "100 cm"', 'height = "2 cm"')
    assert main(["quote", str(order)]) == 2
    said = capsys.readouterr().err
    smallest = said.rsplit("works is ", 1)[1].strip().rstrip(".")
    change(order, 'height = "2 cm"', f'height = "{smallest}"')
    assert main(["quote", str(order)]) == 0


def test_a_mistake_in_the_workshop_names_the_workshops_file(
    capsys: pytest.CaptureFixture[str], demo: Path
) -> None:
    change(demo / "workshop.toml", 'locale = "en_GB"', 'locale = "xx_YY"')
    assert main(["quote", str(demo / "order.toml")]) == 2
    assert f"{demo / 'workshop.toml'}: workshop.locale: “xx_YY”" in capsys.readouterr().err


def test_a_target_that_no_price_meets_is_told_at_the_file_that_set_it(
    capsys: pytest.CaptureFixture[str], demo: Path
) -> None:
    change(demo / "workshop.toml", "margin = 0.15", "margin = 0.999")
    text = (demo / "order.toml").read_text("utf-8").partition("[price]")[0]
    (demo / "order.toml").write_text(text, "utf-8")
    assert main(["quote", str(demo / "order.toml")]) == 2
    assert f"{demo / 'workshop.toml'}: price.margin: " in capsys.readouterr().err
    (demo / "order.toml").write_text(text + "[price]\nmargin = 0.999\n", "utf-8")
    assert main(["quote", str(demo / "order.toml")]) == 2
    assert f"{demo / 'order.toml'}: price.margin: " in capsys.readouterr().err


JUNK: list[bytes] = [
    b"",
    b"\0\1\2",
    b"\xff\xfe\x00",
    b"[order",
    b"order = 1\nblanket = []",
    b"[" * 5000,
    b'[order]\ntitle = "' + b"x" * 5000 + b'"',
    b'[blanket]\nwidth = "1e999 cm"\nheight = "-1 cm"\nsections = [{stripes = "x"}]',
    b"a = " + b"9" * 6000,
    b'[order]\ntitle = "\\u001b[31m"\n[extras]\n"{x}" = 1\n',
]


@pytest.mark.parametrize("junk", JUNK, ids=range(len(JUNK)))
@pytest.mark.parametrize("name", ["order.toml", "workshop.toml"])
def test_junk_is_answered_with_sentences(
    capsys: pytest.CaptureFixture[str], demo: Path, name: str, junk: bytes
) -> None:
    (demo / name).write_bytes(junk)
    assert main(["quote", str(demo / "order.toml"), "--json"]) == 2
    said = capsys.readouterr()
    assert said.out == ""
    assert "\x1b" not in said.err
    assert "cannot be taken as it is" not in said.err
    assert all(line.startswith(f"{demo / name}: ") for line in said.err.splitlines())
    assert all(line.rstrip()[-1] in ".?" for line in said.err.splitlines())


@pytest.mark.parametrize("name", ["order.toml", "workshop.toml"])
def test_any_one_line_left_out_is_read_or_answered_with_sentences(
    capsys: pytest.CaptureFixture[str], demo: Path, name: str
) -> None:
    lines = (demo / name).read_text("utf-8").splitlines(keepends=True)
    for number in range(len(lines)):
        (demo / name).write_text("".join(lines[:number] + lines[number + 1 :]), "utf-8")
        status = main(["quote", str(demo / "order.toml")])
        said = capsys.readouterr()
        assert status in {0, 2}
        assert bool(said.err) == (status == 2)
        assert "cannot be taken as it is" not in said.err


def test_no_traceback_is_printed_for_bad_input(demo: Path) -> None:
    (demo / "order.toml").write_bytes(b"[order\n")
    done = run("quote", str(demo / "order.toml"))
    assert done.returncode == 2
    assert done.stderr.count("\n") == 1
    assert "Traceback" not in done.stderr


# -- writing ---------------------------------------------------------------------------------


def test_the_workbook_is_written_whole(capsys: pytest.CaptureFixture[str], demo: Path) -> None:
    pytest.importorskip("exports.workbook.book")
    path = demo / "costing.xlsx"
    assert main(["quote", str(demo / "order.toml"), "--workbook", str(path)]) == 0
    assert path.read_bytes()[:2] == b"PK"
    assert "Quote" in capsys.readouterr().out
    assert {p.name for p in demo.iterdir()} == {"order.toml", "workshop.toml", "costing.xlsx"}


def test_a_file_takes_the_place_of_an_older_one(tmp_path: Path) -> None:
    path = tmp_path / "costing.xlsx"
    path.write_bytes(b"old")
    whole_file.write_whole(path, b"new")
    assert path.read_bytes() == b"new"
    assert list(tmp_path.iterdir()) == [path]


def test_a_file_that_cannot_be_finished_leaves_the_older_one_as_it_was(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "costing.xlsx"
    path.write_bytes(b"old")

    def full(_: int) -> None:
        raise OSError(errno.ENOSPC, "No space left on device")

    monkeypatch.setattr(os, "fsync", full)
    with pytest.raises(NotDone, match="the disk is full"):
        whole_file.write_whole(path, b"new")
    assert path.read_bytes() == b"old"
    assert list(tmp_path.iterdir()) == [path]


@pytest.mark.parametrize(
    ("where", "why"),
    [
        ("folder.xlsx", "it is a folder"),
        ("nowhere/costing.xlsx", "its folder is not there"),
        ("file/costing.xlsx", "its folder is not a folder"),
        ("x" * 300 + ".xlsx", "its name is too long"),
        ("a\0b.xlsx", "could not be written"),
    ],
)
def test_a_place_that_cannot_be_written_is_told_with_its_reason(
    tmp_path: Path, where: str, why: str
) -> None:
    (tmp_path / "folder.xlsx").mkdir()
    (tmp_path / "file").write_text("", "utf-8")
    with pytest.raises(NotDone, match=why):
        whole_file.write_whole(tmp_path / where, b"new")
    assert {p.name for p in tmp_path.iterdir()} == {"folder.xlsx", "file"}


def test_a_workbook_that_cannot_be_written_fails_with_one_sentence_and_no_answer(
    capsys: pytest.CaptureFixture[str], demo: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("exports.workbook.workbook_bytes", lambda _: b"bytes")
    path = demo / "nowhere" / "costing.xlsx"
    assert main(["quote", str(demo / "order.toml"), "--workbook", str(path)]) == 1
    said = capsys.readouterr()
    assert said.out == ""
    assert said.err == f"{path} could not be written: its folder is not there.\n"


def test_a_folder_that_is_read_only_is_told(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The system's answer is made up: the tests may run as a user who may write anywhere."""

    def forbid(*_: object) -> None:
        raise PermissionError(errno.EACCES, "Permission denied")

    monkeypatch.setattr(Path, "open", forbid)
    with pytest.raises(NotDone, match="you may not write there"):
        whole_file.write_whole(tmp_path / "costing.xlsx", b"new")
    assert list(tmp_path.iterdir()) == []


def test_a_full_output_is_told_in_a_sentence() -> None:
    full = Path("/dev/full")
    if not full.exists():
        pytest.skip("this system has no device that is always full")
    with full.open("w") as out:
        done = subprocess.run(
            [sys.executable, "-m", "quoting", "quote", "--demo"],
            stdout=out,
            stderr=subprocess.PIPE,
            encoding="utf-8",
            env=os.environ | {"PYTHONPATH": str(ROOT)},
            check=False,
        )
    assert done.returncode == 1
    assert done.stderr.count("\n") == 1
    assert "Traceback" not in done.stderr
