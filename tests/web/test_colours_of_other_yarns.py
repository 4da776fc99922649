"""A colour of another yarn is chosen where colours are chosen, and the order says which it is."""

from dataclasses import replace

import pytest

from tests.examples import sample_workshop, sample_yarn
from tests.web.conftest import Maker, maker_in
from tests.web.pages import Page

STRIPE = "blanket.sections.1.stripes.2.colour"
MORE = "blanket.colours.2"


@pytest.fixture
def two_yarns() -> Maker:
    """Return a maker who has a second yarn of the same weight."""
    other = replace(
        sample_yarn(), stock=(), name="fell aran", colours={"teal": "#115566", "moss": "#667733"}
    )
    return maker_in(sample_workshop(yarns=(sample_yarn(), other)))


def sent(maker: Maker, **typed: str) -> Page:
    """Send the order with something typed, `__` for a dot."""
    fields = maker.open().typed() | {name.replace("__", "."): text for name, text in typed.items()}
    return Page(maker.client.post("/", data=fields).text)


def test_the_colours_of_every_yarn_are_offered_the_other_ones_under_their_yarn(
    two_yarns: Maker,
) -> None:
    (select,) = two_yarns.open().root.all(lambda n: n.attributes.get("name") == STRIPE)
    (group,) = select.all("optgroup")
    assert group.attributes["label"] == "fell aran"
    offered = [option.attributes["value"] for option in group.all("option")]
    assert offered == ["teal (fell aran)", "moss (fell aran)"]


def test_a_chosen_colour_of_another_yarn_gets_its_line_by_itself(two_yarns: Maker) -> None:
    page = sent(two_yarns, **{STRIPE: "teal (fell aran)"})
    typed = page.typed()
    assert [typed[f"{MORE}.{key}"] for key in ("name", "yarn", "colour")] == [
        "teal (fell aran)",
        "fell aran",
        "teal",
    ]
    assert "teal (fell aran)" in page.with_id("answer").text
    assert page.figure("Price") != "–"


def test_the_same_colour_twice_has_one_line(two_yarns: Maker) -> None:
    page = sent(
        two_yarns, **{STRIPE: "moss (fell aran)", "blanket.border.1.colour": "moss (fell aran)"}
    )
    assert f"{MORE}.name" in page.typed()
    assert "blanket.colours.3.name" not in page.typed()


def test_in_a_list_that_is_typed_the_colour_is_named_as_it_is_offered(two_yarns: Maker) -> None:
    place = "blanket.sections.1.stripes"
    lines = {n: t for n, t in two_yarns.open().typed().items() if not n.startswith(f"{place}.")}
    text = {f"{place}.as_list": "oat\nmoss (fell aran), 2"}
    page = Page(two_yarns.client.post("/", data=lines | text).text)
    assert page.typed()[f"{MORE}.colour"] == "moss"


def test_a_name_that_no_yarn_has_stays_a_mistake(two_yarns: Maker) -> None:
    page = sent(two_yarns, **{STRIPE: "rose (fell aran)"})
    assert f"{MORE}.name" not in page.typed()
    assert "rose (fell aran)" in page.said_of(STRIPE)
