"""What is wrong with a value, in a sentence: what was read, and what would do."""

from __future__ import annotations

from typing import Any

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import Fact, Facts, Mistake
from quoting.core.workshop.categories import SC_IN_FOUR_INCHES
from quoting.schema.kind import Kind
from quoting.schema.places import kind_at
from quoting.wording.book_mistakes import BOOK_MISTAKES
from quoting.wording.construction_mistakes import CONSTRUCTION_MISTAKES
from quoting.wording.making_mistakes import MAKING_MISTAKES
from quoting.wording.mistake_facts import say_fact
from quoting.wording.phrases import Sentences, sentence_for
from quoting.wording.speech import Speech

MISTAKES: Sentences = {
    # A file as a whole
    MistakeCode.FILE_MISSING: ("There is no such file.",),
    MistakeCode.FILE_IS_FOLDER: ("This is a folder; a file is wanted.",),
    MistakeCode.FILE_IS_NO_FILE: ("This is a pipe or a device; a file that was saved is wanted.",),
    MistakeCode.FILE_NAME_TOO_LONG: ("No file has a name as long as this.",),
    MistakeCode.FILE_UNREADABLE: ("This file cannot be read; look at its permissions.",),
    MistakeCode.FILE_TOO_LARGE: ("The file is too large; at most {limit} bytes are read.",),
    MistakeCode.WRONG_ENCODING: (
        "The file is saved as {read}; save it as {wanted}.",
        "Line {line} is not {wanted} text; save the file as {wanted}.",
    ),
    MistakeCode.NOT_TOML: (
        "Line {line}, column {column} is not TOML ({said}). Words, measures and money stand in "
        'quotes: width = "80 cm".',
    ),
    MistakeCode.NESTED_TOO_DEEP: (
        "The file has lists within lists too deep to be read; make it flatter.",
    ),
    MistakeCode.NUMBER_TOO_LONG: ("The file has a number of thousands of digits; shorten it.",),
    # Keys and kinds of value
    MistakeCode.MISSING: ("This is missing; it must be given.",),
    MistakeCode.UNKNOWN_KEY: (
        "There is no key {read} here; there are {known}.",
        "There is no key {read} here.",
    ),
    MistakeCode.KEY_NOT_CHOSEN: (
        '{read} is read only with {choice} = "{word}"; here that is "{chosen}". '
        "Take it out, or change that.",
    ),
    MistakeCode.CHOICE_NOT_SAID: (
        'The table “{word}” is read only with {choice} = "{word}": say so, or take it out.',
    ),
    MistakeCode.EMPTY_KEY: ("What stands before the equals sign here is empty; a name is wanted.",),
    MistakeCode.WRONG_TYPE: (
        "{read} was read; what is wanted is {wanted}.",
        "What is wanted is {wanted}.",
    ),
    MistakeCode.NOT_ONE_OF: (
        "{read} is not among what can be chosen: {known}.",
        "{read} is not among what can be chosen.",
    ),
    MistakeCode.GIVEN_TWICE: ("{read} is given twice; each must have a name of its own.",),
    MistakeCode.CONTROL_CHARACTER: (
        "Character {position} of this shows nothing ({read}); take it out.",
        "This has a character that cannot be printed; type it in plain text.",
    ),
    MistakeCode.TOO_LONG: (
        "{begins} is too long, {read} characters; at most {limit} will do.",
        "This is too long, {read} characters; at most {limit} will do.",
    ),
    MistakeCode.TOO_MANY_WEIGHTS: (
        "The balls of {colour} are of {read} different weights, and can be put together in more "
        "ways than can be worked out: leave out the smallest.",
    ),
    MistakeCode.MORE_MISTAKES: (
        "{read} more mistakes are not told one by one: correct these first.",
    ),
    MistakeCode.TOO_MUCH_AT_ONCE: (
        "These sizes are too much to work out at once: compare fewer of them, or fewer blankets.",
    ),
    MistakeCode.TOO_LARGE_TO_VARY: (
        "The order has too many rows, or too many blankets, for changes of it to be tried.",
    ),
    MistakeCode.TOO_MANY_LINES: (
        "This comes to {read} lines of sections, stripes, layouts, border, colours and extras, "
        "where the form has room for {limit}; the command `quoting quote` takes it from its file.",
    ),
    MistakeCode.TOO_MANY: ("{read} of them are too many; at most {limit} will do.",),
    # Numbers and measures
    MistakeCode.NOT_FINITE: (
        "{read} is no number to calculate with.",
        "This is no number to calculate with.",
    ),
    MistakeCode.NOT_ABOVE: ("{read} is too small; it must be more than {limit}.",),
    MistakeCode.TOO_SMALL: ("{read} is too small; the least that will do is {limit}.",),
    MistakeCode.TOO_LARGE: ("{read} is too large; the most that will do is {limit}.",),
    MistakeCode.NOT_A_NUMBER: ("{read} cannot be read as a number; write it in digits.",),
    MistakeCode.DOUBTFUL_NUMBER: (
        "{read} may mean {as_decimal} or {as_grouping}; write one of these.",
    ),
    MistakeCode.TOO_MANY_DIGITS: ("{read} has too many digits; at most {limit} will do.",),
    MistakeCode.NOT_A_MEASURE: (
        "{read} cannot be read as a measure; write a number and one of {known}.",
    ),
    MistakeCode.MISSING_UNIT: (
        "{read} has no unit; write it in quotes with one of {known}, as {quoted}.",
        "{read} has no unit; write one of {known} after it.",
    ),
    MistakeCode.UNKNOWN_UNIT: ("{read} is no unit that is known here; use one of {known}.",),
    # Names
    MistakeCode.UNKNOWN_YARN: (
        "The workshop has no yarn {read}; it has {known}.",
        "The workshop has no yarn {read}.",
    ),
    MistakeCode.UNKNOWN_COLOUR: (
        "The yarn has no colour {read}; it has {known}.",
        "The yarn has no colour {read}.",
    ),
    MistakeCode.UNKNOWN_STITCH: (
        "There is no stitch or pattern {read}; there are {known}.",
        "There is no stitch or pattern {read}.",
    ),
    MistakeCode.OTHER_VOCABULARY: (
        "{read} is not a name of the {terms} stitches; in {terms} names it is {wanted}.",
    ),
    MistakeCode.BASIC_STITCH_NAME: (
        "{read} is the name of a basic stitch; give the pattern another.",
    ),
    MistakeCode.UNKNOWN_CURRENCY: ("{read} is no currency code of ISO 4217, such as GBP or EUR.",),
    MistakeCode.UNKNOWN_CATEGORY: (
        "{read} is no yarn category; they go from {lowest_category} to {highest_category}.",
    ),
    MistakeCode.NOT_A_COLOUR_CODE: ("{read} is no colour code; write one such as #1f6f78.",),
    MistakeCode.NOT_A_LOCALE: ("{read} is no locale; write one such as en_GB or de_DE.",),
    MistakeCode.NO_CATALOGUE: (
        "What the buyer reads cannot be written in {read}; there are {known}, each also with a "
        "country, such as de_AT.",
    ),
    # What belongs together
    MistakeCode.ONE_TARGET: (
        "{read} cannot go together; give only one of them.",
        "Say what the price is made by: margin or markup.",
    ),
    MistakeCode.PRICE_FOR_ONE_ORDER: (
        "A price is given for one order, in its own file; the workshop needs a margin or a markup.",
    ),
    MistakeCode.SHARE_OR_YARN: (
        "A deposit is a share of the total, the yarn, or the yarn and a share of the rest.",
    ),
    MistakeCode.SHARE_AND_REPEATS: (
        "A section has a share of the length or exact repeats; give only one.",
    ),
    MistakeCode.FITTED_AND_REPEATS: (
        "Stripes that are fit to the size are worked once; give no repeats beside it.",
    ),
    MistakeCode.NO_SHARES: ("At least one section must have a share of the length above 0.",),
    MistakeCode.CONFIDENCE_OR_ALLOWANCE: (
        "Yarn in reserve goes by confidence or by allowance; give only one.",
    ),
    MistakeCode.PIECE_OR_RUN: (
        "Give the swatch either a piece that was weighed or a run that was measured.",
    ),
    MistakeCode.NO_RATE: (
        "There is no rate of exchange for {read}; the workshop has {known}.",
        "There is no rate of exchange for {read}; add one to the workshop.",
    ),
    MistakeCode.OWN_CURRENCY: (
        "{read} is the workshop's own currency, which takes no rate: leave this one out.",
    ),
    MistakeCode.NOT_WHOLE_MINOR_UNITS: ("{read} is finer than the smallest coin of {currency}.",),
    # What cannot be made or sold so
    MistakeCode.WIDTH_TOO_SMALL: (
        "This is too narrow for one stitch repeat and the border; "
        "the smallest that works is {smallest_cm}.",
    ),
    MistakeCode.HEIGHT_TOO_SMALL: (
        "This is too short for one of every stripe and the border; "
        "the smallest that works is {smallest_cm}.",
        "This is too short for one of every stripe, which take {smallest_body_cm}.",
    ),
    MistakeCode.TOO_MANY_STITCHES: (
        "This comes to {read} stitches in a row; at most {limit} will do.",
    ),
    MistakeCode.TOO_MANY_BALLS: (
        "{colour} takes {read} balls of {yarn}, where at most {limit} will do: look at the weight "
        "and the length of its balls, and at its swatch.",
    ),
    MistakeCode.TOO_MANY_ROWS: ("This comes to {read} rows; at most {limit} will do.",),
    MistakeCode.BALLS_TOO_SHORT: ("No ball of {yarn} is longer than the two tails that it needs.",),
    MistakeCode.TURNS_TAKE_ALL: (
        "The row turns of this session take all of its {read} minutes; "
        "look at its rows and at the minutes of a turn.",
    ),
    MistakeCode.SIZE_NOT_COMPARED: ("{read} is none of the sizes that are compared.",),
    MistakeCode.SIZE_WITHOUT_PRICE: ("There is no price for {read}; give one for each size.",),
    MistakeCode.SIZE_TWICE: ("{read} is among the sizes already; once is enough.",),
    MistakeCode.NOT_A_SIZE: (
        "{read} cannot be read as a size; write a width and a length: {wanted}.",
    ),
    MistakeCode.NO_PRICE: (
        "Once the target and tax are taken {kept} of the price is left, and fees take {fees}: "
        "no price covers the costs. A lower target would do.",
    ),
    MistakeCode.PRICE_NOT_POSITIVE: (
        "The price comes to {price}, which is nothing to sell at; a higher one would do.",
    ),
    MistakeCode.PRICE_TOO_LARGE: (
        "This comes to a price of more than {most}, which cannot be worked out. A lower target "
        "would do.",
    ),
    # Reference rates
    MistakeCode.NO_CONNECTION: (
        "The reference rates could not be reached; any that were kept before still serve.",
    ),
    MistakeCode.BAD_STATUS: (
        "The reference rates were asked for and answered with an error, {read}.",
    ),
    MistakeCode.TOO_SLOW: (
        "The reference rates had not come after {limit} seconds; try again later.",
    ),
    MistakeCode.TOO_MUCH: ("What came in place of reference rates is too long to be them.",),
    MistakeCode.NOT_RATES: ("What came is not the document of reference rates, and was not read.",),
    **BOOK_MISTAKES,
    **CONSTRUCTION_MISTAKES,
    **MAKING_MISTAKES,
}

_SETTLED: Facts = {
    "lowest_category": min(SC_IN_FOUR_INCHES),
    "highest_category": max(SC_IN_FOUR_INCHES),
}
"""Facts that the core has settled for good, and so gives with no mistake."""


def mistake_sentence(mistake: Mistake, speech: Speech, kind: Kind[Any] | None = None) -> str:
    """Return what is wrong and what would do; where a name is nearly right, the right one too.

    `kind` is that of the value it is about, where its place in a document does not tell.
    """
    kind = kind or kind_at(mistake.place)

    def say(name: str, fact: Fact) -> str:
        return say_fact(name, fact, mistake, kind, speech)

    sentence = sentence_for(
        mistake.code, {**_SETTLED, **mistake.facts}, MISTAKES, say, speech.worded
    )
    near = mistake.facts.get("nearest")
    return f"{sentence} Did you mean {near}?" if near else sentence
