"""What the maker and the buyer should hear, in whole sentences."""

from __future__ import annotations

from quoting.core.estimate.pace import FEW_SESSIONS, ONE_TIMING_LIMITS, WANTED_LIMITS
from quoting.core.estimate.pace_guesses import GUESS_LIMITS, Unknown
from quoting.core.ground.cautions import Caution
from quoting.core.ground.codes import CautionCode
from quoting.core.ground.errors import Fact, Facts
from quoting.core.plan.gauge import ESTIMATED_LIMITS, PATTERN_LIMITS
from quoting.core.plan.motif_gauges import SCALED_LIMITS
from quoting.core.quote.hours_advice import FASTEST_A_MINUTE, SLOWEST_A_MINUTE
from quoting.core.workshop.categories import USUAL_CATEGORY
from quoting.wording.catalogues import sentence
from quoting.wording.caution_facts import say_fact
from quoting.wording.construction_cautions import CONSTRUCTION_CAUTIONS
from quoting.wording.phrases import Sentences, capitalized, sentence_for
from quoting.wording.speech import Speech

CAUTIONS: Sentences = {
    # Price and date
    CautionCode.PAYS_UNDER_WAGE: (
        "At this price an hour of yours earns {earned}, less than the {pay} that your own "
        "pay comes to: {short} is missing.",
    ),
    CautionCode.UNDER_MINIMUM: ("A blanket at {price} is under your minimum charge, {minimum}.",),
    CautionCode.NO_DELIVERY_BAND: (
        "The workshop has no charge for delivery to {country}, so the plain charge was taken: "
        "look up the postage before you give this price.",
    ),
    CautionCode.TOO_HEAVY_FOR_BANDS: (
        "No charge for delivery to {country} covers this weight, so the plain charge was taken: "
        "look up the postage before you give this price.",
    ),
    CautionCode.NO_PROFIT: (
        "The target is no profit: the price covers yarn, pay and overhead, and nothing is put by.",
    ),
    CautionCode.LATE: (
        "It can be there by {ready_by}, after {wanted_by}, when it is wanted. "
        "Agree on another day, or on fewer rows.",
    ),
    CautionCode.RATE_TO_COME: (
        "The rate for {currency} is of {day}, which is still to come: look at the day of the rate "
        "and at this computer’s clock.",
    ),
    CautionCode.OLD_RATE: (
        "The rate of exchange for {currency} is of {day}, more than a week old: fetch today's.",
    ),
    # Size and counts
    CautionCode.COUNT_BREAKS_REPEAT: (
        "{stitches} stitches are no whole number of repeats: "
        "the stitch pattern takes a multiple of {multiple} + {plus}.",
    ),
    CautionCode.ROWS_BREAK_REPEAT: (
        "{rows} rows of {stitch} end within its repeat of {row_repeat} rows: {fewer} or {more} "
        "would be whole repeats.",
        "{rows} rows of {stitch} end within its repeat of {row_repeat} rows: {more} would be a "
        "whole one.",
    ),
    CautionCode.GAUGES_APART: (
        "A stitch of {wide} in {wide_yarn} is {apart} wider than one of {narrow} in "
        "{narrow_yarn}: where their rows meet, go by the stitches of each row, and try it on a "
        "swatch of both, or the sides may wave.",
        "A stitch of {wide} is {apart} wider than one of {narrow}: where their rows meet, go by "
        "the stitches of each row, and try it on a swatch of both, or the sides may wave.",
    ),
    CautionCode.CORNERS_CUP: (
        "With chains at the corners each border round of {stitch} has {more} stitches more than "
        "the one before; by its height and width {flat} lie flat, so the corners may cup. Work "
        "more stitches into them.",
    ),
    CautionCode.CORNERS_RUFFLE: (
        "With chains at the corners each border round of {stitch} has {more} stitches more than "
        "the one before; by its height and width {flat} lie flat, so the corners may ruffle. Work "
        "fewer stitches into them.",
    ),
    CautionCode.ROW_ENDS_OFF: (
        "{ratio} border stitches in each row end is more than a tenth off what the swatch gives, "
        "{measured}: the border may ruffle or pull in.",
    ),
    CautionCode.REPEATS_MISS_HEIGHT: (
        "Whole repeats make it {height_cm} long where {wanted_cm} was asked. Stopping at a whole "
        "stripe makes it {stripe_cm}, and at any row {row_cm}.",
        "Whole repeats make it {height_cm} long where {wanted_cm} was asked. Stopping at any row "
        "makes it {row_cm}.",
    ),
    CautionCode.LABELS_APART: (
        "The balls of {yarn} are more than a tenth apart in length for their weight: look at their "
        "labels again. What is on the shelf is worked out by the smallest of them.",
    ),
    # How sure
    CautionCode.ROUGH_YARN: (
        "There is no swatch at all for {stitches}, so yarn and size are rough. "
        "Measure a swatch before you give this price.",
    ),
    CautionCode.ROUGH_PATTERN: (
        "There is no swatch of {stitches}. What texture takes cannot be told from another stitch, "
        "so yarn and length are rough and may be {pattern_off} off: measure a swatch before you "
        "give this price.",
    ),
    CautionCode.NO_CATEGORY: (
        "The category of {yarn} was not given and nothing was measured in it, so it is taken to "
        "be {category}. Write its category into the workshop file, or measure a "
        "swatch.",
    ),
    CautionCode.ESTIMATED_YARN: (
        "There is no swatch in {stitches}: yarn and length are estimated from another stitch, "
        "and may be {estimated_off} off.",
        "The yarn goes by the motif {motif}, of which other rounds were weighed than are worked "
        "here, and may be {scaled_off} off.",
        "The yarn goes by the motif {unravelled}, of which other rounds were unravelled than are "
        "worked here, and may be {scaled_off} off.",
    ),
    CautionCode.ONE_TIMING: (
        "The hours in {stitches} were timed once and may be {one_timing_off} off. Time some more.",
    ),
    CautionCode.ESTIMATED_PACE: (
        "The hours in {stitches} are estimated from the timing of another stitch. Time some of it.",
    ),
    CautionCode.PATTERN_PACE: (
        "The hours in {stitches} are estimated from the timing of another stitch, and for a "
        "pattern that may be {texture_off} off. Time some of it before you give this price.",
    ),
    CautionCode.OTHER_YARN_PACE: (
        "Nothing that serves was timed in {yarn}: its hours are estimated from timings in "
        "{timed_in}, a yarn of the same category, and may be {yarn_off} further off.",
    ),
    CautionCode.OTHER_THICKNESS_PACE: (
        "Nothing that serves was timed in {yarn}: its hours are estimated from timings in "
        "{timed_in}, which is not known to be of the same category, and may be {thickness_off} "
        "off. Time some of it before you give this price.",
    ),
    CautionCode.ODD_PACE: (
        "The timings of {stitch} in {yarn} come to {a_minute} stitches a minute; this program "
        "questions fewer than {slowest} and more than {fastest}, bounds of its own. Count once "
        "more.",
        "The timings of {stitch} come to {a_minute} stitches a minute; this program questions "
        "fewer than {slowest} and more than {fastest}, bounds of its own. Count once more.",
    ),
    CautionCode.FEW_TIMINGS: (
        "{timed} timings of {stitch} in {yarn} are too few to promise anything: by them {more} "
        "more would be wanted to come within {wanted_off}. Make it {few}, then look again.",
        "{timed} timings of {stitch} are too few to promise anything: by them {more} more would "
        "be wanted to come within {wanted_off}. Make it {few}, then look again.",
    ),
    CautionCode.MORE_TIMINGS: (
        "The timings of {stitch} in {yarn} lie far apart; {more} more would bring them within "
        "{wanted_off}.",
        "The timings of {stitch} lie far apart; {more} more would bring them within {wanted_off}.",
    ),
    CautionCode.MINUTES_NOT_GIVEN: (
        "No minutes are given for {tasks}, so these hours are without them. Time them, or put 0 "
        "where they take none.",
    ),
    # Ends, carrying, balls
    CautionCode.MANY_ENDS: (
        "These stripes leave {ends} ends, about {hours} of {become}. If no colour had to be cut "
        "before its next row it would be {uncut}: a colour is carried up the side where an even "
        "number of rows, and not too many, lies between.",
        "This leaves {ends} ends, about {hours} of {become}.",
        "These stripes leave {ends} ends, about {hours} of weaving in. If no colour had to be cut "
        "before its next row it would be {uncut}: a colour is carried up the side where an even "
        "number of rows, and not too many, lies between.",
        "This leaves {ends} ends, about {hours} of weaving in.",
    ),
    CautionCode.WRONG_EDGE: (
        "When it is the turn of {colours} again, the yarn always lies at the other edge and has "
        "to be cut. With an even number of rows between, and not too many, it could be carried up.",
    ),
    CautionCode.YARNS_TANGLE: (
        "{yarns} yarns wait at one edge at the same time: they twist, so turn the work one way "
        "and then the other.",
    ),
    CautionCode.LONG_PASS: (
        "A row or round takes more than a whole ball, so a new ball is joined within it, "
        "not at an edge.",
    ),
    CautionCode.RUNS_OUT_LATE: (
        "A ball of {colour} is used up within the last {last_passes} rows and rounds: "
        "have another of its dye lot at hand, or save the yarn that is left.",
        "A ball of {colour} is used up within the last {last_rounds} rounds: "
        "have another of its dye lot at hand, or save the yarn that is left.",
    ),
    # Always said
    CautionCode.BABY_LOOSE_BEDDING: (
        sentence(
            "Loose bedding, blankets included, does not belong where an infant sleeps in the first "
            "year: {advised_in}. Follow the advice given where the baby lives."
        ),
        sentence(
            "Loose bedding, blankets included, does not belong where an infant sleeps in the first "
            "year. Health services word it differently: follow the advice given where the baby "
            "lives."
        ),
    ),
    CautionCode.BABY_SMALL_PARTS: (
        "For a child under three: no fringe, pompoms, buttons or long loops.",
    ),
    CautionCode.BABY_ENDS: (
        "For a baby, weave in every end, in more than one direction: fingers and toes find a "
        "loose one.",
    ),
    CautionCode.SELLING_RULES: (
        "Fibre, care and maker's labels, rules for children's products, taxes, cancellation "
        "rights and deposits differ from country to country: ask the authority or a licensed "
        "adviser.",
    ),
    CautionCode.HANDS: (
        "Take short breaks often; if hands, wrists or shoulders hurt, stop, and ask a doctor or "
        "therapist if it stays.",
    ),
    **CONSTRUCTION_CAUTIONS,
}

_SETTLED: Facts = {
    "estimated_off": ESTIMATED_LIMITS,
    "scaled_off": SCALED_LIMITS,
    "pattern_off": PATTERN_LIMITS,
    "category": USUAL_CATEGORY,
    "one_timing_off": ONE_TIMING_LIMITS,
    "texture_off": GUESS_LIMITS[Unknown.TEXTURE],
    "yarn_off": GUESS_LIMITS[Unknown.YARN],
    "thickness_off": GUESS_LIMITS[Unknown.THICKNESS],
    "wanted_off": WANTED_LIMITS,
    "few": FEW_SESSIONS,
    "slowest": SLOWEST_A_MINUTE,
    "fastest": FASTEST_A_MINUTE,
}
"""Facts that the core has settled for good, and so gives with no caution."""


def caution_sentence(caution: Caution, speech: Speech) -> str:
    """Return what the reader of a caution should hear."""
    facts = {**_SETTLED, **caution.facts}

    def say(name: str, fact: Fact) -> str:
        return say_fact(name, fact, speech)

    return capitalized(sentence_for(caution.code, facts, CAUTIONS, say, speech.worded))
