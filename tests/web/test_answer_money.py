"""Costs, price, days and cautions beside the order form, each by its heading or its name."""

from __future__ import annotations

import pytest

from quoting.core.ground.cautions import Reader
from quoting.wording import caution_sentence, line_what
from quoting.wording.caution_places import SAID_AT, CautionPlace
from tests.examples import TODAY
from tests.web.conftest import maker_in
from tests.web.pages import Page
from tests.web.read_answer import QUOTE, SAY, SHOP, answered, part, plain, told


@pytest.fixture(scope="module")
def page() -> Page:
    return answered()


def test_each_cost_line_has_its_quantity_its_rate_and_its_amount(page: Page) -> None:
    head, *lines = page.table("Rate")
    assert head == ["What", "Quantity", "Rate", "GBP"]
    rows = {row[0]: row for row in lines}
    for line in QUOTE.lines:
        row = rows[plain(line_what(line, SAY))]
        assert row[-1] == SAY.bare_money(line.amount)
        assert row[1].split()[0].replace(",", "") in {
            f"{line.quantity.normalize():f}",
            f"{line.quantity:.2f}",
        }
    price = QUOTE.price
    assert rows["Tax"][-1] == SAY.bare_money(price.tax)
    (profit,) = (row for name, row in rows.items() if name.startswith("Profit"))
    assert profit[-1] == SAY.bare_money(price.profit)
    assert SAY.percent(price.margin) in profit[0]
    assert rows["Cost"][-1] == SAY.bare_money(price.cost)
    assert rows["The buyer pays in all"][-1] == SAY.bare_money(price.total)


def test_costs_stand_over_their_sum_and_fees_under_it(page: Page) -> None:
    names = [row[0] for row in page.table("Rate")[1:]]
    fees = [name for name in names if name.startswith("Card payment")]
    assert fees
    assert all(names.index(name) > names.index("Cost") for name in fees)
    assert names[-1] == "The buyer pays in all"
    assert names.index("Making") < names.index("Cost") < names.index("Tax")


def test_price_and_an_hours_earnings_open_to_their_sums(page: Page) -> None:
    price = QUOTE.price
    opened = {next(d.all("summary")).text: d.text for d in part(page, "price").all("details")}
    assert set(opened) == {
        f"Price {SAY.money(price.price)}",
        f"An hour earns {SAY.money(price.earned_per_hour)}",
    }
    sums = "".join(opened.values())
    assert f"{SAY.bare_money(price.tax)} tax" in sums
    assert f"{SAY.bare_money(price.profit)} profit" in sums
    assert "A margin of 15%" in sums
    assert f"({SAY.bare_money(price.profit)} + {SAY.bare_money(price.own_pay)})" in sums


def test_what_the_buyer_pays_in_her_currency_is_told_with_rate_and_cushion(page: Page) -> None:
    assert QUOTE.price.buyer_total is not None
    said = f"The buyer pays {SAY.money(QUOTE.price.buyer_total, 'EUR')} in all: 1.17 for 1 GBP"
    assert said in part(page, "price").text
    assert "2% against its moving" in part(page, "price").text


@pytest.mark.parametrize(("quantity", "heading"), [("1", "For one, GBP"), ("3", "For all 3, GBP")])
def test_the_price_for_all_is_headed_by_how_many_they_are(quantity: str, heading: str) -> None:
    page = maker_in(SHOP).send("/answer", order__quantity=quantity, order__pays_in="EUR")
    head, *_ = page.table("Each, GBP")
    assert head == ["Price", "Each, GBP", heading]


# -- days and cautions -----------------------------------------------------------------------------


def test_days_are_said_each_for_what_it_is(page: Page) -> None:
    said = next(part(page, "days").all("p")).text
    ready, valid = said.split("Quote ")
    assert plain(SAY.day(QUOTE.ready_by)) in ready
    assert "at 12 hours a week" in ready
    assert valid.startswith(QUOTE.number)
    assert plain(SAY.day(QUOTE.valid_until)) in valid


def test_each_caution_is_told_once_and_the_buyers_as_the_buyers(page: Page) -> None:
    cautions = [
        n.text for n in page.with_id("answer").all("p") if n.attributes.get("class") == "caution"
    ]
    word = {Reader.BUYER: "For the buyer", Reader.MAKER: "Note"}
    expected = {
        f"{word[each.reader]}: {plain(caution_sentence(each, SAY))}"
        for each in QUOTE.cautions
        if SAID_AT.get(each.code) is not CautionPlace.GENERAL
    }
    assert set(cautions) == expected
    assert len(cautions) == len(expected)


@pytest.mark.parametrize(
    ("code", "name"),
    [
        ("many-ends", "ends"),
        ("wrong-edge", "ends"),
        ("one-timing", "hours"),
        ("estimated-yarn", "yarn"),
        ("baby-loose-bedding", "advice"),
        ("baby-ends", "advice"),
    ],
)
def test_a_caution_stands_in_the_section_that_it_is_about(code: str, name: str, page: Page) -> None:
    (caution,) = (each for each in QUOTE.cautions if each.code == code)
    sentence = plain(caution_sentence(caution, SAY))
    assert any(sentence in each for each in told(page, name))


def test_general_advice_stands_once_at_the_end_and_in_no_border(page: Page) -> None:
    assert page.headings[-1] == "Advice"
    general = [each for each in QUOTE.cautions if SAID_AT.get(each.code) is CautionPlace.GENERAL]
    plainly = [n.text for n in part(page, "advice").all("p") if n.attributes["class"] == "advice"]
    assert plainly == [plain(caution_sentence(each, SAY)) for each in general]
    assert len(plainly) == 2


def test_many_ends_have_a_button_to_fewer(page: Page) -> None:
    assert [b.text for b in part(page, "ends").all("button")] == ["Fewer ends…"]


# -- what is always in sight, and what is printed --------------------------------------------------


def test_the_figures_in_sight_lead_to_their_sections(page: Page) -> None:
    links = {a.text: a.attributes["href"] for a in page.with_id("figures").all("a")}
    assert links == {
        "Price": "#h-price",
        "Hours": "#h-hours",
        "Skeins": "#h-yarn",
        "Ends to weave": "#h-ends",
        "An hour earns": "#h-price",
        "Ready by": "#h-days",
    }
    hours = QUOTE.estimate.hours
    assert page.figure("Hours") == plain(
        f"{SAY.hours(hours.total)} {SAY.hours_range(hours.low, hours.high)}"
    )
    assert page.figure("Price") == SAY.money(QUOTE.price.price)


def test_on_paper_the_answer_is_headed_by_the_quote_and_the_buyer(page: Page) -> None:
    head = next(page.with_id("figures").all("header")).text
    assert head == plain(
        f"{QUOTE.order.title} Quote {QUOTE.number} of {SAY.day(TODAY)} for Rosalind Quill"
    )


def test_without_an_answer_the_figures_are_not_known_and_the_page_says_what_to_do() -> None:
    blank = maker_in(SHOP).open("/blank")
    assert blank.figure("Price") == "– not known yet"
    assert "Fill in a size" in blank.with_id("answer").text
    wrong = maker_in(SHOP).send("/answer", blanket__width="wide")
    assert "No answer yet" in wrong.with_id("answer").text
    assert wrong.figure("Hours") == "– not known yet"
