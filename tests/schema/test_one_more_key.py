"""A key that is added to a shape is in the file, the form and the record, and mypy knows it."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

import pytest
from mypy import api
from werkzeug.datastructures import MultiDict

from quoting.core.ground.errors import Refused
from quoting.core.ground.place import Document
from quoting.schema.figures import SIDE
from quoting.schema.reading import read_value
from quoting.schema.shape import Fields, Shape
from quoting.schema.words import TEXT
from quoting.web.forms.from_shape import form_of
from tests.schema.notations import (
    FILES,
    TYPED,
    as_file,
    as_record,
    as_sent,
    from_file,
    from_record,
    from_sent,
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Cushion:
    """A value that was there, with a key that is new."""

    side_cm: float
    stuffing: str | None = None


_cushion = Fields(Cushion)
PROJECT = Path(__file__).parents[2]
BEFORE = (_cushion(lambda cushion: cushion.side_cm, SIDE, "Side", name="side"),)
ADDED = _cushion(lambda cushion: cushion.stuffing, TEXT, "Stuffing")
CUSHION = Shape(Cushion, *BEFORE, ADDED)
SHEEP = Cushion(side_cm=40, stuffing="fleece of the moor")


def test_it_is_in_the_file() -> None:
    text = as_file(CUSHION, SHEEP, FILES["US"])
    assert 'stuffing = "fleece of the moor"' in text
    assert from_file(CUSHION, text) == SHEEP


def test_it_is_in_the_form_with_its_label_and_what_was_typed() -> None:
    sent = as_sent(CUSHION, SHEEP, TYPED["German"])
    form = form_of(CUSHION)(sent, meta={"shop": None, "lines": {}})
    assert form["stuffing"].label.text == "Stuffing"
    assert form["stuffing"].typed == "fleece of the moor"
    assert from_sent(CUSHION, sent, TYPED["German"]) == SHEEP


def test_it_is_in_the_record() -> None:
    assert from_record(CUSHION, as_record(CUSHION, SHEEP)) == SHEEP


def test_left_out_or_left_blank_it_is_not_given() -> None:
    bare = Cushion(side_cm=40)
    assert from_file(CUSHION, 'terms = "US"\nside = "40 cm"') == bare
    blank = MultiDict({"side": "40", "stuffing": " "})
    assert from_sent(CUSHION, blank, TYPED["English"]) == bare


def test_without_it_a_file_that_has_it_is_refused() -> None:
    with pytest.raises(Refused) as refused:
        from_file(Shape(Cushion, *BEFORE), as_file(CUSHION, SHEEP, FILES["US"]))
    assert [(m.path, m.code) for m in refused.value.mistakes] == [("stuffing", "unknown-key")]


def test_what_is_wrong_with_it_is_told_at_its_place() -> None:
    shape = Shape(Cushion, *BEFORE, _cushion(lambda cushion: cushion.stuffing, TEXT))
    with pytest.raises(Refused) as refused:
        read_value({"side": "40 cm", "stuffing": 3}, shape, Document.ORDER, FILES["US"])
    assert [(m.path, m.code) for m in refused.value.mistakes] == [("stuffing", "wrong-type")]


SNIPPET = """
from quoting.core.order.order import Order
from quoting.schema.figures import COUNT
from quoting.schema.shape import Fields
from quoting.schema.words import TEXT

order = Fields(Order)
order(lambda order: order.title, TEXT)
order(lambda order: order.titel, TEXT)
order(lambda order: order.quantity, TEXT)
order(lambda order: order.quantity, COUNT, usual="one")
"""


@pytest.mark.slow
def test_mypy_refuses_a_misspelt_key_and_a_kind_of_another_type(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(PROJECT)
    snippet = tmp_path / "snippet.py"
    snippet.write_text(SNIPPET, "utf-8")
    told, failed, _ = api.run([str(snippet), "--strict"])
    assert not failed
    lines = [line.split(":")[1] for line in told.splitlines() if "error:" in line]
    assert list(dict.fromkeys(lines)) == ["9", "10", "11"]
    assert '"Order" has no attribute "titel"' in told
