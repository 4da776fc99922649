"""What is taken out of an order can be put back, as it was typed and where it stood."""

import pytest

from tests.web.conftest import Maker
from tests.web.pages import Page

SECTION = "blanket.sections.1"
STRIPES = f"{SECTION}.stripes"


def pressed(maker: Maker, page: Page, do: str, **changes: str) -> Page:
    """Press a button of the form."""
    waiting = page.root.all(lambda n: n.attributes.get("name") == "removed")
    removed = {"removed": [node.attributes["value"] for node in waiting]}
    return Page(maker.client.post("/", data=page.typed() | removed | changes | {"do": do}).text)


def same(page: Page, other: Page) -> bool:
    """Return whether two pages have the same in every field but their tokens."""
    mine, others = (p.typed() | {"csrf_token": ""} for p in (page, other))
    return mine == others


@pytest.mark.parametrize("place", [f"{STRIPES}.2", SECTION, "blanket.border.1", "extras.1"])
def test_a_removed_line_is_put_back_where_it_stood_as_it_was_typed(
    maker: Maker, place: str
) -> None:
    page = pressed(maker, maker.open(), "add extras")
    spoilt = {f"{STRIPES}.2.rows": "two", "blanket.border.1.rounds": "x", "extras.1.what": "a name"}
    before = pressed(maker, page, "", **spoilt)
    gone = pressed(maker, before, f"remove {place}")
    assert not same(gone, before)
    assert same(pressed(maker, gone, "back 1"), before)


def test_lines_removed_one_after_another_are_put_back_in_any_order(maker: Maker) -> None:
    before = maker.open()
    one = pressed(maker, before, f"remove {STRIPES}.1")
    both = pressed(maker, one, f"remove {STRIPES}.1")
    text = both.root.text
    assert text.index("Removed: stripe rust") < text.index("Removed: stripe teal")
    for first, then in ("back 1", "back 1"), ("back 2", "back 1"):
        assert same(pressed(maker, pressed(maker, both, first), then), before)


def test_a_stripe_removed_from_a_section_that_moves_goes_back_into_that_section(
    maker: Maker,
) -> None:
    two = pressed(maker, maker.open(), f"copy {SECTION}")
    gone = pressed(maker, two, f"remove {STRIPES}.2")
    moved = pressed(maker, gone, f"down {SECTION}")
    assert not same(moved, gone)
    back = pressed(maker, moved, "back 1")
    assert same(pressed(maker, back, "up blanket.sections.2"), two)


def test_a_stripe_removed_before_its_list_became_a_text_goes_back_into_the_list(
    maker: Maker,
) -> None:
    before = maker.open()
    gone = pressed(maker, before, f"remove {STRIPES}.2")
    text = pressed(maker, gone, f"as_text {STRIPES}")
    assert same(pressed(maker, text, "back 1"), before)


def test_removed_lines_that_wait_change_no_answer(maker: Maker) -> None:
    fields = maker.open().typed() | {f"{STRIPES}.2.colour": "teal"}
    gone = pressed(maker, Page(maker.client.post("/", data=fields).text), f"remove {STRIPES}.2")
    waiting = gone.typed()
    without = {name: text for name, text in waiting.items() if name != "removed"}
    assert "removed" in waiting
    answers = [Page(maker.client.post("/", data=sent).text) for sent in (waiting, without)]
    assert answers[0].figure("Price") == answers[1].figure("Price")


@pytest.mark.parametrize(
    "text", ["", "x", "[]", '["extras", -1, [["what", "a"]]]', '["extras", 0, []]', "[" * 9999]
)
def test_what_is_no_removed_line_is_not_offered(maker: Maker, text: str) -> None:
    fields = maker.open().typed() | {"removed": text}
    page = maker.client.post("/", data=fields | {"do": "back 1"})
    assert page.status_code == 200
    assert "Put it back" not in page.text
