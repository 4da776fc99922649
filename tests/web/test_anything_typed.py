"""Whatever is typed into any field, there is an answer in words, and the program goes on."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from quoting.web.orders import order_answer as answers
from tests.examples import sample_workshop
from tests.web.conftest import Maker, maker_in
from tests.web.pages import Page

MAKER = maker_in(sample_workshop())
TYPED = MAKER.open().typed()
NAMES = sorted(TYPED)
NASTY = [
    "",
    "0",
    "-1",
    "1",
    "3",
    "2.5",
    "1e9",
    "999",
    "10000",
    "1000000",
    "NaN",
    "½",
    "'",
    '"',
    "oat",
]
NASTY += [
    "sc",
    "tr",
    "moss",
    "row",
    "2027-02-30",
    "9999-12-31",
    "0001-01-01",
    "\x00",
    "\ud7ff",
    "٣",
]
ANYTHING = st.one_of(st.sampled_from(NASTY), st.text(max_size=12), st.integers().map(str))


@given(st.dictionaries(st.sampled_from(NAMES), ANYTHING, max_size=4))
def test_anything_typed_gets_figures_or_a_reason(changes: dict[str, str]) -> None:
    reply = MAKER.client.post("/", data=TYPED | changes | {"csrf_token": TYPED["csrf_token"]})
    assert reply.status_code == 200
    page = Page(reply.text)
    answered = page.figure("Price").startswith(("£", "-£"))
    told = list(page.with_id("mistakes").all("li")) or "Still to fill in" in page.root.text
    assert answered or told


def test_a_fault_of_the_program_has_a_page_in_words(
    maker: Maker, monkeypatch: pytest.MonkeyPatch, caplog: pytest.LogCaptureFixture
) -> None:
    def broken(*_: object, **__: object) -> None:
        raise ZeroDivisionError

    monkeypatch.setattr(answers, "quote_order", broken)
    page = maker.open()
    assert maker.status == 500
    assert "not your doing" in page.headings[0]
    assert "ZeroDivisionError" in caplog.text
