"""Minutes that makers usually need for what is not stitches, to begin with.

Common practice, with no source: to be taken knowingly, and replaced by what was measured. Those
of motifs, rounds and ends are counted until the maker gives hers, and need not be taken.
"""

from __future__ import annotations

from collections.abc import Mapping

from werkzeug.datastructures import MultiDict

from quoting.core.workshop.timings import USUAL_MINUTES, Minutes
from quoting.schema.measurement_shapes import MINUTES, READINGS
from quoting.schema.notation import Notation
from quoting.web.forms.sent import Sent

USUAL = Minutes(
    turn=(0.1,),
    change_colour=(0.5,),
    join=(1.5,),
    weave_in_end=(2.5,),
    start_and_finish=(20.0,),
    wash=(20.0,),
    photograph=(15.0,),
    pack=(15.0,),
    letters=(45.0,),
    swatch=(60.0,),
    rip_back=0.05,
)


def usual_texts(notation: Notation) -> Mapping[str, str]:
    """Return those that may be taken as they are typed, by their keys."""
    written = MINUTES.write(USUAL, notation)
    return {key: str(text) for key, text in written.items()}


def counted_texts(notation: Notation) -> Mapping[str, str]:
    """Return those that are counted until others are given, as they are typed, by their keys."""
    return {key: READINGS.show(usual, notation) for key, usual in USUAL_MINUTES.items()}


def take_usual(asked: str, sent: Sent, notation: Notation) -> Sent | None:
    """Return the form with what a button `usual join` or `usual all` takes; None of another.

    What was typed stays as it is.
    """
    what, _, key = asked.partition(" ")
    if what != "usual":
        return None
    filled: Sent = MultiDict(sent.items(multi=True))
    for name, text in usual_texts(notation).items():
        field = f"minutes.{name}"
        if key in (name, "all") and not (sent.get(field) or "").strip():
            filled[field] = text
    return filled
