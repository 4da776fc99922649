"""Names of a maker's own with unusual signs in them, and names that would steer a terminal."""

from __future__ import annotations

from pathlib import Path

import pytest
from defusedxml.ElementTree import fromstring
from openpyxl import load_workbook

from exports.drawing import draw_blanket
from quoting.cli import main
from quoting.core.quote.quote import quote_order
from quoting.schema import load_order, load_workshop
from quoting.wording import speech_of
from tests.cli.running import refusals
from tests.examples import TODAY


def test_a_name_may_have_joined_signs_but_nothing_else_that_shows_nothing(
    demo: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    order = demo / "order.toml"
    text = order.read_text("utf-8")
    order.write_text(text.replace("Rosalind Quill", "Rosalind \U0001f469\u200d\U0001f37c"), "utf-8")
    assert main(["quote", str(order), "--workbook", str(demo / "costing.xlsx")]) == 0
    capsys.readouterr()
    order.write_text(text.replace("Rosalind Quill", "Rosa\u200blind"), "utf-8")
    status, said = refusals(capsys, "quote", str(order))
    assert status == 2
    assert "Character 5 of this shows nothing (“U+200B”); take it out." in said


def test_joined_names_come_through_to_the_workbook_and_the_drawing(demo: Path) -> None:
    """A Persian word, whose parts are kept from joining, and a sign made of two."""
    name = "\u0645\u06cc\u200c\u062e\u0648\u0627\u0647\u0645 \U0001f469\u200d\U0001f37c"
    for file in (demo / "order.toml", demo / "workshop.toml"):
        text = file.read_text("utf-8").replace("teal = ", f'"{name}" = ')
        file.write_text(text.replace('"teal"', f'"{name}"'), "utf-8")
    book = demo / "costing.xlsx"
    assert main(["quote", str(demo / "order.toml"), "--workbook", str(book)]) == 0
    cells = [cell.value for sheet in load_workbook(book) for row in sheet for cell in row]
    assert name in cells
    workshop = load_workshop(demo / "workshop.toml")
    order = load_order(demo / "order.toml", workshop)
    drawing = draw_blanket(quote_order(order, workshop, today=TODAY), speech_of(workshop))
    assert name in " ".join(fromstring(drawing).itertext())


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("EUR =", '"\\u001b[31mEU\\n" ='),
        ("teal =", '"te\\u001b[31mal\\n" ='),
        ("teal =", '"\\u202e" ='),
    ],
)
def test_no_name_in_a_file_can_steer_the_terminal(
    demo: Path, capsys: pytest.CaptureFixture[str], old: str, new: str
) -> None:
    workshop = demo / "workshop.toml"
    workshop.write_text(workshop.read_text("utf-8").replace(old, new, 1), "utf-8")
    status, said = refusals(capsys, "quote", str(demo / "order.toml"))
    assert status == 2
    assert all(line.startswith(str(workshop)) for line in said.splitlines())
    assert not {"\x1b", "\u202e"} & set(said)
