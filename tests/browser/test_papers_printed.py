"""Papers as a browser prints them: letters that can be read, and no more sheets than it takes."""

from __future__ import annotations

import re

import pytest
from playwright.sync_api import Browser, Page

from tests.browser.papers import open_by, paper_pages, window

LEAST_PX = 12
"""9 pt, at 96 pixels and 72 points to an inch (CSS Values and Units, 6.2)."""

BETWEEN_MARGINS = {"width": 688, "height": 1017}
"""A4 within margins of 14 mm, in pixels (ISO 216: 210 by 297 mm)."""

SHEETS = ("A4", "Letter")

LETTERS = """() => {
  const words = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  const found = [];
  while (words.nextNode()) {
    const within = words.currentNode.parentElement;
    if (!words.currentNode.data.trim() || !within.checkVisibility()) continue;
    if (within.closest("title, desc, script, .quiet, .skip")) continue;
    const scale = within.ownerSVGElement ? Math.abs(within.getScreenCTM().d) : 1;
    const size = parseFloat(getComputedStyle(within).fontSize) * scale;
    found.push([words.currentNode.data.trim(), size]);
  }
  return found;
}"""


def sheets(page: Page, paper: str) -> int:
    """Return how many sheets of paper a page takes."""
    printed: bytes = page.pdf(format=paper, prefer_css_page_size=False)
    return len(re.findall(rb"/Type\s*/Page\b", printed))


def test_no_letter_on_paper_is_below_nine_points(
    browser: Browser, book_to_look_at: str, address: str
) -> None:
    with window(browser, viewport=BETWEEN_MARGINS) as page:
        for name, shown in paper_pages(page, book_to_look_at, address):
            shown.set_viewport_size(BETWEEN_MARGINS)  # type: ignore[arg-type]
            shown.emulate_media(media="print")
            letters = shown.evaluate(LETTERS)
            shown.emulate_media(media="screen")
            assert letters, name
            assert [word for word, size in letters if size < LEAST_PX - 0.01] == [], name


def test_quotes_cards_lists_and_the_row_at_hand_are_one_sheet_and_a_guide_is_two(
    browser: Browser, book_to_look_at: str, address: str
) -> None:
    longer = {"given quote": 2, "guide": 2}
    with window(browser) as page:
        for name, shown in paper_pages(page, book_to_look_at, address):
            for paper in SHEETS:
                assert sheets(shown, paper) <= longer.get(name, 1), (name, paper)


@pytest.mark.parametrize("language", ["Deutsch", "English (United States)"])
def test_a_quote_is_one_sheet_in_another_language_too(
    page: Page, address: str, language: str
) -> None:
    page.goto(address)
    page.get_by_label("Language of the quote").select_option(label=language)
    quote = open_by(page, "Quote for the buyer")
    assert [sheets(quote, paper) for paper in SHEETS] == [1, 1]
