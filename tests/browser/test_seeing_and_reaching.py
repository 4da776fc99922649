"""Every page for every pair of eyes and hands: axe, phones, zoom, paper."""

import re

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, Page

PAGES = ["", "blank", "sizes", "measurements", "yarn", "workshop", "nowhere"]
AXE = Axe()


def violations(page: Page) -> list[str]:
    """Return what axe finds wrong, one line for each rule."""
    found = AXE.run(page).response["violations"]
    return [f"{rule['id']}: {rule['nodes'][0]['html'][:200]}" for rule in found]


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("path", PAGES)
def test_axe_finds_nothing_wrong(browser: Browser, address: str, path: str, scheme: str) -> None:
    context = browser.new_context(color_scheme=scheme)  # type: ignore[arg-type]
    page = context.new_page()
    page.goto(address + path)
    assert violations(page) == []
    context.close()


def test_axe_finds_nothing_wrong_beside_mistakes_or_on_the_quote(page: Page, address: str) -> None:
    page.goto(address)
    with page.context.expect_page() as opening:
        page.get_by_role("button", name="Quote for the buyer").click()
    opening.value.wait_for_load_state()
    assert violations(opening.value) == []
    page.get_by_label("Width").fill("wide")
    page.get_by_label("Height", exact=True).fill("31 1/2 in")
    page.get_by_text("cannot be read").first.wait_for()
    for summary in page.locator("summary").all():
        summary.click()
    assert violations(page) == []


@pytest.mark.parametrize("width", [320, 390])
@pytest.mark.parametrize("path", PAGES)
def test_a_narrow_screen_never_scrolls_sideways(
    browser: Browser, address: str, path: str, width: int
) -> None:
    context = browser.new_context(viewport={"width": width, "height": 640})
    page = context.new_page()
    page.goto(address + path)
    for summary in page.locator("summary:visible").all():
        summary.click()
    assert page.evaluate("document.documentElement.scrollWidth") <= width
    context.close()


def test_on_a_phone_the_figures_are_a_bar_at_the_foot(browser: Browser, address: str) -> None:
    context = browser.new_context(viewport={"width": 390, "height": 844}, has_touch=True)
    page = context.new_page()
    page.goto(address)
    for height in (0, 2000):
        page.evaluate(f"window.scrollTo(0, {height})")
        bar = page.locator("#figures").bounding_box()
        assert bar is not None
        assert bar["y"] + bar["height"] == 844
        assert bar["height"] < 844 / 8
    assert violations(page) == []
    context.close()


def test_every_target_is_at_least_24_pixels(page: Page, address: str) -> None:
    page.goto(address)
    page.set_viewport_size({"width": 320, "height": 640})
    small = page.evaluate(
        """() => [...document.querySelectorAll("button, input, select, textarea, summary, nav a")]
            .map((each) => [each.outerHTML.slice(0, 80), each.getBoundingClientRect()])
            .filter(([, box]) => box.width && (box.width < 24 || box.height < 24))
            .map(([html]) => html)"""
    )
    assert small == []


def test_at_four_times_zoom_the_form_is_not_hidden_by_the_bar(
    browser: Browser, address: str
) -> None:
    context = browser.new_context(viewport={"width": 320, "height": 256})
    page = context.new_page()
    page.goto(address)
    assert page.locator("#figures").evaluate("bar => getComputedStyle(bar).position") == "static"
    context.close()


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_the_quote_prints_on_one_page(page: Page, address: str, paper: str) -> None:
    page.goto(address)
    with page.context.expect_page() as opening:
        page.get_by_role("button", name="Quote for the buyer").click()
    opening.value.wait_for_load_state()
    printed = opening.value.pdf(format=paper, prefer_css_page_size=False)
    assert len(re.findall(rb"/Type\s*/Page\b", printed)) == 1


def test_the_quote_breaks_a_name_that_no_line_can_hold(page: Page, address: str) -> None:
    page.goto(address)
    page.get_by_label("Title").fill("W" * 80)
    page.get_by_label("What", exact=True).first.fill("M" * 80)
    with page.context.expect_page() as opening:
        page.get_by_role("button", name="Quote for the buyer").click()
    opening.value.wait_for_load_state()
    opening.value.set_viewport_size({"width": 320, "height": 640})
    assert opening.value.evaluate("document.documentElement.scrollWidth") <= 320


def test_nothing_is_fetched_from_elsewhere(page: Page, address: str) -> None:
    asked: list[str] = []
    page.on("request", lambda request: asked.append(request.url))
    page.goto(address)
    with page.expect_response("**/answer"):
        page.get_by_label("Width").fill("90 cm")
    assert asked
    assert all(url.startswith((address, "data:")) for url in asked)
