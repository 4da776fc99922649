"""What the maker and the buyer should hear, in whole sentences."""

from __future__ import annotations

from datetime import date
from decimal import Decimal

from quoting.core.advice import FASTEST_A_MINUTE, SLOWEST_A_MINUTE
from quoting.core.cautions import Caution
from quoting.core.errors import Fact, Facts
from quoting.core.gauge import ESTIMATED_LIMITS
from quoting.core.pace import ONE_TIMING_LIMITS, WANTED_LIMITS
from quoting.wording.phrases import Sentences, capitalized, listed, sentence_for
from quoting.wording.speech import Speech, as_decimal

CAUTIONS: Sentences = {
    # Price and date
    "pays-under-wage": (
        "At this price an hour of yours earns {earned}, less than the {pay} you pay yourself.",
    ),
    "under-minimum": ("A blanket at {price} is under the least that you take for one, {minimum}.",),
    "no-delivery-band": (
        "The workshop has no delivery band to {country}, so the plain charge was taken: "
        "look up the postage before you give this price.",
    ),
    "too-heavy-for-bands": (
        "No delivery band to {country} carries this weight, so the plain charge was taken: "
        "look up the postage before you give this price.",
    ),
    "no-profit": (
        "The target is no profit: the price covers yarn, pay and overhead, and nothing is put by.",
    ),
    "late": (
        "It can be there by {ready_by}, after {wanted_by}, when it is wanted. "
        "Agree on another day, or on fewer rows.",
    ),
    "old-rate": (
        "The rate of exchange for {currency} is of {day}, more than a week old: fetch today's.",
    ),
    # Size and counts
    "count-breaks-repeat": (
        "{stitches} stitches are no whole number of repeats: "
        "the pattern takes a multiple of {multiple} and {plus} more.",
    ),
    "row-ends-off": (
        "{ratio} border stitches in each row end is more than a tenth off what the swatch gives, "
        "{measured}: the border may ruffle or pull in.",
    ),
    "repeats-miss-height": (
        "Whole repeats make it {height_cm} high where {wanted_cm} was asked. Stopping at a whole "
        "stripe makes it {stripe_cm}, and at any row {row_cm}.",
        "Whole repeats make it {height_cm} high where {wanted_cm} was asked. Stopping at any row "
        "makes it {row_cm}.",
    ),
    "labels-apart": (
        "The balls of {yarn} are more than a tenth apart in length for their weight: look at their "
        "labels again. What is on the shelf is reckoned by the smallest of them.",
    ),
    # How sure
    "rough-yarn": (
        "There is no swatch at all for {stitches}, so yarn and size are rough. "
        "Measure a swatch before you give this price.",
    ),
    "estimated-yarn": (
        "There is no swatch in {stitches}: yarn and height are estimated from another stitch, "
        "and may be {estimated_off} off.",
    ),
    "one-timing": (
        "The hours in {stitches} rest on one timing and may be {one_timing_off} off. "
        "Time some more.",
    ),
    "estimated-pace": (
        "Nothing was timed in {stitches}: the hours are estimated from another stitch. "
        "Time some of it.",
    ),
    "odd-pace": (
        "The timings of {stitch} come to {a_minute} stitches a minute; most makers work between "
        "{slowest} and {fastest}. Count once more.",
    ),
    "more-timings": (
        "The timings of {stitch} lie far apart; {more} more would bring them within {wanted_off}.",
    ),
    # Ends, carrying, balls
    "many-ends": (
        "These stripes leave {ends} ends, about {hours} of weaving in. Three colours in single "
        "rows can be carried up the side: 6 ends, and 2 more for each ball joined.",
    ),
    "wrong-edge": (
        "When it is the turn of {colours} again, the yarn always lies at the other edge and has "
        "to be cut. One row more or less between would let it be carried up.",
    ),
    "yarns-tangle": (
        "{yarns} yarns wait at one edge at the same time: they twist, so turn the work one way "
        "and then the other.",
    ),
    "long-pass": (
        "A row or round takes more than a whole ball, so a new ball is joined within it, "
        "not at an edge.",
    ),
    "runs-out-late": (
        "A ball of {colour} is used up within the last {last_passes} rows and rounds: "
        "have another of its dye lot at hand, or save the yarn that is left.",
    ),
    # Always said
    "baby-loose-bedding": (
        "Loose bedding, blankets included, does not belong where an infant sleeps in the first "
        "year (American Academy of Pediatrics, 2022; other services word it differently: follow "
        "the advice given where you live).",
    ),
    "baby-small-parts": ("For a child under three: no fringe, pompoms, buttons or long loops.",),
    "baby-ends": (
        "For a baby, weave in every end, in more than one direction: fingers and toes find a "
        "loose one.",
    ),
    "selling-rules": (
        "Fibre, care and maker's labels, rules for children's products, taxes, cancellation "
        "rights and deposits differ from country to country: ask the authority or a licensed "
        "adviser.",
    ),
    "hands": (
        "Take short breaks often; if hands, wrists or shoulders hurt, stop, and ask a doctor or "
        "therapist if it stays.",
    ),
}

_SETTLED: Facts = {
    "estimated_off": ESTIMATED_LIMITS,
    "one_timing_off": ONE_TIMING_LIMITS,
    "wanted_off": WANTED_LIMITS,
    "slowest": SLOWEST_A_MINUTE,
    "fastest": FASTEST_A_MINUTE,
}
"""Facts that the core has settled for good, and so gives with no caution."""

_LENGTHS = frozenset({"height_cm", "wanted_cm", "stripe_cm", "row_cm"})
_MONEY = frozenset({"earned", "pay", "price", "minimum"})
_SHARES = frozenset({"estimated_off", "one_timing_off", "wanted_off"})


def caution_sentence(caution: Caution, speech: Speech) -> str:
    """Return what the reader of a caution should hear."""
    facts = {**_SETTLED, **caution.facts}
    return capitalized(
        sentence_for(caution.code, facts, CAUTIONS, lambda name, fact: _say(name, fact, speech))
    )


def _say(name: str, fact: Fact, speech: Speech) -> str:
    if isinstance(fact, tuple):
        return listed([speech.stitch(str(word)) for word in fact], "and")
    if isinstance(fact, date):
        return speech.day(fact)
    if isinstance(fact, str):
        return speech.stitch(fact) if name == "stitch" else fact
    assert fact is not None, "a fact that is not there is not said"  # noqa: S101
    return _figure(name, fact, speech)


def _figure(name: str, fact: Decimal | float, speech: Speech) -> str:
    if name in _LENGTHS:
        return speech.length(float(fact))
    if name in _MONEY:
        return speech.money(as_decimal(fact))
    if name in _SHARES:
        return speech.percent(fact)
    if name == "hours":
        return speech.hours(as_decimal(fact))
    return speech.trimmed(fact, 2)
