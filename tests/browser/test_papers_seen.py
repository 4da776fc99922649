"""Papers, and the pages that make them, for every pair of eyes: axe, colours, phones, enlarged."""

from __future__ import annotations

import pytest
from playwright.sync_api import Browser, Page

from tests.browser.papers import (
    ENLARGED,
    ON_THE_HOOK,
    PHONE,
    SIDEWAYS,
    card_pages,
    open_by,
    paper_pages,
    violations,
    window,
)

COLOURED = ("quote as given", "guide", "row", "shopping for all", "quote of the worktable", "card")
YARNS = {"rgb(217, 201, 163)", "rgb(31, 111, 120)", "rgb(168, 81, 44)"}
"""Oat, teal and rust of the demo's workshop."""

FILLS = """[...document.querySelectorAll("svg.dot circle, svg.drawing *")].map(
  (each) => getComputedStyle(each).fill)"""
PLACES = """() => [...document.querySelectorAll("svg.drawing text")].map((text) => {
  const box = text.getBoundingClientRect(), whole = text.ownerSVGElement.getBoundingClientRect();
  return [text.textContent, box.left, box.right, box.top, box.bottom,
    box.left >= whole.left - 1 && box.right <= whole.right + 1
      && box.top >= whole.top - 1 && box.bottom <= whole.bottom + 1];
})"""


@pytest.mark.parametrize(
    "eyes", [{"color_scheme": "light"}, {"color_scheme": "dark"}, {"forced_colors": "active"}]
)
def test_axe_finds_nothing_wrong_and_yarns_keep_their_colours(
    browser: Browser, book_to_look_at: str, address: str, eyes: dict[str, str]
) -> None:
    wrong: dict[str, list[str]] = {}
    with window(browser, **eyes) as page:
        for name, shown in paper_pages(page, book_to_look_at, address):
            wrong[name] = violations(shown)
            if name in COLOURED:
                assert set(shown.evaluate(FILLS)) >= YARNS, name
    assert {name: found for name, found in wrong.items() if found} == {}


@pytest.mark.parametrize("size", [PHONE, ENLARGED], ids=["phone", "enlarged"])
def test_nothing_scrolls_sideways_on_a_phone_or_enlarged(
    browser: Browser, book_to_look_at: str, address: str, size: dict[str, int]
) -> None:
    with window(browser, viewport=size) as page:
        over = {
            name: shown.evaluate(SIDEWAYS)
            for name, shown in paper_pages(page, book_to_look_at, address)
        }
    assert {name: by for name, by in over.items() if by > 0} == {}


def test_on_a_phone_the_price_stands_before_what_goes_into_it(
    browser: Browser, book_to_look_at: str
) -> None:
    with window(browser, viewport=PHONE) as page:
        page.goto(f"{book_to_look_at}quotes/2026-005/page")
        assert top(page, "figure") < top(page, ".total") < top(page, "h2")


def top(page: Page, selector: str) -> float:
    """Return how far from the top of the page the first of these stands."""
    box = page.locator(selector).first.bounding_box()
    assert box is not None
    return box["y"]


def test_on_a_phone_done_is_in_reach_and_enlarged_it_hides_nothing(
    browser: Browser, book_to_look_at: str
) -> None:
    with window(browser, viewport=PHONE) as page:
        page.goto(f"{book_to_look_at}{ON_THE_HOOK}/guide/row")
        done = page.get_by_role("button", name="Done")
        assert top(page, "#tick button") + 64 <= PHONE["height"]
        page.set_viewport_size(ENLARGED)  # type: ignore[arg-type]
        assert top(page, "#tick button") > ENLARGED["height"]
        assert done.evaluate("done => getComputedStyle(done.closest('.ticks')).position") == (
            "static"
        )


def test_a_message_is_seen_whole(browser: Browser, book_to_look_at: str) -> None:
    with window(browser, viewport=PHONE) as page:
        page.goto(f"{book_to_look_at}quotes/2026-005/message")
        hidden = page.get_by_role("textbox").evaluate(
            "text => text.scrollHeight - text.clientHeight"
        )
        assert hidden <= 0


@pytest.mark.parametrize("rows", [10, 400])
def test_a_drawing_of_few_or_many_rows_has_all_its_words_apart(
    page: Page, address: str, rows: int
) -> None:
    page.goto(address)
    page.get_by_label("Length", exact=True).fill(f"{rows * 0.95:.1f} cm")
    for button in ("Quote for the buyer", "Working guide"):
        shown = open_by(page, button)
        figure = shown.locator("figure").first.bounding_box()
        assert figure is not None
        assert figure["height"] > figure["width"] / 8
        shown.set_viewport_size(PHONE)  # type: ignore[arg-type]
        assert shown.evaluate(SIDEWAYS) <= 0
        words = shown.evaluate(PLACES)
        assert len(words) > 3
        assert [word for word, *_, is_inside in words if not is_inside] == []
        assert overlapping(words) == []
        shown.close()


def overlapping(words: list[tuple[str, float, float, float, float, bool]]) -> list[tuple[str, str]]:
    """Return the pairs of words that are written over each other."""
    pairs = [(one, other) for at, one in enumerate(words) for other in words[at + 1 :]]
    return [(one[0], other[0]) for one, other in pairs if share_room(one[1:5], other[1:5])]


def share_room(one: tuple[float, ...], other: tuple[float, ...]) -> bool:
    """Return whether two boxes (left, right, top, bottom) share more than the edge of a letter."""
    wide = min(one[1], other[1]) - max(one[0], other[0])
    high = min(one[3], other[3]) - max(one[2], other[2])
    return wide > 1 and high > (one[3] - one[2]) / 4


@pytest.mark.parametrize(
    ("language", "lang", "total"),
    [
        ("English (United Kingdom)", "en", "£297.00"),
        ("Deutsch", "de", "297,00\xa0£"),
        ("English (United States)", "en", "£297.00"),
    ],
)
def test_a_quote_in_each_language_is_as_well_to_read(
    page: Page, address: str, language: str, lang: str, total: str
) -> None:
    page.goto(address)
    page.get_by_label("Language of the quote").select_option(label=language)
    quote = open_by(page, "Quote for the buyer")
    assert quote.locator("html").get_attribute("lang") == lang
    assert quote.locator(".total .n").inner_text() == total
    assert violations(quote) == []
    quote.set_viewport_size(PHONE)  # type: ignore[arg-type]
    assert quote.evaluate(SIDEWAYS) <= 0


CUT = """() => [...document.querySelectorAll(".facts dt")].filter((name) => {
  Object.assign(name.style, { overflowWrap: "normal", minWidth: 0 });
  return name.scrollWidth > name.clientWidth;
}).map((name) => name.innerText)"""
"""Which names of facts do not fit without a break within a word."""


def test_the_long_words_of_what_becomes_of_ends_are_not_broken(page: Page, address: str) -> None:
    page.goto(address)
    page.get_by_label("Language of the quote").select_option(label="Deutsch")
    page.get_by_label("Ends are").select_option("enclosed")
    quote = open_by(page, "Quote for the buyer")
    assert "eingeschlossene" in quote.locator(".two > :first-child").inner_text()
    assert quote.evaluate(CUT) == []
    quote.emulate_media(media="print")
    assert quote.evaluate(CUT) == []


def test_sizes_ticked_while_an_answer_is_under_way_stay_ticked(page: Page, address: str) -> None:
    page.goto(f"{address}sizes")
    page.route("**/sizes/answer", lambda route: (page.wait_for_timeout(50), route.continue_()))
    page.get_by_label("Own size 1", exact=True).fill("90x90")
    page.wait_for_timeout(260)
    page.get_by_label("Cot on a card").check()
    page.get_by_label("Lap on a card").check()
    page.get_by_text("90 × 90").first.wait_for()
    page.get_by_role("button", name="Card of choices").click()
    page.get_by_role("heading", level=1, name="Card of choices").wait_for()


def test_without_a_script_card_and_alone_are_reached(browser: Browser, address: str) -> None:
    with window(browser, java_script_enabled=False) as page:
        names = [
            (name, shown.locator(".paper svg.drawing").count())
            for name, shown in card_pages(page, address)
        ]
    assert names == [("card", 2), ("card alone", 2)]
