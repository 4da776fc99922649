"""The sheet of hours as it is read: what is promised, guessed and left out."""

from __future__ import annotations

from exports.costing_workbook import workbook_bytes
from quoting.core.quote.quote import Quote
from quoting.core.workshop.timings import Timing
from tests.examples import sample_quote, sample_workshop
from tests.workbook.guessed_hours import guessed_quote
from tests.workbook.recalculation import opened


def texts(quote: Quote) -> list[str]:
    sheet = opened(workbook_bytes(quote), values=True)["Hours"]
    return [cell.value for row in sheet.iter_rows() for cell in row if isinstance(cell.value, str)]


def test_nineteen_times_in_twenty_is_said_of_five_timings_and_of_no_fewer() -> None:
    session = Timing(stitch="hdc", stitches=500, minutes=27)
    for times, said in ((4, False), (5, True)):
        shop = sample_workshop(timings=(session,) * times)
        written = texts(sample_quote(None, shop))
        assert any(text.startswith("19 times in 20") for text in written) is said
        assert ("All minutes, 19 times in 20 within" in written) is said
        assert any(text.startswith("roughly") for text in written) is not said


def test_each_guess_and_each_timing_that_the_range_rests_on_has_its_line() -> None:
    written = texts(guessed_quote())
    for line in (
        "all that rests on the timing of hdc in moor aran",
        "all that rests on the timing of bobble in tor aran",
        "guessed: sc from hdc",
        "guessed: moss from sc",
        "guessed: fen chenille from moor aran",
        "hdc in fen chenille",
    ):
        assert written.count(line) == 1, line


def test_work_without_minutes_is_named_on_the_sheet() -> None:
    written = texts(guessed_quote())
    assert written[written.index("no minutes are given for") + 1] == (
        "washing and drying flat, letters with the buyer"
    )
    assert "no minutes are given for" not in texts(sample_quote())


def test_a_yarn_is_named_only_where_there_are_several() -> None:
    assert "hdc" in texts(sample_quote())
    assert not any(" in moor aran" in text for text in texts(sample_quote()))


def test_what_rest_is_added_to_is_said() -> None:
    assert "Rest, added to minutes stopped at every pause" in texts(sample_quote())
