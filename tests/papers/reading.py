"""Papers to be printed, and PDFs as a reader finds them."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace
from io import BytesIO
from typing import TYPE_CHECKING

from exports.papers.offers import quote_paper
from exports.papers.pdf import paper_pdf
from quoting.wording.paper import Amounts, Beside, Block, Facts, Paper
from tests.examples import sample_quote
from tests.programs import require_package

if TYPE_CHECKING:
    from pypdf import PdfReader


MM = 72 / 25.4
"""Points in a millimetre."""


def sample_paper(**changes: object) -> Paper:
    """Return the paper of the sample quote, single parts of it replaced."""
    return replace(quote_paper(sample_quote()), **changes)  # type: ignore[arg-type]


def read_pdf(paper: Paper) -> PdfReader:
    """Return a paper's PDF as a reader opens it; without a typesetter the test is left out."""
    require_package("typst")
    require_package("pypdf")
    from pypdf import PdfReader

    return PdfReader(BytesIO(paper_pdf(paper)))


def words_of(content: bytes) -> str:
    """Return all that is written in a PDF, its spaces as one."""
    require_package("pypdf")
    from pypdf import PdfReader

    pages = PdfReader(BytesIO(content)).pages
    return " ".join("".join(page.extract_text() for page in pages).split())


def pdf_words(paper: Paper) -> str:
    """Return all that is written in a paper's PDF, without its spaces."""
    return squeezed("".join(page.extract_text() for page in read_pdf(paper).pages))


def squeezed(text: str) -> str:
    """Return a text without spaces, and without the places where a long word may be broken."""
    return re.sub(r"[\s\u200b]", "", text)


def within(blocks: tuple[Block, ...]) -> Iterator[Block]:
    """Yield all blocks, those side by side among them."""
    for block in blocks:
        if isinstance(block, Beside):
            for column in block.columns:
                yield from within(column)
        else:
            yield block


def figures_of(paper: Paper) -> list[tuple[str, str]]:
    """Return every amount and every fact of a paper beside its name; colours have dots instead."""
    figures: list[tuple[str, str]] = []
    for block in within(paper.blocks):
        if isinstance(block, Amounts):
            figures += [(row.name, row.amount) for row in block.rows]
        if isinstance(block, Facts):
            figures += [(fact.name, fact.text) for fact in block.facts if not fact.colours]
    return figures
