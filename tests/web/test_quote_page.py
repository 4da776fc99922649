"""The buyer's page says each thing once, beside its own name, and every day in its own place."""

from __future__ import annotations

import re
from dataclasses import replace
from datetime import date, timedelta
from decimal import Decimal

import pytest

from quoting.core.ground.measures import Units
from quoting.core.order.order import Terms
from quoting.core.quote.quote import Quote, quote_order
from quoting.core.workshop.exchange import ExchangeRate
from quoting.core.workshop.own_words import OwnWords
from quoting.core.workshop.selling import Deposit, Target, Tax, TaxShown
from quoting.core.workshop.workshop import Workshop
from quoting.web import create_app
from quoting.web.orders.quote_page import quote_page
from quoting.web.shop import open_shop
from quoting.wording import Speech, speech_of
from tests.examples import TODAY, sample_workshop
from tests.web.conftest import ORDER, maker_in
from tests.web.pages import Node, Page

SHOP = sample_workshop()
THIRD = replace(SHOP.pricing, deposit=Deposit(share=0.3))
"""A deposit that is not the half of the total: nobody can take it for the balance."""

EURO = ExchangeRate(currency="EUR", rate=Decimal("1.17"), day=TODAY - timedelta(days=2))
DAY = re.compile(r"\d{1,2} (?:November|December|January|February|March) \d{4}")


def offered(workshop: Workshop, **typed: str) -> Page:
    """Return the quote's page of the sample order in a workshop."""
    return maker_in(workshop).send("/quote", **typed)


def rows_of(page: Page) -> dict[str, str]:
    """Return what stands beside each name in the offer."""
    table = next(page.root.all("table"))
    rows = [[c.text for c in row.all(lambda n: n.tag in {"th", "td"})] for row in table.all("tr")]
    assert len(rows) == len({row[0] for row in rows})
    return {row[0]: row[-1] for row in rows}


def facts_of(page: Page) -> dict[str, str]:
    """Return what stands beside each name under the offer."""
    terms, said = ([n.text for n in page.root.all(tag)] for tag in ("dt", "dd"))
    return dict(zip(terms, said, strict=True))


def beginning(rows: dict[str, str], name: str) -> str:
    """Return what stands beside the one name that begins so."""
    (found,) = (value for row, value in rows.items() if row.startswith(name))
    return found


def spaced(words: str) -> str:
    return " ".join(words.split())


def reckoned(workshop: Workshop, **changes: object) -> tuple[Quote, Speech]:
    order = replace(ORDER, **changes)  # type: ignore[arg-type]
    return quote_order(order, workshop, today=TODAY), speech_of(workshop)


def test_a_deposit_that_is_not_half_is_beside_its_own_name_and_the_balance_beside_its() -> None:
    shop = replace(SHOP, pricing=THIRD)
    (quote, say), rows = reckoned(shop), rows_of(offered(shop))
    price = quote.price
    assert price.deposit < price.balance
    assert beginning(rows, "Deposit") == say.money(price.deposit)
    assert beginning(rows, "Balance") == say.money(price.balance)
    assert beginning(rows, "Total") == say.money(price.total)


def test_in_the_buyers_currency_too_and_the_two_make_up_its_total() -> None:
    """At a given price: (200 + 5) × 1.17 is 239.85, and of 61.50 it is 71.955, so 71.96."""
    shop = replace(SHOP, pricing=THIRD, exchange={"EUR": EURO})
    rows = rows_of(offered(shop, order__pays_in="EUR", price__given="200"))
    assert beginning(rows, "Total in EUR") == "€239.85"
    assert rows["Deposit in EUR"] == "€71.96"
    assert rows["Balance in EUR"] == "€167.89"
    assert (rows["Total"], beginning(rows, "Deposit, ")) == ("£205.00", "£61.50")


def test_without_a_deposit_none_is_named_and_the_work_waits_for_none() -> None:
    shop = replace(SHOP, pricing=replace(THIRD, deposit=None), exchange={"EUR": EURO})
    page = offered(shop, order__pays_in="EUR")
    assert not [row for row in rows_of(page) if row.startswith(("Deposit", "Balance"))]
    assert "deposit" not in page.root.text.lower()


def test_work_that_waits_for_the_deposit_is_said_to() -> None:
    assert "deposit has come" in offered(replace(SHOP, pricing=THIRD)).root.text


def test_the_day_to_reply_by_is_the_last_on_which_the_quote_is_valid() -> None:
    """The workshop's quotes are valid for 21 days: of 25 November, until 16 December."""
    page = offered(SHOP)
    (asked,) = (n.text for n in page.root.all("p") if n.text.startswith("To accept"))
    assert DAY.findall(asked) == ["16 December 2026"]
    assert facts_of(page)["Valid until"] == "16 December 2026"


def test_the_day_of_the_quote_is_in_its_head_and_beside_the_day_it_comes() -> None:
    (quote, say), page = reckoned(SHOP), offered(SHOP)
    head = next(page.root.all("header"))
    assert DAY.findall(head.text) == ["25 November 2026"]
    days = DAY.findall(facts_of(page)["With you by"])
    assert days == [spaced(say.day(quote.ready_by)), "25 November 2026"]
    assert len({quote.ready_by, quote.day, quote.valid_until, date(2027, 3, 20)}) == 4


def test_the_page_is_titled_and_headed_by_the_number_the_title_the_maker_and_the_buyer() -> None:
    (quote, _), page = reckoned(SHOP), offered(SHOP)
    (title,) = (n.text for n in page.root.all("title") if "Quote" in n.text)
    assert (quote.number in title, ORDER.title in title) == (True, True)
    head = next(page.root.all("header"))
    assert page.headings[0] == ORDER.title
    for words in ("Ottermoor Blankets", f"Quote {quote.number}", "for Rosalind Quill"):
        assert words in head.text
    (asked,) = (n.text for n in page.root.all("p") if n.text.startswith("To accept"))
    assert quote.number in asked


def test_a_quote_for_nobody_in_particular_names_nobody() -> None:
    head = next(offered(SHOP, order__buyer="").root.all("header"))
    assert " for " not in head.text


def test_size_yarn_colours_and_what_comes_with_it_are_beside_their_names() -> None:
    (quote, say), page = reckoned(SHOP), offered(SHOP)
    facts = facts_of(page)
    assert (say.size(quote.plan.width_cm, quote.plan.height_cm)) == "79.7 × 99.1\u00a0cm"
    assert facts["Size"] == "about 80 × 99 cm, border included"
    assert facts["Stitch"] == "half double crochet"
    assert facts["Border"] == "1 round in oat"
    assert facts["Yarn"] == "moor aran (100 % wool)"
    assert sorted(facts["Colours"].split()) == ["oat", "rust", "teal"]
    assert facts["With it"] == "Gift box"
    assert "99 × 80" not in page.root.text


def test_each_colour_has_a_dot_of_its_own_colour() -> None:
    (colours,) = (n for n in offered(SHOP).root.all("dd") if n.attributes.get("class") == "colours")
    dots = {
        span.text: circle.attributes["fill"]
        for span in colours.all("span")
        for circle in span.all("circle")
    }
    assert dots == {"oat": "#d9c9a3", "teal": "#1f6f78", "rust": "#a8512c"}


def test_the_page_has_the_blankets_drawing() -> None:
    (figure,) = offered(SHOP).root.all("figure")
    assert [n.attributes["role"] for n in figure.all("svg")] == ["img"]


def test_delivery_and_the_blanket_are_beside_their_names() -> None:
    (quote, say), rows = reckoned(SHOP), rows_of(offered(SHOP))
    assert rows["The blanket"] == say.money(quote.price.price)
    assert rows["Delivery"] == "£5.00"


def test_several_things_with_it_are_named_one_by_one() -> None:
    maker = maker_in(SHOP)
    fields = maker.send("/", do="add extras").typed() | {"extras.2.what": "Card"}
    page = Page(maker.client.post("/quote", data=fields).text)
    assert facts_of(page)["With it"] == "Gift box, Card"


@pytest.mark.parametrize(
    ("shown", "name", "tax", "total"),
    [
        (TaxShown.INCLUDED, "Tax inside it, 20%", "£34.17", "£205.00"),
        (TaxShown.ADDED, "Tax, 20%", "£41.00", "£246.00"),
    ],
)
def test_tax_is_added_above_the_total_or_told_under_it(
    shown: TaxShown, name: str, tax: str, total: str
) -> None:
    """Of 200 and 5 of delivery: 205 / 6 inside it, or a fifth of 205 added to it."""
    rows = rows_of(
        offered(
            replace(SHOP, tax=Tax(registered=True, rate=0.2, shown=shown)),
            price__given="200",
        )
    )
    assert (rows[name], rows["Total"]) == (tax, total)
    assert len([row for row in rows if row.startswith("Tax")]) == 1
    order = list(rows)
    assert (order.index(name) < order.index("Total")) is (shown is TaxShown.ADDED)


def test_a_rush_is_between_the_listed_price_and_the_price_together() -> None:
    quote, say = reckoned(SHOP, terms=Terms(rush=0.1))
    rows = rows_of(offered(SHOP, price__rush="10"))
    price = quote.price
    assert list(rows)[:3] == ["The blanket", "Rush, 10%", "Together"]
    assert rows["The blanket"] == say.money(price.listed)
    assert rows["Together"] == say.money(price.price)
    assert rows["Rush, 10%"] == say.money(price.price - price.listed)


def test_several_blankets_are_offered_at_the_price_of_each_and_of_all() -> None:
    quote, say = reckoned(SHOP, quantity=3)
    rows = rows_of(offered(SHOP, order__quantity="3"))
    each, together = say.money(quote.price.each), say.money(quote.price.price)
    assert rows[f"3 blankets, each {each}"] == together
    assert quote.price.each * 3 == quote.price.price


def test_a_price_that_was_given_is_the_price_of_the_page() -> None:
    given = Terms(target=Target(given=Decimal(321)))
    quote, _ = reckoned(SHOP, terms=given)
    assert quote.price.price == 321
    assert rows_of(offered(SHOP, price__given="321"))["The blanket"] == "£321.00"


def test_what_only_the_maker_is_to_heed_is_not_told_to_the_buyer() -> None:
    """Some caution is for each of them; what is for her hands or her law is not the buyer's."""
    noted = [n.text for n in offered(SHOP).root.all("p") if n.attributes.get("class") == "caution"]
    assert noted
    for words in ("breaks", "under three", "licensed"):
        assert not any(words in said for said in noted), words
    assert all(said.startswith("Please note:") for said in noted)


def test_work_that_is_paid_for_at_once_waits_for_all_of_it() -> None:
    page = offered(replace(SHOP, pricing=replace(THIRD, deposit=Deposit(share=1.0))))
    assert "All of it, when you accept" in rows_of(page)
    assert "deposit" not in page.root.text.lower()
    assert "Work begins when the payment has come." in page.root.text


def test_a_quote_is_shown_as_its_own_workshop_was_whatever_is_served_today() -> None:
    """Tax, currency, units, language and name of a workshop that has changed since."""
    own = replace(SHOP, tax=Tax(registered=True, rate=0.2))
    quote, _ = reckoned(own)
    today = replace(SHOP, name="Fen Throws", locale="de_DE", currency="EUR", units=Units.INCHES)
    shown = []
    for served in (own, today):
        app = create_app(open_shop(served, today=lambda: TODAY))
        with app.test_request_context():
            shown.append(quote_page(quote))
    assert shown[0] == shown[1]
    assert rows_of(Page(shown[1]))["Tax inside it, 20%"].startswith("£")


def test_what_the_maker_says_herself_is_shown_as_she_typed_it() -> None:
    words = OwnWords(
        contact="hello@ottermoor.example",
        address="The Old Wool Store\nOttermoor",
        greeting="Thank you for asking.\n\n<b>This</b> is what I can make.",
        care="Wash by hand.",
        terms="Paid by bank transfer.\n  The deposit is for the yarn.",
    )
    page = offered(replace(SHOP, own_words=words))
    typed = ["".join(map(str, n.inside)) for n in page.root.all(is_as_typed)]
    assert typed == [words.address, words.contact, words.greeting, words.care, words.terms]
    assert page.headings[-2:] == ["Care", "Terms of sale"]
    assert "as the yarn’s label says" not in page.root.text


def test_nothing_stands_where_the_maker_says_nothing_herself() -> None:
    page = offered(SHOP)
    assert not list(page.root.all(is_as_typed))
    assert len(page.headings) == 1
    assert "wash as the yarn’s label says" in page.root.text
    assert "is sent with" not in page.root.text
    assert "What goes into" not in page.root.text
    assert "May be changed" not in facts_of(page)


def is_as_typed(node: Node) -> bool:
    return node.attributes.get("class") == "as-typed"
