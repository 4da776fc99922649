"""What was timed by the clock of the Measurements page, as a further timing or reading."""

from __future__ import annotations

from datetime import date
from decimal import Decimal
from typing import NamedTuple

from werkzeug.datastructures import MultiDict

from quoting.core.ground.errors import Refused
from quoting.notation import read_number, write_number
from quoting.schema.notation import Notation
from quoting.schema.several import BETWEEN
from quoting.schema.words import DAY
from quoting.web.forms.sent import Sent, line_numbers

_OF_A_TIMING = ("stitch", "yarn", "hook_mm", "stitches", "rows", "minutes")
_CLEARED = frozenset({"clock.minutes", "clock.stitches", "clock.rows", "clock.ends"})
_END = "minutes.weave_in_end"
_DIGITS = 2
_ENDS_WANTED = "Type how many ends were woven in, and in how many minutes."


class Clocked(NamedTuple):
    """The form with what was timed in it, the field to go on from, and what is in the way."""

    sent: Sent
    focus: str
    said: str = ""


def take_clocked(asked: str, sent: Sent, notation: Notation, today: date) -> Clocked | None:
    """Return what a button `clock timing` or `clock ends` does; None of another."""
    if asked == "clock timing":
        return _timing(sent, DAY.show(today, notation))
    return _ends(sent, notation) if asked == "clock ends" else None


def _timing(sent: Sent, today: str) -> Clocked:
    line = f"timings.{max(line_numbers(sent).get('timings', []), default=0) + 1}"
    added = _cleared(sent)
    for name in _OF_A_TIMING:
        added[f"{line}.{name}"] = sent.get(f"clock.{name}", "")
    added[f"{line}.hands_on"] = "yes"
    added[f"{line}.day"] = today
    return Clocked(added, f"{line}.stitches")


def _ends(sent: Sent, notation: Notation) -> Clocked:
    """Add the minutes for one end to those that were measured before."""
    minutes, ends = (_above_none(sent.get(f"clock.{n}", ""), notation) for n in ("minutes", "ends"))
    if minutes is None or ends is None:
        return Clocked(sent, "clock.ends", _ENDS_WANTED)
    each = write_number(round(minutes / ends, _DIGITS).normalize(), notation.marks)
    before = sent.get(_END, "").strip()
    added = _cleared(sent)
    added[_END] = f"{before}{BETWEEN} {each}" if before else each
    return Clocked(added, _END)


def _above_none(text: str, notation: Notation) -> Decimal | None:
    """Return a number above 0, None of any other text."""
    try:
        number = read_number(text, notation.marks)
    except Refused:
        return None
    return number if number > 0 else None


def _cleared(sent: Sent) -> Sent:
    return MultiDict((name, text) for name, text in sent.items(multi=True) if name not in _CLEARED)
