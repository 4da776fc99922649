"""Papers, and the pages that make them, by the keyboard alone, by a thumb and without a script."""

from __future__ import annotations

from playwright.sync_api import Browser, Page, expect

from tests.browser.papers import IN_THE_BOOK, PHONE, open_by, paper_pages, window

LISTED = """() => {
  const reached = "a[href], button, input, select, textarea, summary, [tabindex='0']";
  window.turns = [...document.querySelectorAll(reached)].filter((each) =>
    each.checkVisibility() && !each.disabled && each.type !== "hidden" && each.tabIndex >= 0);
  return window.turns.length;
}"""
AT = "window.turns.indexOf(document.activeElement)"
MOST_STOPS = 5
"""A day's field stops at its day, its month, its year and its calendar."""

SMALL = """(least) => [...document.querySelectorAll("button, input, select, textarea, summary, a")]
  .filter((each) => each.checkVisibility() && !each.matches(".skip"))
  .filter((each) => !(each.matches("a") && getComputedStyle(each).display === "inline"
    && each.parentElement.textContent.trim() !== each.textContent.trim()))
  .map((each) => [each.outerHTML.slice(0, 90), each.getBoundingClientRect()])
  .filter(([, box]) => box.width < least || box.height < least).map(([html]) => html)"""
"""What is smaller than it may be; a link within a sentence may be (WCAG 2.2, 2.5.8)."""


def turns_of(page: Page) -> list[int]:
    """Return which of the page's buttons, links and fields Tab came to, in its order."""
    count = page.evaluate(LISTED)
    reached: list[int] = []
    for _ in range(count * MOST_STOPS):
        page.keyboard.press("Tab")
        at = page.evaluate(AT)
        if not reached or reached[-1] != at:
            reached.append(at)
        if len(reached) >= count:
            break
    return reached


def test_tab_comes_to_everything_in_the_order_of_the_page(
    browser: Browser, book_to_look_at: str, address: str
) -> None:
    with window(browser) as page:
        for name, shown in paper_pages(page, book_to_look_at, address):
            reached = turns_of(shown)
            assert reached == list(range(len(reached))), name
            assert len(reached) == shown.evaluate("window.turns.length"), name


def test_enter_makes_the_quote_and_the_list(page: Page, book_to_look_at: str, address: str) -> None:
    page.goto(address)
    with page.expect_popup() as opened:
        page.get_by_role("button", name="Quote for the buyer").press("Enter")
    expect(opened.value.get_by_role("heading", level=1)).to_be_visible()
    page.goto(f"{book_to_look_at}orders/shopping")
    page.get_by_role("checkbox", name="A spare skein of each line").press("Space")
    page.get_by_role("button", name="Make the list").press("Enter")
    expect(page.get_by_text("A spare skein of each line", exact=True).last).to_be_visible()
    expect(page.get_by_role("checkbox", name="A spare skein of each line")).to_be_checked()


def test_every_target_is_24_pixels_and_while_crocheting_44(
    browser: Browser, book_to_look_at: str, address: str
) -> None:
    with window(browser, viewport=PHONE) as page:
        small = {
            name: shown.evaluate(SMALL, 24)
            for name, shown in paper_pages(page, book_to_look_at, address)
        }
        assert {name: found for name, found in small.items() if found} == {}
        page.goto(book_to_look_at + IN_THE_BOOK["row"])
        for button in page.locator("main button").all():
            box = button.bounding_box()
            assert box is not None
            assert min(box["width"], box["height"]) >= 44


def test_without_a_script_everything_is_there_and_nothing_dead_is_offered(
    browser: Browser, book_to_look_at: str, address: str
) -> None:
    with window(browser, java_script_enabled=False) as page:
        for name, shown in paper_pages(page, book_to_look_at, address):
            assert shown.get_by_role("heading", level=1).count() == 1, name
            expect(shown.get_by_role("button", name="Print", exact=True)).to_have_count(0)
        page.goto(f"{book_to_look_at}orders/shopping")
        page.get_by_label("Small cot blanket").uncheck()
        page.get_by_role("button", name="Make the list").click()
        expect(page.get_by_label("Small cot blanket")).not_to_be_checked()
        page.goto(address)
        quote = open_by(page, "Quote for the buyer")
        quote.get_by_role("button", name="Copy as message").click()
        expect(quote.get_by_role("textbox")).to_contain_text("Total: £297.00")
