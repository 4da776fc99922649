"""Stripes typed or pasted as a list, one a line, say what their fields would say, both ways."""

import re

import pytest
from werkzeug.datastructures import MultiDict

from quoting.web.orders.stripe_list import MANY_STRIPES, as_lines, as_text
from tests.web.conftest import Maker
from tests.web.pages import Page

PLACE = "blanket.sections.1.stripes"
TEXT = f"{PLACE}.as_list"


def pressed(maker: Maker, fields: dict[str, str], do: str) -> Page:
    """Press a button of the form."""
    return Page(maker.client.post("/", data=fields | {"do": do}).text)


def test_stripes_become_a_list_and_fields_again_with_the_same_answer(maker: Maker) -> None:
    before = maker.open()
    listed = pressed(maker, before.typed(), f"as_text {PLACE}")
    assert listed.typed()[TEXT].splitlines() == ["teal, 1", "rust, 1", "oat, 1"]
    assert not [name for name in listed.typed() if name.startswith(f"{PLACE}.1")]
    assert listed.figure("Price") == before.figure("Price")
    again = pressed(maker, listed.typed(), f"as_lines {PLACE}").typed()
    assert again == before.typed() | {"csrf_token": again["csrf_token"]}


@pytest.mark.parametrize(
    "stripe",
    [
        ("teal", "2", "dc"),
        ("", "two", ""),
        ("teal", "", ""),
        ("teal", "", "dc"),
        ('sea, "deep"; mixed', "1", "a pattern, with a comma"),
        (" teal ", "1\t", ""),
    ],
)
def test_nothing_that_was_typed_is_lost_on_the_way(stripe: tuple[str, ...]) -> None:
    names = [f"{PLACE}.{n}.{part}" for n in (1, 2) for part in ("colour", "rows", "stitch")]
    sent = MultiDict(zip(names, (*stripe, "oat", "1", ""), strict=True))
    assert as_lines(as_text(sent, PLACE), PLACE) == sent


@pytest.mark.parametrize(
    "line", ["teal, 2, dc", "teal\t2\tdc", "teal;2;dc", "  teal,2,dc", "teal 2 dc"]
)
def test_a_line_is_read_as_it_is_typed_or_pasted(line: str) -> None:
    read = as_lines(MultiDict({TEXT: f"\n{line.strip()}\n\noat\n"}), PLACE)
    assert list(read.values()) == ["teal", "2", "dc", "oat", "1", ""]


def test_a_mistake_names_its_line_and_keeps_the_text(maker: Maker) -> None:
    listed = pressed(maker, maker.open().typed(), f"as_text {PLACE}").typed()
    page = pressed(maker, listed | {TEXT: "teal, 2\n\npuce, 1\noat, many"}, "")
    assert page.typed()[TEXT].splitlines() == ["teal, 2", "", "puce, 1", "oat, many"]
    told = page.with_id("mistakes")
    assert [a.text for a in told.all("a")] == ["Section 1, line 4", "Section 1, line 3"]
    assert {a.attributes["href"] for a in told.all("a")} == {f"#{PLACE}"}
    assert "Line 3: The yarn has no colour “puce”" in page.said_of(PLACE)


def test_each_mistake_of_a_list_says_its_line_once_wherever_it_stands(maker: Maker) -> None:
    listed = pressed(maker, maker.open().typed(), f"as_text {PLACE}").typed()
    page = pressed(maker, listed | {TEXT: "puce 1\nmauve 1"}, "")
    assert re.findall(r"Line \d:", page.said_of(PLACE)) == ["Line 1:", "Line 2:"]
    assert not any("Line" in li.text.split(": ", 1)[1] for li in page.with_id("mistakes").all("li"))


def test_a_line_longer_than_any_is_refused_in_a_sentence(maker: Maker) -> None:
    listed = pressed(maker, maker.open().typed(), f"as_text {PLACE}").typed()
    page = pressed(maker, listed | {TEXT: "x" * 140_000}, "")
    assert "Section 1, line 1" in page.with_id("mistakes").text


def test_very_many_stripes_come_as_a_list_and_not_as_hundreds_of_fields(maker: Maker) -> None:
    listed = pressed(maker, maker.open().typed(), f"as_text {PLACE}").typed()
    days = "\n".join(["teal", "oat", "rust"] * MANY_STRIPES)
    sent = listed | {TEXT: days, "blanket.sections.1.repeats": "1"}
    file = maker.client.post("/order-file", data=sent).text
    page = maker.give(file)
    assert len(page.typed()[TEXT].splitlines()) == 3 * MANY_STRIPES
    assert len(list(page.with_id("order").all("select"))) < 30
