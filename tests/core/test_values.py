"""What a value refuses to be: each mistake has its place and its code, and all come at once."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date
from decimal import Decimal

import pytest

from quoting.core.ground.errors import Checks, Mistake, Refused
from quoting.core.ground.place import NOWHERE, at
from quoting.core.order.design import ColourSource, EndsBecome
from quoting.core.order.from_centre import FromCentre, RoundStripe
from quoting.core.order.in_rows import MAX_STRIPES, InRows, Section, Stripe
from quoting.core.order.order import Extra, Order
from quoting.core.workshop.exchange import ExchangeRate
from quoting.core.workshop.habits import Habits
from quoting.core.workshop.own_words import OwnWords
from quoting.core.workshop.rounds import Counting
from quoting.core.workshop.selling import Delivery, DeliveryBand, Deposit, Target
from quoting.core.workshop.stitches import Stitch
from quoting.core.workshop.swatches import Piece, Reading, Run
from quoting.core.workshop.timings import Timing
from quoting.core.workshop.workshop import Pattern
from quoting.core.workshop.yarns import PutUp
from tests.examples import (
    sample_design,
    sample_minutes,
    sample_order,
    sample_workshop,
    sample_yarn,
    section,
)

ONE = (Stripe(colour="oat"),)

CASES: list[tuple[str, Callable[[], object]]] = [
    ("repeats: share-and-repeats", lambda: Section(stripes=ONE, share=1, repeats=2)),
    ("stripes: missing", lambda: Section(stripes=())),
    ("repeats: too-small", lambda: Section(stripes=ONE, repeats=0)),
    ("rows: too-small", lambda: Stripe(colour="oat", rows=0)),
    ("colour: missing", lambda: Stripe(colour=" ")),
    ("sections: missing", lambda: sample_design(sections=())),
    ("sections: too-many", lambda: sample_design(sections=(section("oat"),) * 21)),
    ("sections: no-shares", lambda: sample_design(sections=(section("oat", share=0),))),
    ("width: not-above", lambda: sample_design(width_cm=0)),
    ("width: not-finite", lambda: sample_design(width_cm=float("nan"))),
    ("height: too-large", lambda: sample_design(height_cm=1000.1)),
    ("margin: one-target", Target),
    ("given: one-target", lambda: Target(margin=0.1, given=Decimal(5))),
    ("given: not-above", lambda: Target(given=Decimal(0))),
    ("share: share-or-yarn", Deposit),
    ("share: too-large", lambda: Deposit(share=1.01)),
    ("colour: missing", lambda: Extra(what="Fringe", yarn_m=5)),
    ("metres: missing", lambda: Extra(what="Fringe", colour="teal")),
    ("name: basic-stitch-name", lambda: Pattern(name="dc", like=Stitch.DC)),
    ("stitches: too-small", lambda: Timing(stitch="hdc", stitches=0, minutes=5)),
    ("turn: missing", lambda: sample_minutes(turn=())),
    ("length: not-above", lambda: Run(stitches=5, length_cm=0)),
    ("length: too-small", lambda: Run(stitches=5, length_cm=1e-300)),
    ("rows: not-above", lambda: Reading(stitches=5, width_cm=5, rows=0, height_cm=5)),
    ("width: too-small", lambda: Reading(stitches=5, width_cm=1e-300, rows=5, height_cm=5)),
    ("weight: too-small", lambda: Piece(stitches=5, rows=5, weight_g=1e-300)),
    ("grams: too-small", lambda: PutUp(weight_g=1e-300, length_m=200, price=Decimal(1))),
    ("metres: too-small", lambda: PutUp(weight_g=100, length_m=1e-300, price=Decimal(1))),
    ("minutes: too-small", lambda: Timing(stitch="hdc", stitches=5, minutes=1e-300)),
    ("workshop.hours_per_week: too-small", lambda: sample_workshop(hours_per_week=1e-300)),
    ("put_ups: missing", lambda: sample_yarn(put_ups=())),
    ("colours.oat: not-a-colour-code", lambda: sample_yarn(colours={"oat": "red"}, stock=())),
    ("stock.1.colour: unknown-colour", lambda: sample_yarn(colours={"teal": "#000000"})),
    ("workshop.currency: unknown-currency", lambda: sample_workshop(currency="DEM")),
    ("timings: missing", lambda: sample_workshop(timings=())),
    ("yarns.2.name: given-twice", lambda: sample_workshop(yarns=(sample_yarn(), sample_yarn()))),
    ("like: unknown-stitch", lambda: Pattern(name="cord", like=Stitch.CH)),
    ("order.quantity: too-small", lambda: sample_order(quantity=0)),
    ("order.title: control-character", lambda: sample_order(title="Cot\x00blanket")),
    ("order.pays_in: unknown-currency", lambda: sample_order(pays_in="DEM")),
    (
        "currency: unknown-currency",
        lambda: ExchangeRate(currency="DEM", rate=Decimal(2), day=date(2026, 11, 25)),
    ),
]


@pytest.mark.parametrize(("said", "make"), CASES, ids=[said for said, _ in CASES])
def test_a_value_that_cannot_be_is_refused_at_its_place(
    said: str, make: Callable[[], object]
) -> None:
    with pytest.raises(Refused) as refused:
        make()
    assert said in str(refused.value).split("; ")


def test_all_mistakes_come_at_once() -> None:
    with pytest.raises(Refused) as refused:
        sample_design(width_cm=-1, height_cm=-1, stitch="")
    assert [mistake.path for mistake in refused.value.mistakes] == ["width", "height", "stitch"]


def test_a_mistake_is_placed_from_further_out() -> None:
    def refuse_both() -> None:
        raise Refused(Mistake(at("width"), "too-large"), Mistake(NOWHERE, "missing"))

    checks = Checks()
    with checks.under("blanket"):
        refuse_both()
    assert [mistake.path for mistake in checks.mistakes] == ["blanket.width", "blanket"]


JOINED = [
    "\u0645\u06cc\u200c\u062e\u0648\u0627\u0647\u0645",
    "\U0001f441\ufe0f\u200d\U0001f5e8\ufe0f teal",
]
"""A Persian word with a zero-width non-joiner, and signs joined by a zero-width joiner."""


@pytest.mark.parametrize("name", JOINED)
def test_a_name_may_have_joiners_inside_words_and_joined_signs(name: str) -> None:
    assert Stripe(colour=name).colour == name


@pytest.mark.parametrize("space", ["\u00a0", "\u202f"])
def test_a_text_may_have_the_spaces_of_print_and_a_name_has_none(space: str) -> None:
    """Names are told apart by their letters, and these spaces look like any other."""
    text = f"Lavage{space}: à la main"
    assert OwnWords(care=text).care == text
    with pytest.raises(Refused) as refused:
        Stripe(colour=text)
    (mistake,) = refused.value.mistakes
    assert (mistake.path, mistake.code) == ("colour", "control-character")


@pytest.mark.parametrize(
    ("name", "position"), [("\u200d", 1), ("\u200cteal", 1), ("teal\u200d", 5), ("a \u200db", 3)]
)
def test_a_joiner_that_joins_nothing_is_told_as_it_does_not_show(name: str, position: int) -> None:
    with pytest.raises(Refused) as refused:
        Stripe(colour=name)
    (mistake,) = refused.value.mistakes
    assert (mistake.path, mistake.code) == ("colour", "control-character")
    assert mistake.facts["position"] == position


def test_notes_may_have_lines() -> None:
    order: Order = sample_order(notes="No wool:\n\tallergy")
    assert "\n" in order.notes


def test_a_colour_comes_from_the_designs_yarn_unless_it_says_otherwise() -> None:
    design = sample_design()
    assert design.source_of("cream") == ColourSource(yarn="moor aran", colour="oat")
    assert design.source_of("teal") == ColourSource(yarn="moor aran", colour="teal")


def test_a_delivery_band_carries_its_own_weight_and_no_more() -> None:
    money = Decimal(4)
    band = DeliveryBand(to="GB", up_to_g=400, charged=money, paid=money)
    delivery = Delivery(bands=(band,))
    assert delivery.band_for("GB", 400) == band
    assert delivery.band_for("GB", 400.5) is None
    assert delivery.band_for("NZ", 100) is None
    assert delivery.band_for(None, 100) is None


def test_rows_before_and_after_the_sections_are_bounded_as_they_are() -> None:
    many = (Stripe(colour="teal"),) * (MAX_STRIPES + 1)
    with pytest.raises(Refused) as refused:
        InRows(sections=(Section(stripes=many[:1]),), first_rows=many, last_rows=many)
    assert [m.path for m in refused.value.mistakes] == ["first_rows", "last_rows"]


def test_a_section_has_no_more_stripes_than_a_maker_would_type() -> None:
    many = (Stripe(colour="teal"),) * (MAX_STRIPES + 1)
    with pytest.raises(Refused) as refused:
        Section(stripes=many)
    assert [(m.path, m.code) for m in refused.value.mistakes] == [("stripes", "too-many")]


def test_ends_are_enclosed_in_a_border_or_not_at_all() -> None:
    with pytest.raises(Refused) as refused:
        sample_design(border=(), ends=EndsBecome.ENCLOSED)
    assert [(m.path, m.code) for m in refused.value.mistakes] == [("ends", "no-border-to-enclose")]


def test_the_key_of_a_place_is_the_last_that_is_no_line() -> None:
    assert at("blanket", "sections", 2, "stripes", 1).key == "stripes"
    assert NOWHERE.key == ""


def test_stripes_from_the_centre_are_bounded_as_those_in_rows_are() -> None:
    many = (RoundStripe(colour="teal"),) * (MAX_STRIPES + 1)
    with pytest.raises(Refused) as refused:
        FromCentre(counting=Counting.SOLID, stripes=many)
    assert [(m.path, m.code) for m in refused.value.mistakes] == [("stripes", "too-many")]


def test_a_reserve_is_by_confidence_or_by_allowance() -> None:
    Habits(allowance=0.1)
    with pytest.raises(Refused) as refused:
        Habits(allowance=0.1, confidence=0.9)
    assert [m.code for m in refused.value.mistakes] == ["confidence-or-allowance"]
