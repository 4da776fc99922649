"""The Sizes page, as a person reads it."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

import pytest

from quoting.core.budget import within_budget
from quoting.core.comparison import Comparison, compare_sizes
from quoting.core.costing import LineKind
from quoting.core.measures import Units
from quoting.core.resizing import Size
from quoting.core.workshop import Workshop
from quoting.web import create_app
from quoting.web.shop import open_shop
from quoting.wording import rule_words, verdict
from tests.examples import TODAY, sample_workshop
from tests.web.conftest import ORDER, Maker, maker_in
from tests.web.pages import Page

SHOP = open_shop(sample_workshop(), today=lambda: TODAY)
SAY = SHOP.speech
NUMBERS = {size.name: number for number, size in enumerate(SHOP.sizes, 1)}
SIX = [
    Size(width_cm=size.width_cm, height_cm=size.height_cm, label=size.name)
    for size in SHOP.sizes[:6]
]
PRICES = dict(zip(SIX, map(Decimal, (60, 200, 240, 240, 290, 470)), strict=True))
TYPED = {f"customary__{nr}__price": str(price) for nr, price in enumerate(PRICES.values(), 1)}


def compare(workshop: Workshop | None = None, **changes: object) -> Comparison:
    """Return the sample order at the first six sizes."""
    return compare_sizes(ORDER, workshop or sample_workshop(), SIX, today=TODAY, **changes)  # type: ignore[arg-type]


def ask(maker: Maker, address: str = "/sizes", **typed: str) -> Page:
    """Open the Sizes page, type, and ask."""
    return maker.send(address, "/sizes", **typed)


def price_of(size: str) -> str:
    """Return the name of the price field beside a customary size."""
    return f"customary.{NUMBERS[size]}.price"


def words(text: str) -> str:
    """Return a text with plain spaces."""
    return " ".join(text.split())


def test_the_bar_leads_to_the_sizes_of_the_order_at_hand(maker: Maker) -> None:
    page = maker.open("/sizes")
    assert page.headings[:2] == ["Sizes", "Side by side"]
    assert ORDER.title in page.root.text
    current = [a.text for a in page.root.all("a") if a.attributes.get("aria-current") == "page"]
    assert current == ["Sizes"]


def test_the_worktables_own_order_is_compared_as_it_was_typed(maker: Maker) -> None:
    page = maker.send("/sizes/of-order", order__title="Pram blanket", blanket__width="33 in")
    assert "Pram blanket" in page.root.text
    # An inch is 2.54 cm exactly (NIST Handbook 44).
    assert page.labelled("Own size 1").attributes["value"] == "83.82 cm × 100 cm"


def test_sizes_typed_before_come_along_to_another_order(maker: Maker) -> None:
    typed = {"asks": "prices", "own.1.size": "90x90", "own.1.price": "250"}
    sent = maker.open("/").typed() | {"order.title": "Pram blanket"} | typed
    page = Page(maker.client.post("/sizes/of-order", data=sent).text)
    assert "Pram blanket" in page.root.text
    assert page.typed().items() >= typed.items()
    assert [row[0] for row in page.table("Size asked")[1:]] == ["90 × 90 cm pays best"]


def test_an_order_with_a_mistake_stays_on_the_worktable(maker: Maker) -> None:
    page = maker.send("/sizes/of-order", blanket__width="wide")
    assert maker.status == 422
    assert "cannot be read" in page.said_of("blanket.width")
    assert page.headings[0] == "Order"


def test_every_size_shows_what_its_quote_says(maker: Maker) -> None:
    head, *rows = maker.open("/sizes").table("Size asked")
    assert len(rows) == len(SIX)
    for row, compared in zip(rows, compare().sizes, strict=True):
        shown, quote = dict(zip(head, row, strict=True)), compared.quote
        hours, price = quote.estimate.hours, quote.price
        assert shown["Size asked"] == str(compared.size)
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
    assert head[1:] == [rule_words(rule.rule) for rule in compared[0].rules]
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
    page = ask(maker, asks="prices", customary__3__price="240")
    assert "No price yet for Doll's or comforter, Pram or car seat" in page.root.text
    assert [row[0] for row in page.table("Size asked")[1:]] == ["Cot pays best"]


def test_without_any_price_the_page_asks_for_some(maker: Maker) -> None:
    answer = ask(maker, asks="prices").with_id("answer").text
    assert answer.startswith("Type a price beside each size")


def test_without_any_size_the_page_asks_for_one(maker: Maker) -> None:
    fields = {n: t for n, t in maker.open("/sizes").typed().items() if not n.endswith("take")}
    page = Page(maker.client.post("/sizes", data=fields).text)
    assert page.with_id("answer").text.startswith("Tick a size")


BAD = (
    ("target", "own.1.size", "wide", "cannot be read as a size"),
    ("target", "own.1.size", "70", "cannot be read as a size"),
    ("target", "own.1.size", "70 x 90 stone", "no unit that is known"),
    ("target", "own.1.size", "0 x 90", "must be more than 0 cm"),
    ("target", "own.1.size", "-70 x 90", "must be more than 0 cm"),
    ("target", "own.1.size", "70 x 1e9", "cannot be read"),
    ("target", "own.1.size", "70 x 9999999", "the most that will do is 1,000 cm"),
    ("target", "own.1.size", "70 x nan", "no unit that is known"),
    ("target", "own.1.size", "7" * 70, "too long"),
    ("target", "own.1.size", "80 x 100 cm", "is among the sizes already"),
    ("target", "budget", "0", "must be more than £0.00"),
    ("target", "budget", "-5", "must be more than £0.00"),
    ("target", "budget", "a hundred", "cannot be read as a number"),
    ("target", "budget", "1,50", "may mean 1.5 or 150"),
    ("target", "budget", "9" * 15, "too large"),
    ("prices", price_of("Cot"), "0", "must be more than"),
    ("prices", price_of("Cot"), "-3", "must be more than"),
    ("prices", price_of("Cot"), "cheap", "cannot be read as a number"),
    ("prices", "own.2.price", "90", "This is missing"),
    ("neither", "asks", "neither", "not among what can be chosen"),
)
SAID_AT = {"own.2.price": "own.2.size"}


@pytest.mark.parametrize(("asks", "name", "typed", "sentence"), BAD, ids=lambda x: str(x)[:30])
def test_a_bad_value_is_told_beside_its_field_and_everything_typed_is_kept(
    maker: Maker, asks: str, name: str, typed: str, sentence: str
) -> None:
    sent = maker.open("/sizes").typed() | {"asks": asks, name: typed}
    page = Page(maker.client.post("/sizes", data=sent).text)
    field = SAID_AT.get(name, name)
    assert sentence in page.said_of(field)
    assert any(a.attributes["href"] == f"#{field}" for a in page.with_id("mistakes").all("a"))
    assert "Side by side" not in page.headings
    after = page.typed() | ({"asks": asks} if name == "asks" else {})
    assert after == sent | {"csrf_token": after["csrf_token"]}


def test_a_size_typed_twice_is_told_once(maker: Maker) -> None:
    page = ask(maker, own__1__size="90x90", own__2__size="0.9 m x 0.9 m")
    assert page.said_of("own.1.size") == "Read as 90 × 90 cm"
    assert "90 × 90 cm” is among the sizes already" in page.said_of("own.2.size")


def test_more_sizes_than_can_be_compared_are_refused_beside_their_list(maker: Maker) -> None:
    sent = maker.open("/sizes").typed()
    sent |= {f"own.{number}.size": f"{60 + number} x 91" for number in range(1, 51)}
    page = Page(maker.client.post("/sizes", data=sent).text)
    assert "56 of them are too many; at most 50 will do." in page.said_of("own")
    assert page.with_id("own").tag == "ol"


def test_another_line_for_a_size_is_added_with_the_focus_in_it(maker: Maker) -> None:
    page = ask(maker, do="add own")
    focused = page.root.all(lambda node: "autofocus" in node.attributes)
    assert [node.attributes["name"] for node in focused] == ["own.4.size"]


def test_sizes_are_typed_in_the_makers_own_notation() -> None:
    maker = maker_in(sample_workshop(locale="de_DE"))
    page = ask(maker, own__1__size="70,5 x 90")
    assert page.said_of("own.1.size") == "Read as 70,5 × 90 cm"
    assert "70,5 × 90 cm" in [row[0] for row in page.table("Size asked")]


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


def test_a_budget_shows_what_fits_and_the_largest_that_still_pays_the_hour(maker: Maker) -> None:
    page = ask(maker, budget="300", own__1__size="90x90")
    sizes = [*SIX, Size(width_cm=90, height_cm=90, label="90 × 90 cm")]
    found = within_budget(ORDER, sample_workshop(), sizes, budget=Decimal(300), today=TODAY)
    assert "With £300.00 to spend" in page.headings
    assert found.largest is not None
    assert f"{sizes[found.largest]} is the largest of these" in page.root.text
    assert any(fit.pays_the_hour and not fit.fits for fit in found.fits)
    rows = page.table("At your target")[1:]
    for row, fit in zip(rows, found.fits, strict=True):
        assert fit.at_budget is not None
        assert row == [
            str(fit.compared.size),
            "fits" if fit.fits else "too dear",
            SAY.bare_money(fit.compared.quote.price.total),
            SAY.bare_money(fit.at_budget.earned_per_hour),
            "paid" if fit.pays_the_hour else "not paid",
        ]


def test_a_budget_leaves_the_comparison_at_the_prices_that_were_typed(maker: Maker) -> None:
    page = ask(maker, asks="prices", budget="300", **TYPED)
    assert [row[3] for row in page.table("Size asked")[1:]] == [
        SAY.bare_money(price) for price in PRICES.values()
    ]


def test_a_budget_that_pays_no_hour_says_so(maker: Maker) -> None:
    page = ask(maker, budget="6")
    assert "None of these sizes pays your hour at that budget" in page.root.text


def test_what_could_change_is_shown_with_its_effect_in_money(maker: Maker) -> None:
    rows = ask(maker, budget="250").table("Takes off, GBP")[1:]
    found = within_budget(ORDER, sample_workshop(), SIX, budget=Decimal(250), today=TODAY)
    assert found.savings
    assert [row[1] for row in rows] == [SAY.bare_money(s.saved) for s in found.savings]
    assert "One border round less" in [row[0] for row in rows]


def test_a_size_is_taken_to_the_worktable_with_its_price(maker: Maker) -> None:
    typed = ask(maker, "/sizes/take", asks="prices", take="130.0x160.0cm", **TYPED).typed()
    assert (typed["blanket.width"], typed["blanket.height"]) == ("130 cm", "160 cm")
    assert typed["price.given"] == "470"


def test_a_change_is_taken_to_the_worktable(maker: Maker) -> None:
    typed = ask(maker, "/sizes/take", budget="250", take="smaller-border").typed()
    assert not any(name.startswith("blanket.border") for name in typed)


def test_the_way_back_brings_the_order_unchanged(maker: Maker) -> None:
    before = maker.open("/").typed()
    after = ask(maker, "/sizes/take").typed()
    assert after == before | {"csrf_token": after["csrf_token"]}


def test_the_answer_that_follows_is_that_of_the_page(maker: Maker) -> None:
    page = ask(maker, budget="250", own__1__size="90x90")
    followed = ask(maker, "/sizes/answer", budget="250", own__1__size="90x90")
    assert followed.with_id("answer").text == page.with_id("answer").text
    assert followed.with_id("said").text == "Read as 90 × 90 cm"


def test_a_workshop_without_an_order_begins_with_a_plain_blanket() -> None:
    shop = replace(open_shop(sample_workshop(), today=lambda: TODAY), sample=None)
    page = Maker(create_app(shop).test_client()).open("/sizes")
    assert len(page.table("Size asked")) == 1 + len(SIX)
    assert 'width = "80 cm"' in page.typed()["order_file"]


def test_an_order_that_the_workshop_cannot_make_any_more_is_refused_in_words(maker: Maker) -> None:
    sent = maker.open("/sizes").typed()
    sent["order_file"] = sent["order_file"].replace("teal", "puce")
    reply = maker.client.post("/sizes", data=sent | {"own.1.size": "91 x 91"})
    page = Page(reply.text)
    assert reply.status_code == 422
    assert "has no colour “puce”" in page.with_id("mistakes").text
    assert "blanket.sections.1.stripes.1.colour" in page.with_id("mistakes").text
    assert page.typed()["own.1.size"] == "91 x 91"


@pytest.mark.parametrize("address", ["/sizes", "/sizes/answer", "/sizes/take", "/sizes/workbook"])
def test_without_any_order_the_page_says_that_it_is_missing(maker: Maker, address: str) -> None:
    token = maker.open("/sizes").typed()["csrf_token"]
    reply = maker.client.post(address, data={"csrf_token": token, "own.1.size": "91 x 91"})
    assert reply.status_code == 422
    assert "The order, " in Page(reply.text).with_id("mistakes").text


def test_an_order_that_cannot_be_read_after_a_restart_leaves_sizes_and_prices(maker: Maker) -> None:
    sent = {"order_file": "nonsense", "asks": "prices", "own.1.size": "91x91", "own.1.price": "250"}
    reply = maker.client.post("/sizes", data=sent)
    page = Page(reply.text)
    assert reply.status_code == 409
    assert "The order" in page.with_id("mistakes").text
    assert page.typed().items() >= sent.items()


def test_the_price_of_a_size_that_is_not_ticked_waits_in_its_field(maker: Maker) -> None:
    sent = maker.open("/sizes").typed() | {name.replace("__", "."): p for name, p in TYPED.items()}
    del sent[price_of("Cot").replace("price", "take")]
    sent |= {"asks": "prices", price_of("Queen bed (US, 60 x 80 in)"): "cheap"}
    page = Page(maker.client.post("/sizes", data=sent).text)
    assert len(page.table("Size asked")) == 1 + len(SIX) - 1
    assert page.typed()[price_of("Cot")] == "240"
    assert page.typed()[price_of("Queen bed (US, 60 x 80 in)")] == "cheap"


def test_a_size_of_nothing_by_nothing_names_both_sides(maker: Maker) -> None:
    said = ask(maker, own__1__size="0x0").said_of("own.1.size")
    sentence = "0 cm is too small; it must be more than 0 cm."
    assert said == f"Width: {sentence} Height: {sentence}"


@pytest.mark.parametrize("budget", ["0", "-5", "9" * 15])
def test_a_mistake_in_the_budget_names_the_currency(maker: Maker, budget: str) -> None:
    assert "£" in ask(maker, budget=budget).said_of("budget")


def test_what_was_typed_outlives_a_restart(maker: Maker) -> None:
    typed = maker.open("/sizes").typed() | {"own.1.size": "91 x 91", "csrf_token": "from before"}
    again = maker_in(sample_workshop())
    reply = again.client.post("/sizes", data=typed)
    page = Page(reply.text)
    assert reply.status_code == 409
    assert "Once more, please." in page.root.text
    assert page.typed()["own.1.size"] == "91 x 91"


def test_figures_are_said_to_be_for_all_of_several_blankets(maker: Maker) -> None:
    page = maker.send("/sizes/of-order", order__quantity="3")
    assert "are for 3 blankets together" in page.with_id("answer").text


def test_words_from_the_order_are_never_markup(maker: Maker) -> None:
    page = maker.send("/sizes/of-order", order__title='<b>Bold</b> & "quoted"')
    assert '<b>Bold</b> & "quoted"' in page.root.text
    assert "Bold" in page.typed()["order_file"]


def test_notes_of_several_lines_come_through_a_browsers_line_ends(maker: Maker) -> None:
    sent = maker.send("/sizes/of-order", order__notes="No wool\r\nno fringe").typed()
    sent["order_file"] = sent["order_file"].replace("\n", "\r\n")
    table = Page(maker.client.post("/sizes/take", data=sent).text)
    assert table.typed()["order.notes"] == "No wool\nno fringe"


def test_the_comparison_is_saved_as_a_spreadsheet_under_the_orders_name(maker: Maker) -> None:
    reply = maker.client.post("/sizes/workbook", data=maker.open("/sizes").typed())
    assert reply.status_code == 200
    assert "sizes-cot-blanket-in-moorland-stripes.xlsx" in reply.headers["Content-Disposition"]
    assert reply.data.startswith(b"PK")


def test_nothing_is_saved_while_something_is_to_be_put_right(maker: Maker) -> None:
    page = ask(maker, "/sizes/workbook", own__1__size="wide")
    assert maker.status == 422
    assert "cannot be read as a size" in page.said_of("own.1.size")


@pytest.mark.parametrize(
    ("address", "page"),
    [
        ("/sizes/of-order", "/sizes"),
        ("/sizes/take", "/sizes"),
        ("/calmer", "/"),
        ("/workshop/rates", "/workshop"),
        ("/workshop/pay", "/workshop"),
    ],
)
def test_the_address_of_an_answer_leads_to_its_page_when_it_is_opened_anew(
    maker: Maker, address: str, page: str
) -> None:
    assert maker.client.get(address).headers["Location"] == page
