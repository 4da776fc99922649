"""A batch record names every lot that was taken, and tells what was measured from what was not."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from typing import Any

import pytest

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import Refused
from quoting.core.making.log_lines import LogLine, Withdrawn
from quoting.core.order.design import ColourSource
from quoting.core.papers.batch import BatchAsked, BatchRecord, batch_of
from quoting.core.workshop.own_words import OwnWords
from tests.core.making.logs import DAY, log, taken
from tests.core.papers.accounts import offered
from tests.examples import WOOL

OFFER = offered(own_words=OwnWords(care="By hand."))
SOURCES = {
    offered.name: ColourSource(yarn=offered.yarn, colour=offered.colour)
    for offered in OFFER.colours
} | {"ground": ColourSource(yarn=WOOL, colour=OFFER.colours[0].colour)}
"""The yarns of the order's colours, one of which goes by two names in it."""

FIRST = OFFER.colours[0]


def record(*lines: LogLine, corrects: dict[int, int] | None = None, **asked: Any) -> BatchRecord:
    wish = BatchAsked(**({"finished": DAY} | asked))
    entries = log(*lines, corrects=corrects)
    return batch_of(OFFER, entries, SOURCES, wish, makers_locale="en_GB", day=DAY)


def lots(made: BatchRecord, colour: str = FIRST.colour) -> list[tuple[str, float | None]]:
    return [(lot.lot, lot.grams) for lot in made.lots if lot.colour == colour]


def test_yarn_of_one_lot_is_one_line_and_of_another_a_line_of_its_own() -> None:
    made = record(
        taken(FIRST.name, 100, lot="771"),
        taken(FIRST.name, 40, lot="802"),
        taken(FIRST.name, 60, lot="771", from_shelf=True),
    )
    assert lots(made) == [("771", 160), ("802", 40)]


def test_a_colour_of_two_names_is_one_colour_of_the_yarn() -> None:
    made = record(taken(FIRST.name, 100, lot="771"), taken("ground", 50, lot="771"))
    assert lots(made) == [("771", 150)]


def test_a_colour_of_which_nothing_was_told_is_there_without_a_lot() -> None:
    made = record()
    assert {lot.colour for lot in made.lots} == {colour.colour for colour in OFFER.colours}
    assert {(lot.lot, lot.grams) for lot in made.lots} == {("", None)}


def test_what_was_taken_back_or_is_of_no_colour_of_the_order_did_not_go_in() -> None:
    made = record(taken(FIRST.name, 100, lot="771"), Withdrawn(), taken("puce", 9), corrects={2: 1})
    assert lots(made) == [("", None)]


def test_what_is_not_measured_is_told_as_it_was_offered() -> None:
    plain, told = record(), record(width_cm=81, height_cm=99.5, weight_g=612)
    assert (plain.width_cm, plain.height_cm) == (OFFER.width_cm, OFFER.height_cm)
    assert (plain.weight_g, plain.measured, plain.weighed) == (OFFER.weight_g, False, False)
    assert (told.width_cm, told.height_cm, told.weight_g) == (81, 99.5, 612)
    assert (told.measured, told.weighed) == (True, True)


def test_it_bears_what_its_buyer_was_told() -> None:
    made = record()
    assert (made.care, made.cautions, made.yarns) == ("By hand.", OFFER.cautions, OFFER.yarns)
    assert (made.quantity, made.finished, made.makers_locale) == (OFFER.quantity, DAY, "en_GB")
    assert made.head == replace(made.head, title=OFFER.title, buyer=OFFER.buyer, day=DAY)


@pytest.mark.parametrize(
    ("asked", "place", "code"),
    [
        ({"finished": date(2026, 12, 2)}, "finished", MistakeCode.DAY_TO_COME),
        ({"width_cm": 80.0}, "height", MistakeCode.MISSING),
        ({"height_cm": 80.0}, "width", MistakeCode.MISSING),
        ({"width_cm": 0.0, "height_cm": 80.0}, "width", MistakeCode.NOT_ABOVE),
        ({"weight_g": 0.0}, "weight", MistakeCode.NOT_ABOVE),
        ({"weight_g": 1e7}, "weight", MistakeCode.TOO_LARGE),
    ],
)
def test_what_cannot_be_so_is_told_at_its_place(
    asked: dict[str, Any], place: str, code: MistakeCode
) -> None:
    with pytest.raises(Refused) as refusal:
        record(**asked)
    assert [(m.path, m.code) for m in refusal.value.mistakes] == [(place, code)]
