"""The construction changed at the top of the design as a maker does, her squares laid out."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from playwright.sync_api import Locator, Page, expect

from tests.browser.serving import serving

PHONE = {"width": 360, "height": 740}


@pytest.fixture(scope="module")
def with_motifs(tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    """Serve the worktable of a workshop that has measured squares."""
    folder = tmp_path_factory.mktemp("motifs")
    with serving("tests.browser.motif_worktable", "0", folder=folder) as address:
        yield address


@pytest.fixture
def table(page: Page, with_motifs: str) -> Page:
    """Open that worktable."""
    page.goto(with_motifs)
    return page


def field(table: Page, name: str) -> Locator:
    """Return a field by its name."""
    return table.locator(f'[name="{name}"]')


def construction(table: Page) -> Locator:
    """Return the choice at the top."""
    return table.get_by_label("Worked", exact=True)


def price(table: Page) -> str:
    """Return the price among the figures."""
    return table.locator("#figures").inner_text().split("\n")[1]


def test_the_fields_change_at_once_and_the_choice_keeps_the_focus(table: Page) -> None:
    rows = price(table)
    field(table, "order.notes").fill("Soft, please")
    construction(table).focus()
    construction(table).select_option(label="from the centre outwards")
    expect(table.get_by_role("group", name="From the centre outwards")).to_be_visible()
    expect(construction(table)).to_be_focused()
    expect(table.locator("#answer")).to_contain_text("rounds,")
    expect(field(table, "order.notes")).to_have_value("Soft, please")
    construction(table).select_option(label="in rows, from edge to edge")
    expect(field(table, "blanket.sections.1.stripes.2.colour")).to_have_value("rust")
    expect(table.locator("#figures")).to_contain_text(rows)


def test_squares_are_laid_out_and_their_counts_read(table: Page) -> None:
    construction(table).select_option(label="in motifs that are joined")
    expect(table.get_by_label("Motif", exact=True)).to_be_visible()
    field(table, "blanket.width").fill("130")
    field(table, "blanket.height").fill("170")
    table.get_by_role("button", name="Add a layout").click()
    first = table.get_by_label("Colour of layout 2, round 1")
    expect(first).to_be_focused()
    first.select_option("slate")
    table.get_by_label("How they are joined").select_option(label="crocheted: single crochet")
    field(table, "blanket.squares.join.colour").select_option("oat")
    expect(table.locator("#h-size ~ details").first).to_contain_text("8 motifs across, 11 down: 88")
    expect(table.locator("#answer")).to_contain_text("3,297 sc in the joins.")
    expect(table.locator("#answer")).to_contain_text("44 of slate, teal, rust, plum, moss")


def test_another_motif_keeps_the_colours_that_fit_at_once(table: Page) -> None:
    construction(table).select_option(label="in motifs that are joined")
    motif = table.get_by_label("Motif", exact=True)
    motif.focus()
    motif.select_option("reed square")
    expect(field(table, "blanket.squares.layouts.1.colours.4.value")).to_have_count(0)
    expect(field(table, "blanket.squares.layouts.1.colours.3.value")).to_be_visible()
    expect(table.locator("#mistakes")).to_have_text("")
    expect(motif).to_be_focused()


def test_mixing_goes_on_from_the_first_colour_of_the_pool(table: Page) -> None:
    construction(table).select_option(label="in motifs that are joined")
    table.get_by_role("button", name="Mix these colours evenly instead").click()
    expect(field(table, "blanket.squares.pool.colours.1.value")).to_be_focused()
    table.get_by_role("button", name="Lay them out round by round instead").click()
    expect(field(table, "blanket.squares.layouts.1.colours.1.value")).to_be_focused()


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("word", ["centre", "squares"])
def test_its_fields_fit_a_small_phone(table: Page, word: str, scheme: str) -> None:
    table.set_viewport_size({"width": PHONE["width"], "height": PHONE["height"]})
    table.emulate_media(color_scheme="dark" if scheme == "dark" else "light")
    construction(table).select_option(word)
    expect(field(table, f"blanket.{word}.motif")).to_be_visible()
    assert table.evaluate("document.documentElement.scrollWidth") <= PHONE["width"]


CUT = """select => {
  const shown = select.cloneNode();
  shown.style.cssText = "width: auto; max-width: none; position: absolute";
  select.after(shown);
  const wide = [...select.options].filter((option) => {
    shown.replaceChildren(option.cloneNode(true));
    return shown.offsetWidth > select.offsetWidth;
  });
  shown.remove();
  return wide.map((option) => option.label);
}"""
"""Which words of a list are cut when they are chosen."""


@pytest.mark.parametrize("width", [PHONE["width"], 1280])
@pytest.mark.parametrize(
    ("word", "lists"), [("centre", ["counting", "motif"]), ("squares", ["join.method"])]
)
def test_shapes_and_joins_are_read_whole(
    table: Page, word: str, lists: list[str], width: int
) -> None:
    table.set_viewport_size({"width": width, "height": PHONE["height"]})
    construction(table).select_option(word)
    for name in lists:
        assert field(table, f"blanket.{word}.{name}").evaluate(CUT) == []
