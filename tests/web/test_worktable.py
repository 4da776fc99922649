"""The order form and its answer, as a person reads them."""

from quoting.core.quote.quote import quote_order
from quoting.wording import line_what, speech_of
from tests.examples import TODAY, sample_workshop
from tests.web.conftest import ORDER, Maker
from tests.web.pages import Page

QUOTE = quote_order(ORDER, sample_workshop(), today=TODAY)
SAY = speech_of(sample_workshop())


def test_the_form_opens_with_its_answer_beside_it(maker: Maker) -> None:
    page = maker.open()
    assert page.figure("Price") == SAY.money(QUOTE.price.price)
    assert page.figure("Ends to weave") == str(QUOTE.estimate.ends)
    assert page.figure("Skeins") == str(QUOTE.estimate.skeins)
    assert page.figure("An hour earns") == SAY.money(QUOTE.price.earned_per_hour)
    assert page.labelled("Width").attributes["value"] == "80 cm"


def test_the_costing_shows_every_line_of_the_quote_and_no_other(maker: Maker) -> None:
    rows = maker.open().table("Rate")[1:]
    amounts = {row[0]: row[-1] for row in rows}
    for line in QUOTE.lines:
        assert amounts[" ".join(line_what(line, SAY).split())] == SAY.bare_money(line.amount)
    assert amounts["Cost"] == SAY.bare_money(QUOTE.price.cost)
    assert amounts["The buyer pays in all"] == SAY.bare_money(QUOTE.price.total)
    assert len(rows) == len(QUOTE.lines) + 3


def test_a_figure_opens_to_the_sum_it_was_reckoned_by(maker: Maker) -> None:
    assert "(80 − 2 × 0.63) / 0.8 = room for 98.4 stitches" in maker.open().with_id("answer").text


def test_a_loss_is_taken_off_where_the_price_goes(maker: Maker) -> None:
    answer = maker.send("/answer", price__given="£60").with_id("answer").text
    assert "60.00 + 5.00 delivery = 246.98 cost + 1.38 fees − 183.36 loss" in answer


def test_stitches_are_written_small_and_row_heights_as_they_are_measured(maker: Maker) -> None:
    answer = maker.open().with_id("answer").text
    assert "hdc: 10,094 × " in answer
    heights = [row[-1] for row in maker.open().table("Worked") if row[0] == "Row 2"]
    assert heights == ["0.95"]  # 11.4 cm for twelve rows of the swatch


def test_the_answer_follows_what_is_typed(maker: Maker) -> None:
    wider = maker.send("/answer", blanket__width="1.20 m")
    assert "120 × 100 cm was asked" in wider.with_id("answer").text
    assert wider.figure("Price") != SAY.money(QUOTE.price.price)


def test_a_line_is_added_moved_copied_and_removed(maker: Maker) -> None:
    stripes = "blanket.sections.1.stripes"

    def colours(do: str) -> list[str]:
        sent = maker.send("/", do=do).typed()
        found = [v for name, v in sent.items() if name.startswith(stripes) and "colour" in name]
        return found[::-1]

    assert colours("") == ["teal", "rust", "oat"]
    assert colours(f"add {stripes}") == ["teal", "rust", "oat", "teal"]
    assert colours(f"up {stripes}.2") == ["rust", "teal", "oat"]
    assert colours(f"down {stripes}.1") == ["rust", "teal", "oat"]
    assert colours(f"copy {stripes}.1") == ["teal", "teal", "rust", "oat"]
    assert colours(f"remove {stripes}.2") == ["teal", "oat"]
    assert colours(f"up {stripes}.1") == ["teal", "rust", "oat"]
    assert colours(f"remove {stripes}.99") == ["teal", "rust", "oat"]


def test_a_new_line_has_the_focus_and_a_moved_button_keeps_it(maker: Maker) -> None:
    def focused(do: str) -> list[str]:
        page = maker.send("/", do=do)
        nodes = [n.attributes for n in page.root.all(lambda n: "autofocus" in n.attributes)]
        return [node.get("name", "") + node.get("value", "") for node in nodes]

    first = {
        "extras": "extras.2.what",
        "blanket.border": "blanket.border.2.stitch",
        "blanket.colours": "blanket.colours.2.name",
        "blanket.sections": "blanket.sections.2.stripes.1.colour",
        "blanket.last_rows": "blanket.last_rows.1.colour",
    }
    assert {lines: focused(f"add {lines}") for lines in first} == {
        lines: [field] for lines, field in first.items()
    }
    place = "blanket.sections.1.stripes"
    assert focused(f"down {place}.1") == [f"dodown {place}.2"]
    assert focused(f"remove {place}.1") == ["doback 1"]


def test_a_customary_size_fills_in_both_sides(maker: Maker) -> None:
    sent = maker.send("/", do="size", size="Throw").typed()
    assert (sent["blanket.width"], sent["blanket.height"]) == ("130 cm", "160 cm")


def test_each_customary_size_says_where_it_comes_from(maker: Maker) -> None:
    said = maker.open().with_id("size.hint").text
    assert "Throw: common practice" in said
    assert "Single bed (UK, 90 x 190 cm): UK bed" in said


def test_an_empty_form_asks_for_the_size_and_for_nothing_else(maker: Maker) -> None:
    page = maker.open("/blank")
    assert page.figure("Price").endswith("not known yet")
    assert "Fill in a size" in page.with_id("answer").text
    answered = maker.send("/answer", "/blank", blanket__width="1 m", blanket__height="1 m")
    assert answered.figure("Price").startswith("£")


def test_what_is_still_blank_is_no_mistake_until_the_quote_is_asked_for(maker: Maker) -> None:
    assert "Still to fill in: Width , Length" in maker.send("/answer", "/blank").root.text
    refused = maker.send("/quote", "/blank")
    assert maker.status == 422
    assert refused.said_of("blanket.width") == "This is missing; it must be given."


def test_warnings_stand_in_the_part_of_the_page_that_they_are_about(maker: Maker) -> None:
    two_colours = maker.send("/", do="remove blanket.sections.1.stripes.3").typed()
    page = Page(maker.client.post("/answer", data=two_colours).text)
    sections = {s.attributes["aria-labelledby"]: s.text for s in page.root.all("section")}
    assert "of weaving in. If no colour" in sections["h-ends"]
    assert "weaving in. If" not in sections["h-yarn"] + sections["h-hours"]


def test_the_top_bar_names_the_places_there_are(maker: Maker) -> None:
    links = [link.text for link in next(maker.open().root.all("nav")).all("a")]
    assert links == ["Orders", "Sizes", "Measurements", "Yarn", "Workshop"]


def test_the_page_works_without_any_style_or_script_inside_it(maker: Maker) -> None:
    for node in maker.open().root.all(lambda _: True):
        assert "style" not in node.attributes
        assert node.tag != "style"
        assert node.tag != "script" or not node.text
        assert not any(name.startswith("on") for name in node.attributes)
