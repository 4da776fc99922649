"""The Sizes page, as a person reads it."""

from __future__ import annotations

from decimal import Decimal

from quoting.core.ground.measures import Units
from quoting.core.price.cost_lines import LineKind
from quoting.core.weighing.comparison import compare_sizes
from quoting.wording import rule_words, verdict
from tests.examples import TODAY, sample_workshop
from tests.web.asked_sizes import PRICES, SAY, SIX, TYPED, ask, compare, price_of, words
from tests.web.conftest import ORDER, Maker, maker_in
from tests.web.pages import Page


def test_the_bar_leads_to_the_sizes_of_the_order_at_hand(maker: Maker) -> None:
    page = maker.open("/sizes")
    assert page.headings[:2] == ["Sizes", "Side by side"]
    assert ORDER.title in page.root.text
    current = [a.text for a in page.root.all("a") if a.attributes.get("aria-current") == "page"]
    assert current == ["Sizes"]


def test_every_size_shows_what_its_quote_says(maker: Maker) -> None:
    page = maker.open("/sizes")
    first, more = page.table("Hours"), page.table("Skeins")
    head, *rows = [one + other for one, other in zip(first, more, strict=True)]
    assert len(rows) == len(SIX)
    for row, compared in zip(rows, compare().sizes, strict=True):
        shown, quote = dict(zip(head, row, strict=True)), compared.quote
        hours, price = quote.estimate.hours, quote.price
        assert shown["Size asked"].removesuffix(" as ordered") == str(compared.size)
        assert shown["Comes out, cm"] == words(
            f"{SAY.bare_length(quote.plan.width_cm)} × {SAY.bare_length(quote.plan.height_cm)}"
        )
        assert shown["Hours"] == words(
            f"{SAY.hours(hours.total)} {SAY.hours_range(hours.low, hours.high)}"
        )
        assert shown["Stitches"] == str(quote.plan.stitches)
        assert shown["Rows"] == str(len(quote.plan.rows))
        assert shown["Ends"] == str(quote.estimate.ends)
        assert shown["Skeins"] == str(quote.estimate.skeins)
        assert shown["Price, GBP"] == SAY.bare_money(price.price)
        assert shown["Cost"] == SAY.bare_money(price.cost)
        assert shown["Profit"] == SAY.bare_money(price.profit)
        assert shown["Buyer pays in all"] == SAY.bare_money(price.total)
        assert shown["An hour earns"] == SAY.bare_money(price.earned_per_hour)
        assert shown["Price for 100 cm²"] == SAY.bare_money(compared.price_per_100_cm2)


def test_at_a_target_no_size_is_said_to_pay_best(maker: Maker) -> None:
    page = maker.open("/sizes")
    assert verdict(compare(), SAY) in page.with_id("answer").text
    assert "pays best" not in page.with_id("answer").text


def test_at_given_prices_one_sentence_says_which_pays_best_and_why(maker: Maker) -> None:
    at_prices = compare(prices=PRICES)
    page = ask(maker, asks="prices", **TYPED)
    assert words(verdict(at_prices, SAY)) in page.with_id("answer").text
    assert at_prices.best is not None
    tagged = [row[0] for row in page.table("Size asked") if "pays best" in row[0]]
    assert tagged == [f"{SIX[at_prices.best]} pays best"]


def test_a_size_that_pays_best_but_less_than_her_hour_is_not_praised(maker: Maker) -> None:
    poor = {size: price / 2 for size, price in PRICES.items()}
    less = "That is less than the £14.00 that your own pay comes to: ask more for each size."
    typed = {field: str(Decimal(price) / 2) for field, price in TYPED.items()}
    assert words(less) in ask(maker, asks="prices", **typed).with_id("answer").text
    assert verdict(compare(prices=poor), SAY).endswith(less)
    assert "less than the" not in verdict(compare(prices=PRICES), SAY)


def test_one_size_is_compared_with_no_other() -> None:
    (cot, *_) = SIX
    prices = {cot: PRICES[cot]}
    one = compare_sizes(ORDER, sample_workshop(), [cot], today=TODAY, prices=prices)
    assert "there is no other size to compare it with." in verdict(one, SAY)
    assert "pays best" not in verdict(one, SAY)


def test_the_charts_show_every_price_and_every_hour_of_the_table(maker: Maker) -> None:
    charts = [svg.text for svg in maker.open("/sizes").root.all("svg")]
    for compared in compare().sizes:
        price = compared.quote.price
        making = SAY.money(price.amount(LineKind.MAKING))
        assert f"{compared.size}, Making: {making}" in charts[0]
        assert f"{compared.size}: {SAY.money(price.earned_per_hour)}" in charts[1]
    assert "your pay, £14.00" in charts[1]


def test_each_rule_of_thumb_says_what_it_would_pay_an_hour(maker: Maker) -> None:
    head, _, *rows = maker.open("/sizes").table("Three times the materials")
    compared = compare().sizes
    assert head[1:] == [rule_words(rule.rule, SAY) for rule in compared[0].rules]
    for row, one in zip(rows, compared, strict=True):
        figures = [(SAY.bare_money(r.price), SAY.bare_money(r.earned_per_hour)) for r in one.rules]
        assert row[1:] == [text for pair in figures for text in pair]


def test_a_size_that_cannot_be_made_is_left_out_with_the_reason(maker: Maker) -> None:
    page = ask(maker, own__1__size="1 x 1 cm")
    assert "Left out" in page.headings
    left_out = next(s.text for s in page.root.all("section") if "Left out" in s.text[:10])
    assert "1 × 1 cm : This is too narrow" in left_out
    assert len(page.table("Size asked")) == 1 + len(SIX)


def test_a_size_without_a_price_waits_and_the_others_are_compared(maker: Maker) -> None:
    page = ask(maker, asks="prices", ordered__price="240")
    assert "No price yet for Lovey, Pram or car seat" in page.root.text
    assert [row[0] for row in page.table("Size asked")[1:]] == ["Cot as ordered pays best"]


def test_without_any_price_the_page_asks_for_some(maker: Maker) -> None:
    answer = ask(maker, asks="prices").with_id("answer").text
    assert answer.startswith("Type a price beside each size")


def test_without_any_size_the_page_asks_for_one(maker: Maker) -> None:
    fields = {n: t for n, t in maker.open("/sizes").typed().items() if not n.endswith("take")}
    page = Page(maker.client.post("/sizes", data=fields).text)
    assert page.with_id("answer").text.startswith("Tick a size")


def test_the_answer_that_follows_is_that_of_the_page(maker: Maker) -> None:
    page = ask(maker, budget="250", own__1__size="90x90")
    followed = ask(maker, "/sizes/answer", budget="250", own__1__size="90x90")
    assert followed.with_id("answer").text == page.with_id("answer").text
    assert followed.with_id("said").text == "Read as 90 × 90 cm"


def test_the_price_of_a_size_that_is_not_ticked_waits_in_its_field(maker: Maker) -> None:
    sent = maker.open("/sizes").typed() | {name.replace("__", "."): p for name, p in TYPED.items()}
    del sent[price_of("Cot").replace("price", "take")]
    sent |= {"asks": "prices", price_of("Queen bed (US, 60 x 80 in)"): "cheap"}
    page = Page(maker.client.post("/sizes", data=sent).text)
    assert len(page.table("Size asked")) == 1 + len(SIX) - 1
    assert page.typed()[price_of("Cot")] == "240"
    assert page.typed()[price_of("Queen bed (US, 60 x 80 in)")] == "cheap"


def test_sizes_are_typed_in_the_makers_own_notation() -> None:
    maker = maker_in(sample_workshop(locale="de_DE"))
    page = ask(maker, own__1__size="70,5 x 90")
    assert page.said_of("own.1.size") == "Read as 70,5 × 90 cm"
    assert "70,5 × 90 cm" in [row[0] for row in page.table("Size asked")]


def test_a_size_with_a_point_for_a_comma_is_read_and_echoed_where_it_can_mean_one_thing() -> None:
    maker = maker_in(sample_workshop(locale="de_DE"))
    page = ask(maker, own__1__size="0.9 x 1.2 m")
    assert page.said_of("own.1.size") == "Read as 90 × 120 cm"
    assert "“1.1” may mean 1,1 or 11" in ask(maker, own__1__size="1.1 x 1.2 m").root.text


def test_in_inches_sizes_and_the_price_for_an_area_are_in_inches() -> None:
    workshop = sample_workshop(units=Units.INCHES)
    page = ask(maker_in(workshop), own__1__size="28 x 36")
    head, *rows = page.table("Size asked")
    assert "28 × 36 in" in [row[0] for row in rows]
    shown = dict(zip(head, rows[2], strict=True))
    cot = compare(workshop).sizes[2]
    # An inch is 2.54 cm exactly (NIST Handbook 44), so 100 in² are 645.16 cm².
    wanted = cot.quote.price.each * Decimal("645.16") / Decimal(str(cot.area_cm2))
    assert Decimal(shown["Price for 100 in²"]) == round(wanted, 2)


def test_figures_are_said_to_be_for_all_of_several_blankets(maker: Maker) -> None:
    page = maker.send("/sizes/of-order", order__quantity="3")
    assert "are for 3 blankets together" in page.with_id("answer").text
