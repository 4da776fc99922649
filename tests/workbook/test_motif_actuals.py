"""Minutes of one motif on the sheet of actuals, against the page's, reckoned anew."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

import pytest
from openpyxl.workbook import Workbook

from exports.costing_workbook import actuals_of, workbook_bytes
from quoting.core.making.log_lines import Doing
from quoting.core.making.money_due import money_due
from quoting.core.making.motif_minutes import motif_minutes
from quoting.core.making.outcome import Outcome, outcome_of
from quoting.core.order.joined_squares import JoinMethod
from quoting.core.quote.offer import offer_of
from quoting.core.quote.quote import Quote
from quoting.wording.motif_words import minutes_a_motif
from quoting.wording.speech import speech_of
from tests.constructed import SUN, constructed_quote, from_centre, motif_workshop, squares
from tests.workbook.reading import Line, block, by
from tests.workbook.recalculation import differing, opened, recalculated, saved

UNTIMED = motif_workshop(replace(SUN, timings=()))
TIMING = "timing of sun in moor aran"
QUOTES = {
    "timed": constructed_quote(squares()),
    "one last round": constructed_quote(squares(JoinMethod.CONTINUOUS)),
    "untimed": constructed_quote(squares(JoinMethod.SINGLE_CROCHET), UNTIMED),
}


def outcome(quote: Quote) -> Outcome:
    """Return what an order took: nine hours at the hook, nothing else told."""
    nothing = outcome_of(quote, ())
    work = tuple(
        replace(part, took=Decimal(9)) if part.doing is Doing.AT_THE_HOOK else part
        for part in nothing.work
    )
    return replace(nothing, work=work)


def written(quote: Quote) -> bytes:
    return workbook_bytes(quote, actuals_of(quote, outcome(quote), money_due(offer_of(quote), ())))


WRITTEN = {name: written(quote) for name, quote in QUOTES.items()}


def twice_as_slow(content: bytes) -> bytes:
    """Return a workbook in which the timing of a motif took twice as long."""
    book = opened(content)
    (row,) = [row for row in book["Hours"].iter_rows() if row[0].value == TIMING]
    (minutes,) = [cell for cell in row if cell.value == 80]
    minutes.value = 160
    return saved(book)


@pytest.fixture(scope="module")
def anew(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Workbook]:
    books = WRITTEN | {"slow": twice_as_slow(workbook_bytes(QUOTES["timed"]))}
    return recalculated(books, tmp_path_factory.mktemp("motifs"))


def line_of(book: Workbook, quote: Quote) -> Line:
    label = speech_of(quote.workshop).worded(minutes_a_motif(quote))
    return by(block(book["Actuals"], "Hours"), "A")[label]


@pytest.mark.parametrize("name", QUOTES)
def test_the_sheet_says_what_the_page_says(name: str, anew: dict[str, Workbook]) -> None:
    assert differing(WRITTEN[name], anew[name]) == {}
    minutes = motif_minutes(QUOTES[name], outcome(QUOTES[name]))
    assert minutes is not None
    line = line_of(anew[name], QUOTES[name])
    assert line["estimated"] == pytest.approx(minutes.expected)
    assert line["really"] == pytest.approx(minutes.took)
    assert line["difference"] == pytest.approx(minutes.difference)


def test_it_follows_a_timing_that_is_changed(anew: dict[str, Workbook]) -> None:
    assert line_of(anew["slow"], QUOTES["timed"])["estimated"] == pytest.approx(40, abs=0.03)


def test_what_is_not_joined_of_motifs_has_no_such_line() -> None:
    book = opened(workbook_bytes(constructed_quote(from_centre())), values=True)
    labels = [str(line.get("A")) for line in block(book["Actuals"], "Hours")]
    assert [label for label in labels if label.startswith("Minutes a stitch")]
    assert not [label for label in labels if "a motif" in label]
