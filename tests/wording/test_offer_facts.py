"""What a buyer is told of a blanket: rounded as a maker would, whole, and nothing unpromised."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta
from decimal import Decimal

import pytest

from quoting.core.ground.measures import Units
from quoting.core.quote.offer import Offer, OfferedBorder, OfferedColour, offer_of
from quoting.core.quote.what_goes_in import GoesIn, Ingredient
from quoting.core.workshop.own_words import OwnWords
from quoting.core.workshop.stitches import Vocabulary
from quoting.wording import say_offer
from tests.examples import sample_quote

OFFER = replace(offer_of(sample_quote()), width_cm=79.7, height_cm=99.1, weight_g=528.4)


def said(**changes: object) -> dict[str, str]:
    """Return every fact that the sample's buyer is told, by its name."""
    offer = say_offer(replace(OFFER, **changes))  # type: ignore[arg-type]
    facts = (*offer.facts, *offer.days, *offer.changes, *offer.work.facts)
    names = [fact.name for fact in facts]
    assert len(names) == len(set(names))
    return {fact.name: fact.text.replace("\u00a0", " ") for fact in facts}


def notes(**changes: object) -> str:
    return " ".join(say_offer(replace(OFFER, **changes)).notes)  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("border", "within", "words"),
    [
        (None, None, "about 80 × 99 cm, border included"),
        ((OfferedBorder(colour="oat", rounds=2),), None, "about 80 × 99 cm, border included"),
        ((), None, "about 80 × 99 cm"),
        ((), 2.0, "about 80 × 99 cm; each side to within 2 cm"),
        (None, 1.5, "about 80 × 99 cm, border included; each side to within 1.5 cm"),
    ],
)
def test_a_size_is_whole_and_its_tolerance_is_told_where_it_is_promised(
    border: tuple[OfferedBorder, ...] | None, within: float | None, words: str
) -> None:
    assert said(border=border, size_within_cm=within)["Size"] == words


def test_in_inches_it_is_told_to_the_half() -> None:
    """79.7 cm are 31.38 in and 99.1 cm 39.02 in, at 2.54 cm to the inch (exact, by law)."""
    told = said(units=Units.INCHES, size_within_cm=2.54)
    assert told["Size"] == "about 31.5 × 39 in, border included; each side to within 1 in"
    assert told["Weight"] == "about 19 oz"


@pytest.mark.parametrize(
    ("stitch", "speaks", "name"),
    [
        ("hdc", Vocabulary.US, "half double crochet"),
        ("hdc", Vocabulary.UK, "half treble"),
        ("dc", Vocabulary.UK, "treble"),
        ("moss", Vocabulary.UK, "moss"),
    ],
)
def test_a_stitch_is_told_in_full_by_the_makers_vocabulary(
    stitch: str, speaks: Vocabulary, name: str
) -> None:
    """Common practice on either side of the Atlantic; `tests/published` has a source of it."""
    assert said(stitch=stitch, speaks=speaks)["Stitch"].startswith(name)


def test_a_pattern_is_told_with_what_it_is_like() -> None:
    told = said(stitch="moss", stitch_words="a dense, pebbled texture")
    assert told["Stitch"] == "moss – a dense, pebbled texture"


@pytest.mark.parametrize(
    ("weight_g", "words"), [(528.4, "about 530 g"), (1234.0, "about 1,230 g"), (2.0, "about 10 g")]
)
def test_a_weight_is_told_in_tens_of_grams(weight_g: float, words: str) -> None:
    assert said(weight_g=weight_g)["Weight"] == words


def test_of_several_the_weight_is_that_of_each() -> None:
    assert said(quantity=3)["Weight"] == "about 530 g each"


def test_a_border_is_told_part_by_part() -> None:
    border = (OfferedBorder(colour="oat", rounds=1), OfferedBorder(colour="teal", rounds=3))
    assert said(border=border)["Border"] == "1 round in oat, 3 rounds in teal"
    assert "Border" not in said(border=())


@pytest.mark.parametrize(
    ("late", "words"),
    [
        (-1, "20 March 2027: it comes in time"),
        (0, "20 March 2027: it comes in time"),
        (1, "20 March 2027: it comes 1 day later"),
        (12, "20 March 2027: it comes 12 days later"),
    ],
)
def test_whether_it_comes_by_the_day_wanted_is_told(late: int, words: str) -> None:
    wanted = date(2027, 3, 20)
    told = said(wanted_by=wanted, ready_by=wanted + timedelta(days=late))
    assert told["Wanted by"] == words
    assert "Wanted by" not in said(wanted_by=None)


def test_until_when_something_may_be_changed_is_told_only_where_the_maker_says_so() -> None:
    assert "May be changed" not in said()
    assert "until 1 day after you accept" in said(change_days=1)["May be changed"]
    assert "until 5 days after you accept" in said(change_days=5)["May be changed"]


def test_what_goes_into_it_is_told_rounded_but_for_what_is_counted() -> None:
    figures = {
        GoesIn.STITCHES: "10534",
        GoesIn.ROWS: "103",
        GoesIn.YARN: "1046",
        GoesIn.ENDS: "12",
        GoesIn.HOURS: "11.83",
    }
    told = said(goes_in=tuple(Ingredient(code=c, amount=Decimal(n)) for c, n in figures.items()))
    assert {name: told[name] for name in list(told)[-5:]} == {
        "Stitches": "10,534",
        "Rows": "103",
        "Length of yarn": "about 1,050 m",
        "Ends woven in": "about 12",
        "Work by hand": "about 12 hours",
    }


@pytest.mark.parametrize(
    ("hours", "words"),
    [("0.49", "1 hour"), ("12.49", "12 hours"), ("12.50", "13 hours"), ("13.50", "14 hours")],
)
def test_hours_are_told_whole_and_halves_upwards(hours: str, words: str) -> None:
    goes_in = (Ingredient(code=GoesIn.HOURS, amount=Decimal(hours)),)
    assert said(goes_in=goes_in)["Work by hand"] == f"about {words}"


def test_every_line_of_the_work_has_a_name() -> None:
    for code in GoesIn:
        (fact,) = say_offer(
            replace(OFFER, goes_in=(Ingredient(code=code, amount=Decimal("0.2")),))
        ).work.facts
        assert fact.name
        assert fact.text


def test_it_says_into_how_many_blankets() -> None:
    assert say_offer(OFFER).work.heading == "What goes into it"
    three = say_offer(replace(OFFER, quantity=3))
    assert three.work.heading == "What goes into all 3 blankets"


def test_size_is_said_to_differ_a_little_only_where_nothing_else_is_promised_of_it() -> None:
    assert "size may differ" in notes()
    assert "size may differ" not in notes(size_within_cm=2.0)
    assert "colours on a screen" in notes(size_within_cm=2.0)


def test_where_it_binds_the_buyer_is_told_of_the_law_where_she_lives() -> None:
    free = {"rows": tuple(replace(row, due=None) for row in OFFER.rows), "own_words": OwnWords()}
    assert "The law where you live" not in notes(**free)
    assert "The law where you live" in notes(**free | {"change_days": 3})
    assert "The law where you live" in notes(**free | {"own_words": OwnWords(terms="In advance.")})
    assert OFFER.waits_for_payment
    assert "The law where you live" in notes()


def test_forty_colours_are_all_named() -> None:
    colours = tuple(
        OfferedColour(name=f"colour {n}", yarn="moor aran", colour="oat", code="#d9c9a3")
        for n in range(40)
    )
    (fact,) = (fact for fact in say_offer(replace(OFFER, colours=colours)).facts if fact.colours)
    assert len(fact.colours) == len(fact.text.split(", ")) == 40


def test_an_offer_that_was_kept_before_still_says_what_it_said() -> None:
    """None of the newer facts are in it; of its border it says no more than it did."""
    old: Offer = replace(
        OFFER, border=None, goes_in=(), size_within_cm=None, change_days=None, stitch_words=""
    )
    told = say_offer(old)
    assert told.work.facts == told.changes == ()
    assert told.facts[0].text.endswith("border included")
