"""Makers on either side of the Atlantic read their own words, in their own spelling."""

from __future__ import annotations

import io
import re
import zipfile
from collections.abc import Callable
from dataclasses import replace

import pytest
from openpyxl import load_workbook

from exports.comparison_workbook.book import write_comparison
from exports.costing_workbook import workbook_bytes
from exports.drawing import draw_blanket
from quoting.cli.comparison_table import comparison_table
from quoting.cli.quote_table import quote_table
from quoting.core.order.order import Order
from quoting.core.order.resizing import Size
from quoting.core.quote.quote import Quote
from quoting.core.weighing.comparison import compare_sizes
from quoting.core.workshop.stitches import Vocabulary
from quoting.core.workshop.workshop import Workshop
from quoting.web.app import create_app
from quoting.web.shop import open_shop
from quoting.wording import speech_of
from quoting.wording.mistakes import MISTAKES
from quoting.wording.trade_speech import (
    AMERICAN_EVERYDAY,
    AMERICAN_SPELLING,
    AMERICAN_WORDS,
    worded,
)
from tests.examples import TODAY, sample_order, sample_quote, sample_workshop
from tests.motif_examples import centre_order, motif_workshop, squares_order
from tests.wording.shown import Shown

PAGES = ("/", "/sizes", "/measurements", "/yarn", "/workshop")
"""What there is to read of a workshop without a book."""

Read = Callable[[str, Vocabulary], str]
"""Reads what a workshop of a locale and its stitch names is shown."""

AMERICAN, BRITISH = ("en_US", Vocabulary.US), ("en_GB", Vocabulary.UK)
BRITISH_ALONE = {*AMERICAN_WORDS, *AMERICAN_SPELLING, *AMERICAN_EVERYDAY}
AMERICAN_ALONE = {*AMERICAN_WORDS.values(), *AMERICAN_SPELLING.values()}


def workshop_in(locale: str, speaks: Vocabulary) -> Workshop:
    return replace(sample_workshop(), locale=locale, speaks=speaks)


def quote_in(locale: str, speaks: Vocabulary) -> Quote:
    return sample_quote(workshop=workshop_in(locale, speaks))


def pages_in(locale: str, speaks: Vocabulary) -> str:
    shop = open_shop(workshop_in(locale, speaks), today=lambda: TODAY).starting_with(sample_order())
    client = create_app(shop).test_client()
    return "\n".join("\n".join(Shown(client.get(page).text).said) for page in PAGES)


def cells_of(workbook: bytes) -> str:
    sheets = [
        [str(cell.value) for row in sheet.iter_rows() for cell in row if cell.value is not None]
        for values in (False, True)
        for sheet in load_workbook(io.BytesIO(workbook), data_only=values)
    ]
    charts = [
        part.read(name).decode("utf-8")
        for part in [zipfile.ZipFile(io.BytesIO(workbook))]
        for name in part.namelist()
        if "drawing" in name or "chart" in name
    ]
    return "\n".join([text for sheet in sheets for text in sheet] + charts)


def documents_in(locale: str, speaks: Vocabulary) -> str:
    quote = quote_in(locale, speaks)
    speech = speech_of(quote.workshop)
    sizes = [Size(width_cm=70, height_cm=90), Size(width_cm=80, height_cm=100)]
    comparison = compare_sizes(quote.order, quote.workshop, sizes, today=TODAY)
    return "\n".join(
        (
            quote_table(quote),
            comparison_table(comparison, speech),
            cells_of(workbook_bytes(quote)),
            cells_of(write_comparison(comparison)),
            draw_blanket(quote, speech),
        )
    )


def found(words: set[str], text: str) -> set[str]:
    return {word for word in words if re.search(rf"\b{word}\b", text, re.IGNORECASE)}


@pytest.mark.parametrize("read", [pages_in, documents_in])
def test_an_american_workshop_reads_no_british_word_or_spelling(read: Read) -> None:
    text = read(*AMERICAN)
    assert found(BRITISH_ALONE, text) == set()
    assert found({"skeins", "color", "gauge"}, text) == {"skeins", "color", "gauge"}


@pytest.mark.parametrize("read", [pages_in, documents_in])
def test_a_british_workshop_reads_no_american_word_or_spelling(read: Read) -> None:
    text = read(*BRITISH)
    assert found(AMERICAN_ALONE, text) == set()
    assert found({"balls", "colour", "tension"}, text) == {"balls", "colour", "tension"}


@pytest.mark.parametrize("order", [centre_order(), squares_order()])
def test_rounds_and_motifs_are_told_in_american_spelling_too(order: Order) -> None:
    workshop = motif_workshop(locale="en_US", speaks=Vocabulary.US)
    quote = sample_quote(order, workshop)
    shop = open_shop(workshop, today=lambda: TODAY).starting_with(order)
    page = create_app(shop).test_client().get("/").text
    told = (*Shown(page).said, quote_table(quote), cells_of(workbook_bytes(quote)))
    assert found(BRITISH_ALONE, "\n".join(told)) == set()
    assert "center" in "\n".join(told)


def test_words_follow_the_stitch_names_and_spelling_the_locale() -> None:
    """Some write *colour* and work in American terms, as the demo's maker does."""
    said = "A ball of this colour"
    assert worded(said, Vocabulary.US, "en_GB") == "A skein of this colour"
    assert worded(said, Vocabulary.UK, "en_US") == "A ball of this color"
    assert worded(said, Vocabulary.UK, "de_DE") == said


def test_a_word_keeps_its_capital_and_is_a_whole_one() -> None:
    assert worded("Balls, BALL, football", Vocabulary.US, "en_GB") == "Skeins, Skein, football"


def test_names_of_facts_in_a_sentence_stay() -> None:
    """Else the sentence could not be filled in."""
    said = worded("The balls of {colour}", Vocabulary.US, "en_US")
    assert said == "The skeins of {colour}"


def test_what_is_typed_keeps_its_words() -> None:
    order = replace(sample_order(), title="Grey ball of labour")
    shop = open_shop(workshop_in(*AMERICAN), today=lambda: TODAY).starting_with(order)
    assert "Grey ball of labour" in create_app(shop).test_client().get("/").text
    quote = sample_quote(order, workshop_in(*AMERICAN))
    assert "Grey ball of labour" in quote_table(quote)
    assert "Grey ball of labour" in cells_of(workbook_bytes(quote))


@pytest.mark.parametrize("code", sorted(MISTAKES))
def test_no_mistake_is_told_in_american_words_at_home(code: str) -> None:
    """The program's own texts are British throughout, or an exchange of words would miss some."""
    assert found(AMERICAN_ALONE - {"gauge"}, " ".join(MISTAKES[code])) == set()
