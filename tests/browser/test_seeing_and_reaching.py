"""Every page for every pair of eyes and hands: axe, phones, zoom, paper."""

import itertools
import re

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, Page, expect

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
    page.get_by_label("Length", exact=True).fill("31 1/2 in")
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


def test_the_figures_stay_in_sight_to_the_foot_of_the_page(page: Page, address: str) -> None:
    page.goto(address)
    page.evaluate("window.scrollTo(0, document.body.scrollHeight)")
    expect(page.locator("#figures dt").first).to_be_in_viewport(ratio=1)


def test_on_a_phone_the_figures_are_a_bar_at_the_foot(browser: Browser, address: str) -> None:
    context = browser.new_context(viewport={"width": 390, "height": 844}, has_touch=True)
    page = context.new_page()
    page.goto(address)
    for height in (0, 2000):
        page.evaluate(f"window.scrollTo(0, {height})")
        bar = page.locator(".bar").bounding_box()
        assert bar is not None
        assert bar["y"] + bar["height"] == 844
        assert bar["height"] < 844 / 6
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
    assert page.locator(".bar").evaluate("bar => getComputedStyle(bar).position") == "static"
    context.close()


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_the_quote_prints_on_one_page(page: Page, address: str, paper: str) -> None:
    page.goto(address)
    with page.context.expect_page() as opening:
        page.get_by_role("button", name="Quote for the buyer").click()
    opening.value.wait_for_load_state()
    printed = opening.value.pdf(format=paper, prefer_css_page_size=False)
    assert len(re.findall(rb"/Type\s*/Page\b", printed)) == 1


def test_on_paper_the_order_has_its_title_and_number_at_its_head(page: Page, address: str) -> None:
    page.goto(address)
    head = page.locator(".on-paper")
    expect(head).to_be_hidden()
    page.emulate_media(media="print")
    expect(head).to_contain_text("Cot blanket in moorland stripes")
    expect(head).to_contain_text("for Rosalind Quill")
    expect(head).to_be_visible()


def test_the_buyers_drawing_has_no_tails_that_look_like_a_fringe(page: Page, address: str) -> None:
    page.goto(address)
    with page.context.expect_page() as opening:
        page.get_by_role("button", name="Quote for the buyer").click()
    drawing = opening.value.locator("figure")
    expect(drawing.locator(".row").first).to_be_visible()
    for mark in (".tail", ".carry", ".join"):
        expect(drawing.locator(mark)).to_have_count(0)
    expect(drawing.get_by_text("teal", exact=True)).to_be_visible()


@pytest.mark.parametrize("width", [320, 390])
def test_the_figures_on_a_phone_never_run_into_each_other(
    browser: Browser, address: str, width: int
) -> None:
    context = browser.new_context(viewport={"width": width, "height": 640})
    page = context.new_page()
    page.goto(address)
    page.get_by_label("Width").fill("400 cm")
    expect(page.locator("#figures dd").first).to_have_text(re.compile("£1,"))
    sides = page.locator("#figures dl > div").evaluate_all(
        """divs => divs.map((div) => {
            const words = document.createRange();
            words.selectNodeContents(div);
            const box = words.getBoundingClientRect();
            return [box.left, box.right, box.top, box.bottom];
        })"""
    )
    for (_, right, _, bottom), (left, _, top, _) in itertools.pairwise(sides):
        assert right < left or bottom <= top
    assert max(right for _, right, _, _ in sides) <= width
    context.close()


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
