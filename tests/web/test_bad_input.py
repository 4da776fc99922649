"""Whatever is typed gets its sentence beside its field, and all of it is still there."""

import pytest

from quoting.core.workshop.stitches import Vocabulary
from quoting.schema import order_text
from tests.examples import sample_design, sample_order, sample_workshop, section
from tests.web.conftest import Maker, maker_in
from tests.web.pages import Page

pytestmark = pytest.mark.slow

WIDTH, ROWS = "blanket.width", "blanket.sections.1.stripes.2.rows"
COLOUR, MARGIN = "blanket.sections.1.stripes.2.colour", "price.margin"

BAD = [
    (WIDTH, "0", "more than 0 cm"),
    (WIDTH, "-80", "more than 0 cm"),
    (WIDTH, "1e400", "cannot be read"),
    (WIDTH, "inf", "no number to calculate with"),
    (WIDTH, "nan", "no number to calculate with"),
    (WIDTH, "9999999", "the most that will do is 1,000 cm"),
    (WIDTH, "9" * 5000, "too long"),
    (WIDTH, "5 stone", "no unit that is known"),
    (WIDTH, "wide", "cannot be read"),
    (WIDTH, "1 cm", "the smallest that works is"),
    (WIDTH, "x" * 100_000, "too long"),
    (WIDTH, "", "missing"),
    ("blanket.height", "1 cm", "the smallest that works is"),
    (ROWS, "0", "the least that will do is 1"),
    (ROWS, "-3", "the least that will do is 1"),
    (ROWS, "1.5", "a whole number"),
    (ROWS, "10001", "the most that will do is 10,000"),
    (ROWS, "9" * 5000, "too long"),
    (ROWS, "9" * 50, "too many digits"),
    (ROWS, "", "missing"),
    (COLOUR, "puce", "no colour “puce”"),
    (COLOUR, "", "missing"),
    ("blanket.yarn", "gossamer", "no yarn “gossamer”"),
    ("blanket.stitch", "warp", "no stitch or pattern “warp”"),
    ("blanket.border.1.stitch", "warp", "no stitch or pattern “warp”"),
    ("blanket.stop_at", "noon", "not among what can be chosen"),
    ("blanket.border.1.corner", "round", "not among what can be chosen"),
    ("blanket.sections.1.share", "0", "At least one section"),
    (MARGIN, "120", "no price covers the costs"),
    (MARGIN, "1e400", "cannot be read"),
    (MARGIN, "5000", "too large"),
    ("price.given", "0", "more than"),
    ("price.given", "1,5", "may mean 1.5 or 15"),
    ("price.discount", "100", "too large"),
    ("order.title", " ", "missing"),
    ("order.title", "a\x00b", "Character 2 of this shows nothing"),
    ("order.notes", "x" * 100_000, "too long"),
    ("order.buyer", "x" * 81, "at most 80"),
    ("order.pays_in", "XYZ", "no currency code"),
    ("order.quantity", "0", "the least that will do is 1"),
    ("order.wanted_by", "soon", "a date such as"),
    ("extras.1.cost", "-1", "the least that will do"),
    ("extras.1.what", "", "missing"),
    ("extras.1.metres", "8", "missing"),
    ("extras.1.colour", "teal", "missing"),
]


TOLD_AT = {"extras.1.metres": "extras.1.colour", "extras.1.colour": "extras.1.metres"}
"""Where a mistake is told that is not the typed field's alone."""


@pytest.mark.parametrize(("name", "typed", "sentence"), BAD, ids=lambda x: str(x)[:30])
def test_a_bad_value_is_told_beside_its_field(
    maker: Maker, name: str, typed: str, sentence: str
) -> None:
    before = maker.open().typed()
    page = _sent(maker, before | {name: typed})
    assert sentence in page.said_of(TOLD_AT.get(name, name))
    assert _own(page.typed()) == _own(before | {name: typed})
    assert page.figure("Price").endswith("not known yet")
    assert len(list(page.with_id("mistakes").all("li"))) == 1


def _own(fields: dict[str, str]) -> dict[str, str]:
    """Return what a maker typed herself: a customary size and the way to a price only follow."""
    follows = {"size", "price_by", "csrf_token"}
    return {name: typed for name, typed in fields.items() if name not in follows}


def _sent(maker: Maker, fields: dict[str, str]) -> Page:
    """Send a form without its choice of a price, which what is typed then makes."""
    chosen = {name: text for name, text in fields.items() if name != "price_by"}
    reply = maker.client.post("/", data=chosen)
    assert reply.status_code == 200
    return Page(reply.text)


def test_every_mistake_is_told_at_once_and_linked_to(maker: Maker) -> None:
    typed = {WIDTH: "wide", ROWS: "0", COLOUR: "puce", MARGIN: "?", "order.pays_in": "XYZ"}
    page = _sent(maker, maker.open().typed() | typed)
    links = [a.attributes["href"] for a in page.with_id("mistakes").all("a")]
    assert sorted(links) == sorted(f"#{name}" for name in typed)
    for name in typed:
        assert page.with_id(name).attributes["aria-invalid"] == "true"


def test_a_section_without_stripes_is_told_where_its_stripes_would_be(maker: Maker) -> None:
    begins = "blanket.sections.1.stripes."
    typed = {n: t for n, t in maker.open().typed().items() if not n.startswith(begins)}
    assert "missing" in _sent(maker, typed).said_of("blanket.sections.1.stripes")


def test_repeats_can_be_typed_as_the_form_stands(maker: Maker) -> None:
    page = _sent(maker, maker.open().typed() | {"blanket.sections.1.repeats": "4"})
    assert page.figure("Price").startswith("£")


def test_a_share_beside_repeats_is_told_beside_both(maker: Maker) -> None:
    section = "blanket.sections.1"
    both = {f"{section}.repeats": "4", f"{section}.share": "2"}
    page = _sent(maker, maker.open().typed() | both)
    for name in both:
        assert "give only one" in page.said_of(name)
    assert len(list(page.with_id("mistakes").all("li"))) == 1


def test_two_ways_to_make_a_price_are_named_as_their_fields_are(maker: Maker) -> None:
    both = {"price.given": "185", "price.margin": "15"}
    page = _sent(maker, maker.open().typed() | both)
    said = page.with_id("mistakes").text
    assert (
        "“A margin, %” and “A price of my own” cannot go together; give only one of them." in said
    )
    labels = [label.text for label in page.root.all("label")]
    assert {"A price of my own", "A margin, %"} <= {label.strip() for label in labels}


def test_an_extra_in_a_colour_takes_some_yarn(maker: Maker) -> None:
    none = {"extras.1.colour": "teal", "extras.1.metres": "0"}
    page = _sent(maker, maker.open().typed() | none)
    assert page.said_of("extras.1.metres") == "This is missing; it must be given."


def test_a_colour_from_another_yarn_that_is_still_blank_is_only_still_to_fill_in(
    maker: Maker,
) -> None:
    added = maker.open().typed()
    for named in ("", "plum"):
        added = _sent(maker, added | {"do": "add blanket.colours"}).typed()
        mistakes = _sent(maker, added | {"do": "size"}).with_id("mistakes").text
        assert mistakes.startswith("Still to fill in:")
        added |= {"blanket.colours.1.name": named}


@pytest.mark.parametrize("number", ["9" * 5000, "²", "٢"])
def test_a_line_of_no_number_that_can_be_is_no_move(maker: Maker, number: str) -> None:
    before = maker.open().typed()
    page = _sent(maker, before | {"do": f"remove blanket.sections.{number}"})
    assert _own(page.typed()) == _own(before)


def test_all_shares_zero_is_told_beside_every_share(maker: Maker) -> None:
    added = maker.send("/", do="add blanket.sections").typed()
    shares = {f"blanket.sections.{n}.share": "0" for n in (1, 2)}
    page = _sent(maker, added | shares)
    for name in shares:
        assert "a share of the length above 0" in page.said_of(name)


def stripes(count: int, colour: str = "teal") -> dict[str, str]:
    return {
        f"blanket.sections.1.stripes.{number}.{name}": value
        for number in range(1, count + 1)
        for name, value in (("colour", colour), ("rows", "1"), ("stitch", ""))
    }


def test_two_years_of_daily_stripes_stay_on_the_form(maker: Maker) -> None:
    many = stripes(730)
    page = _sent(maker, maker.open().typed() | many)
    assert "730 of them are too many; at most 500" in page.said_of("blanket.sections.1.stripes")
    assert many.items() <= page.typed().items()


def test_more_lines_than_the_form_has_room_for_are_refused_in_words_and_the_first_shown(
    maker: Maker,
) -> None:
    page = _sent(maker, maker.open().typed() | stripes(10_000))
    mistakes = page.with_id("mistakes").text
    assert "10,005 lines" in mistakes
    assert "the form has room for 800" in mistakes
    shown = [name for name in page.typed() if name.startswith("blanket.sections.1.stripes.")]
    assert 700 <= len(shown) / 3 <= 800


def test_an_order_with_more_lines_than_the_form_has_room_for_is_told_when_its_file_is_read(
    maker: Maker,
) -> None:
    long = section(*("teal", "rust") * 225)
    order = sample_order(design=sample_design(sections=(long, long)))
    page = maker.give(order_text(order, Vocabulary.US))
    assert maker.status == 422
    assert "the form has room for 800" in page.root.text


def test_fees_and_margin_that_leave_no_price_are_told_at_the_margin(maker: Maker) -> None:
    page = _sent(maker, maker.open().typed() | {MARGIN: "99"})
    assert "no price covers the costs" in page.said_of(MARGIN)


def test_a_width_too_small_for_its_border_names_the_smallest_that_works(maker: Maker) -> None:
    said = _sent(maker, maker.open().typed() | {WIDTH: "1"}).said_of(WIDTH)
    smallest = said.rpartition("works is ")[2].rstrip(".")
    page = _sent(maker, maker.open().typed() | {WIDTH: smallest})
    assert page.figure("Price").startswith("£")


def test_more_than_the_limit_is_refused_with_a_plain_page(maker: Maker) -> None:
    reply = maker.client.post("/", data={"order.notes": "x" * 5_000_000})
    assert reply.status_code == 413
    assert "more than can be taken at once" in Page(reply.text).headings[0]


def test_odd_names_of_fields_break_nothing(maker: Maker) -> None:
    odd = {f"blanket.sections.{n}.share": "1" for n in ("²", "-1", "9" * 5000, "", "1.1.1.1.1.1.1")}
    page = _sent(maker, maker.open().typed() | odd)
    assert page.figure("Price").startswith("£")


def test_a_workshop_without_measurements_gives_a_rough_answer() -> None:
    rough = maker_in(sample_workshop(swatches=()))
    assert "Measure a swatch before you give this price" in rough.open().with_id("answer").text
