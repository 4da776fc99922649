"""What the program is asked for instead of each boxed figure of the sheet of hours."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import ExitStack, contextmanager
from dataclasses import replace
from typing import Any
from unittest.mock import patch

from quoting.core.estimate.pace_guesses import GUESS_LIMITS, Unknown
from quoting.core.quote.quote import Quote
from quoting.core.workshop.motifs import Motif
from quoting.core.workshop.stitches import TIME_RATIO, Stitch
from quoting.core.workshop.timings import Timing
from quoting.wording import speech_of, task_words, timed_words
from tests.examples import sample_quote
from tests.workbook.inputs import Input

MOTIF_FIELDS = {"B": "hands_on", "C": "motifs", "D": "minutes"}
SESSION_FIELDS = {"B": "hands_on", "C": "stitches", "D": "minutes", "E": "rows"}
LIMITS = {
    "A stitch by another's yarn-overs, off by": Unknown.RATIO,
    "A yarn as another of its category, off by": Unknown.YARN,
    "A pattern as the stitch it is like, off by": Unknown.TEXTURE,
    "A yarn as one of another category, off by": Unknown.THICKNESS,
    "A motif with other rounds than were timed, off by": Unknown.ROUNDS,
}
PACE, HOURS = "quoting.core.estimate.pace", "quoting.core.estimate.hours"
CONSTANTS = {
    "A figure timed once, or set, off by": (f"{PACE}.ONE_TIMING_LIMITS",),
    "A range should hold": (f"{PACE}.CONFIDENCE",),
    "Timings of which a range is promised": (f"{PACE}.FEW_SESSIONS", f"{HOURS}.FEW_SESSIONS"),
}
HABITS: dict[str, Callable[[Quote, Any], Quote]] = {
    "Turning a row, minutes": lambda quote, v: with_minutes(quote, turn=(v,)),
    "The range of all hours, times as wide as measured": lambda quote, v: with_shop(
        quote, ranges=replace(quote.workshop.ranges, hours=v)
    ),
    "Frogging, of the stitching": lambda quote, v: with_minutes(quote, rip_back=v),
    "Rest, added to minutes stopped at every pause": lambda quote, v: with_shop(
        quote, pay=replace(quote.workshop.pay, rest_allowance=v)
    ),
}


def with_shop(quote: Quote, **changes: Any) -> Quote:
    """Return the quote of the same order by a workshop of which some is changed."""
    return sample_quote(quote.order, replace(quote.workshop, **changes))


def with_minutes(quote: Quote, **changes: Any) -> Quote:
    """Return the quote by a maker who takes other minutes for some of the work."""
    return with_shop(quote, minutes=replace(quote.workshop.minutes, **changes))


def task_field(label: str, quote: Quote) -> str:
    """Return what the program calls a task."""
    speech = speech_of(quote.workshop)
    (found,) = (
        task.what
        for task in quote.estimate.hours.every_task
        if task.yarn is None and task_words(task.what, speech) == label
    )
    return found


def with_task(quote: Quote, label: str, minutes: float) -> Quote:
    """Return the quote by a maker who gives one figure for a task."""
    what = task_field(label, quote)
    if what != "extras":
        return with_minutes(quote, **{what: (minutes,)})
    (*others, last) = quote.order.extras
    others_minutes = sum(extra.minutes for extra in others)
    extras = (*others, replace(last, minutes=minutes / quote.order.quantity - others_minutes))
    return sample_quote(replace(quote.order, extras=extras), quote.workshop)


def timings_called(quote: Quote, label: str) -> list[int]:
    """Return which of the workshop's timings are of a line's stitch, in their order."""
    speech, timings = speech_of(quote.workshop), quote.workshop.timings
    return [
        at
        for at, timing in enumerate(timings)
        if f"timing of {timed_words(timing.timed, speech)}" == label
    ]


def with_timing(quote: Quote, at: int, **changes: Any) -> Quote:
    """Return the quote by a maker of whose timings one is changed."""
    timings = list(quote.workshop.timings)
    timings[at] = replace(timings[at], **changes)
    return with_shop(quote, timings=tuple(timings))


def motif_called(quote: Quote, label: str) -> Motif | None:
    """Return the motif whose timing a line is of, if it is of one."""
    called = {f"timing of {motif.name} in {motif.yarn}": motif for motif in quote.workshop.motifs}
    return called.get(label)


def with_motif_timing(quote: Quote, motif: Motif, at: int, **changes: Any) -> Quote:
    """Return the quote by a maker of whose timings of a motif one is changed."""
    timings = list(motif.timings)
    timings[at] = replace(timings[at], **changes)
    other = replace(motif, timings=tuple(timings))
    motifs = (other if each == motif else each for each in quote.workshop.motifs)
    return with_shop(quote, motifs=tuple(motifs))


def with_more(quote: Quote, *timings: Timing) -> Quote:
    """Return the quote by a maker who timed herself further."""
    return with_shop(quote, timings=(*quote.workshop.timings, *timings))


@contextmanager
def granted(label: str, value: Any) -> Iterator[bool]:
    """Let the program take another figure for granted; tell whether it is one of these."""
    kinds = {f"Time of {stitch.value}": stitch for stitch in Stitch}
    if label in kinds:
        with patch.dict(TIME_RATIO, {kinds[label]: value}):
            yield True
    elif label in LIMITS:
        with patch.dict(GUESS_LIMITS, {LIMITS[label]: value}):
            yield True
    elif label in CONSTANTS:
        with ExitStack() as stack:
            for name in CONSTANTS[label]:
                stack.enter_context(patch(name, value))
            yield True
    else:
        yield False


Figures = dict[str, Any]


def expected(
    quote: Quote, each: Input, value: Any, session: int, told: Callable[[Quote], Figures]
) -> Figures:
    """Return what is told of the quote that the program gives for another value of a figure.

    `session` is which of the lines of its label it is.
    """
    with granted(each.label, value) as is_granted:
        if is_granted:
            return told(sample_quote(quote.order, quote.workshop))
    if each.label in HABITS:
        return told(HABITS[each.label](quote, value))
    motif = motif_called(quote, each.label)
    if motif is not None:
        field = MOTIF_FIELDS[each.column]
        given = value == "yes" if each.choices else value
        return told(with_motif_timing(quote, motif, session, **{field: given}))
    if each.label.startswith("timing of "):
        at = timings_called(quote, each.label)[session]
        field = SESSION_FIELDS[each.column]
        return told(with_timing(quote, at, **{field: value == "yes" if each.choices else value}))
    return told(with_task(quote, each.label, value))
