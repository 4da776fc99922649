"""A shopping list in words."""

from __future__ import annotations

from decimal import Decimal

from quoting.core.estimate.skeins import Bought
from quoting.core.making.shopping_lines import BuyLine, ForOrder, ShelfLine, ShoppingList
from quoting.core.workshop.stitches import Vocabulary
from quoting.core.workshop.yarns import PutUp
from quoting.wording import Speech
from quoting.wording.paper import Amounts, Facts, Listing, Paper, Sheet, Words
from quoting.wording.shopping import shopping_paper
from tests.examples import SMALL, TODAY, WOOL

BRITISH = Speech(locale="en_GB", vocabulary=Vocabulary.UK, currency="GBP")
AMERICAN = Speech(locale="en_US", vocabulary=Vocabulary.US, currency="USD")
PACK = PutUp(weight_g=100, length_m=200, price=Decimal("20.00"), pack=5)
OAT = BuyLine(
    yarn=WOOL,
    colour="oat",
    code="#d9c9a3",
    bought=(Bought(put_up=PACK, packs=1), Bought(put_up=SMALL, packs=2)),
    with_spare=(Bought(put_up=PACK, packs=1), Bought(put_up=SMALL, packs=3)),
    portions=(ForOrder(order=0, grams=300.0), ForOrder(order=1, grams=341.6)),
)
TEAL = ShelfLine(
    yarn=WOOL, colour="teal", code="#1f6f78", lot="12", portions=(ForOrder(order=1, grams=190),)
)
LIST = ShoppingList(shelf=(TEAL,), to_buy=(OAT,), there=((0, "teal"), (0, "rust")))
TITLES = ("Cot blanket", "Throw")


def paper(found: ShoppingList = LIST, speech: Speech = BRITISH, **changes: bool) -> Paper:
    return shopping_paper(found, TITLES, speech, maker="Ottermoor Blankets", day=TODAY, **changes)


def words(text: str) -> str:
    return " ".join(text.split())


def test_the_shelf_comes_first_with_what_is_taken_of_which_lot() -> None:
    shelf = paper().blocks[0]
    assert isinstance(shelf, Listing)
    assert (shelf.heading, shelf.ticks, shelf.codes) == ("From the shelf first", True, ("#1f6f78",))
    assert [tuple(map(words, row)) for row in shelf.rows] == [("teal, moor aran", "12", "190 g")]


def test_a_lot_without_a_number_is_said_to_have_none() -> None:
    bare = ShelfLine(yarn=WOOL, colour="teal", code="", lot="", portions=())
    shelf = paper(ShoppingList(shelf=(bare,))).blocks[0]
    assert isinstance(shelf, Listing)
    assert shelf.rows[0][1] == "without a number"


def test_packs_and_single_balls_have_a_row_each_and_a_place_for_their_lot() -> None:
    bought = paper().blocks[1]
    assert isinstance(bought, Listing)
    assert bought.heads == ("Colour", "Ball", "Lot", "How many", "Price")
    assert [tuple(map(words, row)) for row in bought.rows] == [
        ("oat, moor aran", "100 g, 200 m, pack of 5, at £20.00", "", "1", "£20.00"),
        ("oat, moor aran", "100 g, 200 m, at £4.60", "", "2", "£9.20"),
    ]


def test_what_a_spare_adds_is_told_before_it_is_asked_for_and_after() -> None:
    before, after = paper().blocks[2], paper(spare=True).blocks[2]
    assert isinstance(before, Amounts)
    assert [(row.name, row.amount) for row in before.rows] == [
        ("All of it", "£29.20"),
        ("A spare ball of each line would add", "£4.60"),
    ]
    assert isinstance(after, Amounts)
    assert [(row.name, row.amount) for row in after.rows] == [
        ("Balls needed", "£29.20"),
        ("A spare ball of each line", "£4.60"),
        ("All of it", "£33.80"),
    ]
    listing = paper(spare=True).blocks[1]
    assert isinstance(listing, Listing)
    assert [row[3] for row in listing.rows] == ["1", "3"]


def test_each_order_is_told_what_is_for_it() -> None:
    portions = paper().blocks[3]
    assert isinstance(portions, Facts)
    assert [(fact.name, words(fact.text)) for fact in portions.facts] == [
        ("Cot blanket", "oat 300 g"),
        ("Throw", "teal 190 g of lot 12, oat 342 g"),
    ]


def test_what_is_in_the_house_is_told_and_not_bought() -> None:
    notes = paper().blocks[-1]
    assert isinstance(notes, Words)
    assert notes.texts[-1] == "In the house already for Cot blanket: teal and rust."


def test_a_list_with_nothing_to_buy_says_so() -> None:
    notes = paper(ShoppingList()).blocks[-1]
    assert isinstance(notes, Words)
    assert notes.texts == ("Nothing has to be bought.",)


def test_american_makers_buy_skeins_by_color() -> None:
    american = paper(speech=AMERICAN)
    listing, notes = american.blocks[1], american.blocks[-1]
    assert isinstance(listing, Listing)
    assert listing.heads[:2] == ("Color", "Skein")
    assert isinstance(notes, Words)
    assert "skeins" in notes.texts[0]


def test_it_is_printed_on_what_its_makers_printer_holds() -> None:
    assert [paper(speech=speech).sheet for speech in (BRITISH, AMERICAN)] == [
        Sheet.A4,
        Sheet.LETTER,
    ]
