"""Stripes with fewer ends: offered beside the ones asked for, and taken over."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

from quoting.core.order.order import Terms
from quoting.core.quote.quote import quote_order
from quoting.core.weighing.calmer_stripes import calmer_stripes
from quoting.core.workshop.selling import Target
from quoting.core.workshop.stitches import Vocabulary
from quoting.schema import order_text
from quoting.wording import speech_of
from tests.examples import TODAY, sample_design, sample_workshop, section
from tests.web.conftest import ORDER, Maker
from tests.web.pages import Node, Page

SAY = speech_of(sample_workshop())
TWO_BY_TWO = section("teal", "rust", "teal", "rust")
LOUD = replace(ORDER, design=sample_design(sections=(TWO_BY_TWO,), colours={}))
"""Two colours in single rows, written out twice: each is cut at every turn."""
QUOTE = quote_order(LOUD, sample_workshop(), today=TODAY)


def loud_form(maker: Maker) -> dict[str, str]:
    """Return the worktable's form with the loud order in it."""
    return maker.give(order_text(LOUD, Vocabulary.US)).typed()


def calmer(maker: Maker, **typed: str) -> Page:
    """Ask for fewer ends."""
    sent = loud_form(maker) | {name.replace("__", "."): text for name, text in typed.items()}
    reply = maker.client.post("/calmer", data=sent)
    maker.status = reply.status_code
    return Page(reply.text)


def stripings(page: Page) -> dict[str, Node]:
    """Return the stripings shown, by name."""
    found = page.root.all(lambda n: n.attributes.get("class") == "striping")
    return {node.attributes["aria-label"]: node for node in found}


def form_of(node: Node) -> dict[str, str]:
    """Return what the button of a striping sends."""
    inputs = node.all("input")
    return {one.attributes["name"]: one.attributes["value"] for one in inputs}


def test_many_ends_come_with_a_way_to_fewer(maker: Maker) -> None:
    buttons = [b.text for b in maker.give(order_text(LOUD, Vocabulary.US)).root.all("button")]
    assert "Fewer ends…" in buttons


def test_few_ends_do_not(maker: Maker) -> None:
    assert "Fewer ends…" not in [button.text for button in maker.open().root.all("button")]


def test_each_alternative_shows_ends_hours_and_price_beside_the_original(maker: Maker) -> None:
    shown = stripings(calmer(maker))
    offered = calmer_stripes(QUOTE, today=TODAY)
    quotes = [QUOTE, *(other.quote for other in offered)]
    assert list(shown) == ["As asked", *(f"Striping {n}" for n in range(1, len(offered) + 1))]
    assert 1 < len(quotes) <= 4
    for node, quote in zip(shown.values(), quotes, strict=True):
        assert f"Ends to weave {quote.estimate.ends} " in node.text
        assert " ".join(f"Hours {SAY.hours(quote.estimate.hours.total)}".split()) in node.text
        assert f"Price {SAY.money(quote.price.price)}" in node.text
        assert len(list(node.all("svg"))) == 1


def test_at_a_given_price_the_page_shows_what_an_hour_of_each_striping_earns(maker: Maker) -> None:
    assert "An hour earns" not in calmer(maker).root.text
    shown = stripings(calmer(maker, price_by="given", price__given="300"))
    given = replace(LOUD, terms=Terms(target=Target(given=Decimal(300))))
    asked = quote_order(given, sample_workshop(), today=TODAY)
    quotes = [asked, *(other.quote for other in calmer_stripes(asked, today=TODAY))]
    for node, quote in zip(shown.values(), quotes, strict=True):
        assert f"An hour earns {SAY.money(quote.price.earned_per_hour)}" in node.text


def test_every_drawing_on_the_page_has_ids_of_its_own(maker: Maker) -> None:
    ids = [n.attributes["id"] for n in calmer(maker).root.all(lambda n: "id" in n.attributes)]
    assert len(ids) == len(set(ids))


def test_one_button_takes_an_alternative_over_and_keeps_all_else_as_typed(maker: Maker) -> None:
    page = calmer(maker, blanket__width="31 1/2 in", order__buyer="Rosalind")
    sent = form_of(stripings(page)["Striping 1"])
    table = Page(maker.client.post("/", data=sent).text)
    best = calmer_stripes(QUOTE, today=TODAY)[0]
    assert table.typed()["blanket.width"] == "31 1/2 in"
    assert table.typed()["order.buyer"] == "Rosalind"
    stripes = "blanket.sections.1.stripes"
    taken = {n: t for n, t in table.typed().items() if n.startswith(stripes)}
    assert len(taken) == 3 * len(best.design.body.sections[0].stripes)
    assert int(table.figure("Ends to weave")) <= QUOTE.estimate.ends / 2


def test_the_stripes_as_asked_can_be_kept(maker: Maker) -> None:
    before = loud_form(maker)
    node = stripings(calmer(maker, do="size"))["As asked"]
    sent = form_of(node)
    assert len(sent) == len(list(node.all("input")))
    assert sent == before | {"csrf_token": sent["csrf_token"]}


def test_where_nothing_calmer_is_found_the_page_says_so(maker: Maker) -> None:
    # A section that mixes stitches is left as it is.
    stitches = {"blanket.sections.1.stripes.1.stitch": "sc"}
    page = calmer(maker, **stitches)
    assert "None found: there is no striping near this one" in page.root.text
    assert list(stripings(page)) == ["As asked"]


def test_few_ends_are_left_alone(maker: Maker) -> None:
    page = maker.send("/calmer")
    assert "12 ends are few already" in page.root.text


def test_a_form_with_mistakes_stays_on_the_worktable(maker: Maker) -> None:
    page = calmer(maker, blanket__width="wide")
    assert maker.status == 422
    assert "cannot be read" in page.said_of("blanket.width")
