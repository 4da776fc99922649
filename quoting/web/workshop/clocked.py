"""What was timed by the clock of the Measurements page, as a further timing or reading."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date
from decimal import Decimal
from typing import NamedTuple

from werkzeug.datastructures import MultiDict

from quoting.core.ground.errors import Refused
from quoting.core.ground.measures import Units
from quoting.notation import LENGTH, read_number, write_number
from quoting.schema.notation import Notation
from quoting.schema.several import BETWEEN
from quoting.schema.words import DAY
from quoting.web.forms.sent import Sent, line_numbers

CENTIMETRES, INCHES = "centimetres", "inches"

TIMED_BY_COUNT: Mapping[str, str] = {
    "weave_in_end": "ends woven in",
    "work_over_end": "ends worked over",
    "enclose_end": "ends enclosed in the border",
    "fringe_end": "ends knotted into a fringe",
    "begin_round": "rounds begun and joined",
    "sew_whipstitch": f"{CENTIMETRES} sewn in whipstitch",
    "sew_mattress": f"{CENTIMETRES} sewn in mattress stitch",
    "block_motif": "motifs blocked",
}
"""What is timed many at once and reckoned for one, by its key among the minutes.

Who works in inches counts those that she sewed; the minutes are of a centimetre all the same.
"""

_OF_A_TIMING = ("stitch", "yarn", "hook_mm", "stitches", "rows", "minutes")
_OF_A_MOTIF = ("motifs", "minutes")
_CLEARED = frozenset(f"clock.{name}" for name in ("minutes", "stitches", "rows", "ends", "motifs"))
_USUALLY_TIMED = next(iter(TIMED_BY_COUNT))
_DIGITS, _DIGITS_OF_LITTLE = 2, 3
_MOTIF_WANTED = "Choose the motif that was timed."
_COUNT_WANTED = "Type how many there were, and in how many minutes."


def counted_words(units: Units) -> Mapping[str, str]:
    """Return what is counted of each, in the maker's unit of length."""
    if units is not Units.INCHES:
        return TIMED_BY_COUNT
    return {key: words.replace(CENTIMETRES, INCHES) for key, words in TIMED_BY_COUNT.items()}


class Clocked(NamedTuple):
    """The form with what was timed in it, the field to go on from, and what is in the way."""

    sent: Sent
    focus: str
    said: str = ""


def take_clocked(asked: str, sent: Sent, notation: Notation, today: date) -> Clocked | None:
    """Return what a button `clock timing`, `clock motifs` or `clock ends` does; None of another."""
    match asked:
        case "clock timing":
            return _timing(sent, "timings", _OF_A_TIMING, DAY.show(today, notation))
        case "clock motifs":
            return _motifs(sent, DAY.show(today, notation))
        case "clock ends":
            return _for_one(sent, notation)
    return None


def _timing(sent: Sent, list_name: str, names: tuple[str, ...], today: str) -> Clocked:
    """Add a line with the fields of those names to a list of timings."""
    line = f"{list_name}.{max(line_numbers(sent).get(list_name, []), default=0) + 1}"
    added = _cleared(sent)
    for name in names:
        added[f"{line}.{name}"] = sent.get(f"clock.{name}", "")
    added[f"{line}.hands_on"] = "yes"
    added[f"{line}.day"] = today
    counted = next(name for name in names if name in ("stitches", "motifs"))
    return Clocked(added, f"{line}.{counted}")


def _motifs(sent: Sent, today: str) -> Clocked:
    """Add a timing to the motif that was chosen."""
    chosen = sent.get("clock.motif", "")
    for number in line_numbers(sent).get("motifs", []):
        if (sent.get(f"motifs.{number}.name") or "").strip() == chosen:
            return _timing(sent, f"motifs.{number}.timings", _OF_A_MOTIF, today)
    return Clocked(sent, "clock.motif", _MOTIF_WANTED)


def _for_one(sent: Sent, notation: Notation) -> Clocked:
    """Add the minutes for one of what was counted to those that were measured before."""
    minutes, count = (
        _above_none(sent.get(f"clock.{name}", ""), notation) for name in ("minutes", "ends")
    )
    if minutes is None or count is None:
        return Clocked(sent, "clock.ends", _COUNT_WANTED)
    chosen = sent.get("clock.task", "")
    chosen = chosen if chosen in TIMED_BY_COUNT else _USUALLY_TIMED
    field = f"minutes.{chosen}"
    if CENTIMETRES in TIMED_BY_COUNT[chosen]:
        count *= LENGTH.factor(notation.unit_of(LENGTH))
    digits = _DIGITS if minutes >= count else _DIGITS_OF_LITTLE
    each = write_number(round(minutes / count, digits).normalize(), notation.marks)
    before = sent.get(field, "").strip()
    added = _cleared(sent)
    added[field] = f"{before}{BETWEEN} {each}" if before else each
    return Clocked(added, field)


def _above_none(text: str, notation: Notation) -> Decimal | None:
    """Return a number above 0, None of any other text."""
    try:
        number = read_number(text, notation.marks)
    except Refused:
        return None
    return number if number > 0 else None


def _cleared(sent: Sent) -> Sent:
    return MultiDict((name, text) for name, text in sent.items(multi=True) if name not in _CLEARED)
