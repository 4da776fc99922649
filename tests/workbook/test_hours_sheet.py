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


def test_work_without_minutes_is_named_beside_its_part_and_has_an_empty_box() -> None:
    quote = guessed_quote()
    sheet = opened(workbook_bytes(quote), values=True)["Hours"]
    beside = {row[0].value: row[4].value for row in sheet.iter_rows() if row[0].value}
    assert beside["Starting and finishing"] == "blocking"
    assert beside["Admin: photos, packing, messages"] == "messages with the buyer"
    for label in ("blocking", "messages with the buyer"):
        (line,) = (row for row in sheet.iter_rows() if row[0].value == label)
        assert line[4].value is None
        assert line[7].value == "not given"


def test_work_of_no_minutes_has_a_line_too_and_ripping_back_at_nought() -> None:
    written = texts(sample_quote())
    assert "swatching" in written
    assert "frogging" in written


def test_each_figure_taken_for_granted_stands_once_with_where_it_comes_from() -> None:
    sheet = opened(workbook_bytes(guessed_quote()))["Hours"]
    named = {row[0].value: row for row in sheet.iter_rows() if row[0].value}
    for label, figure, said in (
        ("A figure timed once, or set, off by", 0.3, "common practice, no source"),
        ("A range should hold", 0.95, "Hahn and Meeker"),
        ("Time of hdc", 3, "common practice, no source"),
        ("A pattern as the stitch it is like, off by", 0.5, "common practice, no source"),
    ):
        assert named[label][2].value == figure
        assert said in named[label][4].value
    formulas = [
        cell.value for row in sheet.iter_rows(max_col=10) for cell in row if cell.data_type == "f"
    ]
    assert not [text for text in formulas if "0.3*" in text or "0.05," in text or "0.15*" in text]


def test_a_yarn_is_named_only_where_there_are_several() -> None:
    assert "hdc" in texts(sample_quote())
    assert not any(" in moor aran" in text for text in texts(sample_quote()))


def test_what_rest_is_added_to_is_said() -> None:
    assert "Rest, added to minutes stopped at every pause" in texts(sample_quote())
