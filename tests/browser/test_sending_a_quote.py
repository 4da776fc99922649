"""From the buyer's page the maker prints, saves a PDF and copies a message, by a button each."""

from __future__ import annotations

from playwright.sync_api import Browser, Page, expect

from tests.programs import require_package

NO_CLIPBOARD = "delete Navigator.prototype.clipboard; document.execCommand = () => false;"
SIZES = """[...document.querySelectorAll("main *")].map(
  (each) => parseFloat(getComputedStyle(each).fontSize))"""
PRINTED = "window.print = () => { document.title = 'printed'; };"


def open_quote(page: Page, address: str) -> Page:
    """Open the page for the buyer in the window that its button asks for."""
    page.goto(address)
    with page.expect_popup() as opened:
        page.get_by_role("button", name="Quote for the buyer").click()
    return opened.value


def test_one_button_copies_the_message(page: Page, address: str) -> None:
    page.context.grant_permissions(["clipboard-read", "clipboard-write"])
    quote = open_quote(page, address)
    quote.get_by_role("button", name="Copy as message").click()
    expect(quote.get_by_role("status")).to_have_text("Copied.")
    copied = quote.evaluate("navigator.clipboard.readText()")
    assert copied.startswith("Cot blanket in moorland stripes\nQuote 2")
    assert "Total: £297.00" in copied


def test_a_browser_that_lends_no_clipboard_marks_the_text(page: Page, address: str) -> None:
    page.context.add_init_script(NO_CLIPBOARD)
    quote = open_quote(page, address)
    quote.get_by_role("button", name="Copy as message").click()
    expect(quote.get_by_role("status")).to_contain_text("copy it by hand")
    assert "Total: £297.00" in quote.evaluate("getSelection().toString()")


def test_the_button_prints_the_page_without_the_buttons(page: Page, address: str) -> None:
    page.context.add_init_script(PRINTED)
    quote = open_quote(page, address)
    quote.get_by_role("button", name="Print").click()
    expect(quote).to_have_title("printed")
    quote.emulate_media(media="print")
    expect(quote.get_by_role("button", name="Print")).to_be_hidden()
    sizes = quote.evaluate(SIZES)
    assert min(size * 72 / 96 for size in sizes if size) >= 9


def test_the_pdf_is_saved_and_the_page_stays(page: Page, address: str) -> None:
    require_package("typst")
    quote = open_quote(page, address)
    with quote.expect_download() as saved:
        quote.get_by_role("button", name="Save as PDF").click()
    assert saved.value.suggested_filename.endswith("cot-blanket-in-moorland-stripes.pdf")
    expect(quote.get_by_role("heading", level=1)).to_have_text("Cot blanket in moorland stripes")


def test_on_a_phone_and_enlarged_the_page_needs_no_sideways_scrolling(
    page: Page, address: str
) -> None:
    """WCAG 2.2, 1.4.10: 320 CSS pixels, as 1280 at 400 %."""
    page.set_viewport_size({"width": 320, "height": 640})
    quote = open_quote(page, address)
    quote.set_viewport_size({"width": 320, "height": 640})
    assert quote.evaluate("document.documentElement.scrollWidth") <= 320


def test_the_makers_page_of_a_given_quote_prints_the_buyers(order: Page) -> None:
    order.context.add_init_script(PRINTED)
    order.get_by_role("button", name="Give this quote").click()
    with order.expect_popup() as opened:
        order.get_by_role("button", name="Print").click()
    expect(opened.value).to_have_title("printed")
    assert opened.value.url.endswith("/page")


def test_without_javascript_the_message_stands_on_a_page_of_its_own(
    browser: Browser, address: str
) -> None:
    context = browser.new_context(java_script_enabled=False)
    quote = open_quote(context.new_page(), address)
    expect(quote.get_by_role("button", name="Print")).to_be_hidden()
    quote.get_by_role("button", name="Copy as message").click()
    expect(quote.get_by_role("textbox")).to_contain_text("Total: £297.00")
    context.close()
