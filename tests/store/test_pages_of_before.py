"""A page that was kept before there were languages forgets its buyer, and stays in English."""

from __future__ import annotations

import json

import pytest

from quoting.core.quote.offer import offer_of
from quoting.schema.offer_shape import offer_record
from quoting.store.forgotten_texts import page_without
from quoting.wording import people_texts
from tests.examples import sample_order, sample_quote, sample_workshop

BEFORE = """<!doctype html>
<html lang="{language}">
<head><title data-of="name">Quote 2026-001 – Maud’s blanket</title></head>
<body><main class="paper"><header><p class="maker">Ottermoor Blankets</p>
<h1 data-of="title">Maud’s blanket</h1>
<p data-of="heading">Quote 2026-001 of 25 November 2026 for Maud Hollin</p></header>
<figure><svg class="drawing"><title id="blanket-title">Maud’s blanket, drawn to scale</title></svg>
</figure><dl class="facts"><div><dt>With it</dt><dd data-of="extras">a tag for Maud</dd></div></dl>
<section class="notes"><p>Work begins when the deposit has come.</p></section></main></body></html>
"""

NEWER = ("stitch_words", "border", "goes_in", "size_within_cm", "change_days")
"""Keys that no offer had when the page was kept."""


def forgotten(page: str) -> str:
    """Return a page of a German workshop whose buyer was forgotten."""
    order = sample_order(title="(forgotten) blanket", buyer="(forgotten)", extras=())
    record = offer_record(offer_of(sample_quote(order, sample_workshop(locale="de_DE"))))
    for key in NEWER:
        record.pop(key, None)
    return page_without(page, json.dumps(record | {"number": "2026-001"}), people_texts)


def test_no_word_of_her_is_left_and_all_else_is() -> None:
    page = forgotten(BEFORE.format(language="en"))
    assert "Maud" not in page
    assert "Hollin" not in page
    for words in ("Work begins when the deposit has come.", "With it", "Ottermoor Blankets"):
        assert words in page


def test_the_words_beside_hers_are_in_the_language_of_the_page() -> None:
    page = forgotten(BEFORE.format(language="en"))
    assert "Quote 2026-001 of 25. November 2026 for (forgotten)" in page
    assert "(forgotten) blanket, drawn to scale" in page


@pytest.mark.parametrize("language", ["de", "tlh", ""])
def test_whatever_the_language_of_a_page_she_is_forgotten(language: str) -> None:
    page = forgotten(BEFORE.format(language=language))
    assert "Maud" not in page
    assert "(forgotten)" in page
