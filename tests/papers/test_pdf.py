"""A quote's PDF says what its page and its message say, and can be read aloud."""

from __future__ import annotations

import re

import pytest

from exports.papers.message import paper_text
from exports.papers.offers import given_paper, quote_paper
from exports.papers.pdf import paper_pdf
from quoting.core.quote.offer import offer_of
from quoting.places import demo_order, demo_workshop
from quoting.schema import load_order, load_workshop
from quoting.web import create_app
from quoting.web.papers.showing import paper_page
from quoting.web.shop import open_shop
from quoting.wording.locales import is_locale
from quoting.wording.paper import Amounts, Listing, Paper, Picture, SaidRow, Sheet, Words
from tests.examples import TODAY, sample_quote, sample_workshop
from tests.papers.reading import MM, figures_of, pdf_words, read_pdf, sample_paper, squeezed, within
from tests.programs import require_package
from tests.web.pages import Page

WOOL = "צמר"
"""Wool, in Hebrew."""


@pytest.fixture(scope="module")
def demo() -> Paper:
    """Return the paper of the demo's quote."""
    from quoting.core.quote.quote import quote_order

    workshop = load_workshop(demo_workshop(), is_locale)
    return quote_paper(quote_order(load_order(demo_order(), workshop), workshop, today=TODAY))


def page_text(paper: Paper) -> str:
    app = create_app(open_shop(sample_workshop(), today=lambda: TODAY))
    with app.test_request_context():
        return Page(paper_page(paper)).root.text


def test_page_and_pdf_are_tagged_with_the_language_of_one_country_as_readers_know_it() -> None:
    """BCP 47 (RFC 5646, 2.1): a hyphen stands between a language and its region."""
    paper = sample_paper(language="de_AT")
    app = create_app(open_shop(sample_workshop(), today=lambda: TODAY))
    with app.test_request_context():
        page = paper_page(paper)
    assert '<html lang="de-AT"' in page
    assert read_pdf(paper).trailer["/Root"]["/Lang"].lower() == "de-at"


def test_page_pdf_and_message_say_the_same_figures(demo: Paper) -> None:
    figures = figures_of(demo)
    assert ("Total", "£297.00") in figures
    assert len(figures) > 10
    message, page = paper_text(demo), squeezed(page_text(demo))
    pdf = pdf_words(demo)
    for name, said in figures:
        assert squeezed(f"{name}{said}") in page, name
        assert squeezed(f"{name}{said}") in pdf, name
        assert squeezed(f"{name}:{said}") in squeezed(message), name


def test_every_sentence_of_the_page_is_in_the_pdf_and_in_the_message(demo: Paper) -> None:
    message, pdf = squeezed(paper_text(demo)), pdf_words(demo)
    texts = [text for block in demo.blocks if isinstance(block, Words) for text in block.texts]
    assert len(texts) >= 4
    for text in (*texts, demo.title, demo.heading, demo.maker, *demo.address):
        assert squeezed(text) in pdf, text
        assert squeezed(text) in message, text


def test_the_demos_quote_is_one_page_of_a4(demo: Paper) -> None:
    """ISO 216: A4 is 210 × 297 mm."""
    (page,) = read_pdf(demo).pages
    assert (page.mediabox.width / MM, page.mediabox.height / MM) == pytest.approx((210, 297), 1e-3)


def test_where_letter_is_what_printers_hold_it_is_one_page_of_letter() -> None:
    """ANSI/ASME Y14.1: size A is 8.5 × 11 in."""
    paper = quote_paper(sample_quote(workshop=sample_workshop(locale="en_US")))
    assert paper.sheet is Sheet.LETTER
    (page,) = read_pdf(paper).pages
    assert (page.mediabox.width, page.mediabox.height) == pytest.approx((612, 792))


def test_it_is_tagged_and_tells_its_title_its_maker_and_its_language(demo: Paper) -> None:
    """What ISO 14289-1 (PDF/UA-1), clause 7, asks a reader to find."""
    pdf = read_pdf(demo)
    root = pdf.trailer["/Root"]
    assert root["/MarkInfo"]["/Marked"]
    assert "/StructTreeRoot" in root
    assert root["/ViewerPreferences"]["/DisplayDocTitle"]
    assert str(root["/Lang"]).partition("-")[0] == "en"
    assert (pdf.metadata.title, pdf.metadata.author) == (demo.name, demo.maker)
    assert b"pdfuaid:part" in root["/Metadata"].get_data()


def test_it_is_in_the_language_that_it_says() -> None:
    german = sample_paper(language="de-AT")
    assert str(read_pdf(german).trailer["/Root"]["/Lang"]) == "de-AT"


def test_a_paper_in_a_language_that_runs_leftwards_does_so_on_page_and_pdf() -> None:
    """UAX 9: Hebrew runs to the left; the amounts then stand at the left edge."""
    hebrew = sample_paper(
        language="he", blocks=(Amounts(rows=(SaidRow(name=WOOL, amount="100"),)),)
    )
    (text,) = (page.extract_text(extraction_mode="layout") for page in read_pdf(hebrew).pages)
    row = next(line for line in text.splitlines() if "100" in line)
    assert row.index("100") < row.index(WOOL[-1])
    app = create_app(open_shop(sample_workshop(), today=lambda: TODAY))
    with app.test_request_context():
        assert '<html lang="he" dir="rtl">' in paper_page(hebrew)
        assert '<html lang="en" dir="ltr">' in paper_page(sample_paper())


def test_the_drawing_has_its_words_for_who_does_not_see_it(demo: Paper) -> None:
    (picture,) = (block for block in within(demo.blocks) if isinstance(block, Picture))
    assert "103 rows" in picture.in_words
    assert picture.in_words in _alternatives(demo)


def _alternatives(paper: Paper) -> set[str]:
    pdf = read_pdf(paper)
    objects = (pdf.get_object(number) for number in range(1, pdf.trailer["/Size"]))
    return {str(each["/Alt"]) for each in objects if isinstance(each, dict) and "/Alt" in each}


def test_the_same_paper_is_the_same_file_to_the_byte(demo: Paper) -> None:
    require_package("typst")
    assert paper_pdf(demo) == paper_pdf(demo)


def test_a_table_repeats_its_heads_and_every_page_has_its_number() -> None:
    rows = tuple((f"row {n}", f"{n} sts") for n in range(120))
    table = Listing(heads=("Rows", "Stitches"), rows=rows, figures_from=1, ticks=True)
    pages = read_pdf(sample_paper(blocks=(table,))).pages
    texts = [page.extract_text() for page in pages]
    assert len(texts) > 1
    for number, text in enumerate(texts, 1):
        assert "Stitches" in text
        assert re.search(rf"\b{number} / {len(texts)}\b", text)


def test_one_page_bears_no_number(demo: Paper) -> None:
    assert "1/1" not in pdf_words(demo)


def test_a_quote_that_was_given_is_printed_with_the_drawing_of_its_page() -> None:
    quote = sample_quote()
    today = quote_paper(quote)
    app = create_app(open_shop(sample_workshop(), today=lambda: TODAY))
    with app.test_request_context():
        page = paper_page(today)
    assert given_paper(offer_of(quote), page) == today
    with pytest.raises(ValueError, match="no drawing"):
        given_paper(offer_of(quote), "<main></main>")
