"""The order form as a person meets it: what is asked in which part, by which button it is sent."""

from __future__ import annotations

import pytest

from quoting.core.workshop.stitches import Vocabulary
from quoting.schema import order_text
from tests.web.conftest import maker_in
from tests.web.pages import Node, Page
from tests.web.read_answer import SHOP, mixed_order


@pytest.fixture(scope="module")
def page() -> Page:
    """Return the form with an order of two sections and two bands in it."""
    return maker_in(SHOP).give(order_text(mixed_order(SHOP), Vocabulary.US))


def part(page: Page, legend: str) -> Node:
    """Return the part of the form under a legend."""
    (found,) = (
        field
        for field in page.with_id("order").all("fieldset")
        if next(field.all("legend")).text == legend
    )
    return found


def asked(node: Node) -> dict[str, str]:
    """Return each label of a part and what its field holds."""
    fields = {n.attributes["id"]: n for n in node.all(lambda n: "id" in n.attributes)}
    return {
        label.text: held(fields[label.attributes["for"]])
        for label in node.all("label")
        if label.attributes["for"] in fields
    }


def held(field: Node) -> str:
    """Return what a field holds, of a list what is chosen, of a tick whether it is set."""
    if field.attributes.get("type") == "checkbox":
        return "yes" if "checked" in field.attributes else "no"
    if field.tag != "select":
        return field.attributes.get("value", field.text)
    options = list(field.all("option"))
    chosen = [o for o in options if "selected" in o.attributes] or options[:1]
    return chosen[0].text


def test_the_form_is_asked_in_the_order_of_the_work(page: Page) -> None:
    legends = [next(f.all("legend")).text for f in page.with_id("order").all("fieldset")]
    assert legends == [
        "How it is made",
        "Size",
        "Stitch and yarn",
        "Stripes",
        "Section 2",
        "Section 1",
        "Border",
        "Ends",
        "Extras",
        "Buyer, day and delivery",
        "Price",
        "Made by",
    ]


def test_size_stitch_and_yarn_hold_what_the_order_says(page: Page) -> None:
    size = asked(part(page, "Size"))
    assert (size["Width"], size["Length"]) == ("61 cm", "75 cm")
    chosen = asked(part(page, "Stitch and yarn"))
    assert chosen["Stitch or pattern"] == "hdc, half double crochet"
    assert chosen["Yarn"] == "moor aran"


def test_a_customary_size_can_be_taken(page: Page) -> None:
    (select,) = (n for n in part(page, "Size").all("select"))
    cot = next(o for o in select.all("option") if o.attributes["value"] == "Cot")
    assert (cot.attributes["data-width"], cot.attributes["data-height"]) == ("80 cm", "100 cm")
    assert cot.text.startswith("Cot: 80 × 100")
    assert [b.text for b in part(page, "Size").all("button")] == ["Take this size"]
    sources = [item.text for item in part(page, "Size").all("li")]
    assert any(source.startswith("Cot: ") for source in sources)


def test_the_customary_size_of_the_order_is_chosen_and_no_other() -> None:
    (select,) = (n for n in part(maker_in(SHOP).open(), "Size").all("select"))
    chosen = [o.attributes["value"] for o in select.all("option") if "selected" in o.attributes]
    assert chosen == ["Cot"]


def test_each_line_can_be_moved_copied_and_removed(page: Page) -> None:
    buttons = {
        button.attributes["aria-label"]: button.attributes["value"]
        for button in page.with_id("order").all("button")
        if button.attributes.get("class") == "move"
    }
    place = "blanket.border.2"
    assert buttons["Move border, part 2 up"] == f"up {place}"
    assert buttons["Move border, part 2 down"] == f"down {place}"
    assert buttons["Copy border, part 2"] == f"copy {place}"
    assert buttons["Remove border, part 2"] == f"remove {place}"
    assert buttons["Remove extra 1"] == "remove extras.1"
    assert buttons["Copy section 2"] == "copy blanket.sections.2"
    assert len(set(buttons.values())) == len(buttons)


def test_stripes_lie_as_in_the_drawing_the_first_at_the_bottom(page: Page) -> None:
    names = [
        node.attributes["name"]
        for node in part(page, "Stripes").all("select")
        if node.attributes["name"].endswith(".colour")
    ]
    places = [tuple(int(n) for n in name.split(".") if n.isdigit()) for name in names]
    assert places == sorted(places, reverse=True)
    up = {
        b.attributes["aria-label"]: b.attributes["value"]
        for b in page.root.all("button")
        if "aria-label" in b.attributes and "value" in b.attributes
    }
    assert up["Move Section 1, stripe 1 up"] == "down blanket.sections.1.stripes.1"
    assert up["Move section 2 down"] == "up blanket.sections.2"


def test_a_line_can_be_added_to_each_list(page: Page) -> None:
    buttons = {
        button.text: button.attributes["value"]
        for button in page.with_id("order").all("button")
        if button.attributes.get("class") == "add"
    }
    assert buttons["Add a border"] == "add blanket.border"
    assert buttons["Add an extra"] == "add extras"
    assert buttons["Add a section on top"] == "add blanket.sections"
    assert buttons["Add a colour from another yarn"] == "add blanket.colours"


def test_the_quote_is_asked_for_beside_the_figures(page: Page) -> None:
    (bar,) = (n for n in page.root.all("div") if n.attributes.get("class") == "bar")
    assert bar.text.startswith(page.with_id("figures").text)
    asked_of = {b.text: b.attributes for b in bar.all("button")}
    assert [name for name in asked_of if name != "PDF"] == [
        "Work it out",
        "Quote for the buyer",
        "Message",
    ]
    assert {b["form"] for b in asked_of.values()} == {"order"}
    assert asked_of["Quote for the buyer"]["formaction"] == "/quote"


def test_each_button_at_the_end_sends_the_form_to_its_own_place(page: Page) -> None:
    (row,) = (n for n in page.with_id("order").all("div") if n.attributes.get("class") == "buttons")
    sent = {b.text: b.attributes.get("formaction", "") for b in row.all("button")}
    assert sent == {
        "Work it out": "",
        "Compare sizes": "/sizes/of-order",
        "Save the costing spreadsheet": "/workbook",
        "Save the order file": "/order-file",
        "Working guide": "/guide",
    }


def test_border_and_extras_hold_their_lines(page: Page) -> None:
    bands = [asked(item) for item in part(page, "Border").all("li")]
    assert [(b["Stitch"], b["Colour"], b["Rounds"]) for b in bands] == [
        ("sc, single crochet", "oat", "2"),
        ("sc, single crochet", "teal", "1"),
    ]
    (extra,) = (asked(item) for item in part(page, "Extras").all("li"))
    assert extra["What"] == "Gift box"
    assert "3.20" in extra.values()
    assert "5" in extra.values()


def test_the_buyer_her_day_and_her_country_stand_beside_their_names(page: Page) -> None:
    shown = asked(part(page, "Buyer, day and delivery"))
    assert shown["Title"] == "Cot blanket in moorland stripes"
    assert shown["Buyer"] == "Rosalind Quill"
    assert shown["Wanted by"] == "2027-03-20"
    assert "yes" in shown.values()
    assert "GB" in shown.values()
    assert "EUR" in shown.values()
    assert "No wool: allergy" in shown.values()
    countries = [o.attributes["value"] for o in page.with_id("countries").all("option")]
    assert countries == ["GB"]


def test_the_price_may_be_left_to_the_workshop(page: Page) -> None:
    text = part(page, "Price").text
    assert "The workshop’s margin of 15%" in text
    typed = {name: text for name, text in page.typed().items() if name.startswith("price")}
    assert set(typed.values()) == {""}
    assert len(typed) == 6


def test_an_order_can_be_blank_or_come_from_a_file(page: Page) -> None:
    (ways,) = (n for n in page.root.all("details") if n.attributes.get("class") == "ways")
    assert next(a.attributes["href"] for a in ways.all("a")) == "/blank"
    (reading,) = ways.all("form")
    assert reading.attributes["action"] == "/read"
    assert reading.attributes["enctype"] == "multipart/form-data"
    (file,) = (n for n in reading.all("input") if n.attributes.get("type") == "file")
    assert (file.attributes["name"], file.attributes["accept"]) == ("file", ".toml")


def test_what_was_typed_in_a_fold_keeps_it_open() -> None:
    maker = maker_in(SHOP)
    fields = maker.open().typed()

    def open_folds(**typed: str) -> set[str]:
        sent = fields | {name.replace("__", "."): text for name, text in typed.items()}
        page = Page(maker.client.post("/", data=sent).text)
        return {
            next(fold.all("summary")).text
            for fold in page.with_id("order").all("details")
            if "open" in fold.attributes
        }

    assert "My own counts; colours from another yarn" in open_folds(blanket__multiple="4")
    assert "Row ends and corners" in open_folds(blanket__border__1__row_end_ratio="1.2")
    assert "It takes yarn: a fringe, an initial" in open_folds(extras__1__metres="8")
    shut = open_folds()
    assert "Row ends and corners" not in shut
    assert "It takes yarn: a fringe, an initial" not in shut
    assert "First rows, worked once" in shut
    assert "Last rows, worked once" not in shut


def test_more_mistakes_than_one_are_counted_and_each_leads_to_its_field() -> None:
    page = maker_in(SHOP).send("/", blanket__width="wide", blanket__height="tall")
    told = page.with_id("mistakes")
    assert next(told.all("h2")).text == "2 things to correct"
    links = [a.attributes["href"] for a in told.all("a")]
    assert links == ["#blanket.width", "#blanket.height"]
    one = maker_in(SHOP).send("/", blanket__width="wide").with_id("mistakes")
    assert next(one.all("h2")).text == "One thing to correct"


def test_of_very_many_mistakes_the_first_are_told_and_the_others_counted() -> None:
    """Twenty lines of stripes with neither a colour nor a number of rows."""
    maker = maker_in(SHOP)
    fields = maker.open().typed()
    stripes = "blanket.sections.1.stripes"
    for number in range(4, 24):
        fields |= {f"{stripes}.{number}.colour": "puce", f"{stripes}.{number}.rows": "many"}
    told = Page(maker.client.post("/", data=fields).text).with_id("mistakes")
    count = int(next(told.all("h2")).text.split()[0])
    items = [item.text for item in told.all("li")]
    assert count > 30
    assert len(items) == 31
    assert items[-1] == f"and {count - 30} more, each beside its field."
