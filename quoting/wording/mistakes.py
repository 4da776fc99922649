"""What is wrong with a value, in a sentence: what was read, and what would do."""

from __future__ import annotations

from typing import Any

from quoting.core.ground.errors import Fact, Facts, Mistake
from quoting.core.workshop.categories import SC_IN_FOUR_INCHES
from quoting.schema.kind import Kind
from quoting.schema.places import kind_at
from quoting.wording.mistake_facts import say_fact
from quoting.wording.phrases import Sentences, sentence_for
from quoting.wording.speech import Speech

MISTAKES: Sentences = {
    # A file as a whole
    "file-missing": ("There is no such file.",),
    "file-is-folder": ("This is a folder; a file is wanted.",),
    "file-is-no-file": ("This is a pipe or a device; a file that was saved is wanted.",),
    "file-name-too-long": ("No file has a name as long as this.",),
    "file-unreadable": ("This file cannot be read; look at its permissions.",),
    "file-too-large": ("The file is too large; at most {limit} bytes are read.",),
    "wrong-encoding": (
        "The file is saved as {read}; save it as {wanted}.",
        "Line {line} is not {wanted} text; save the file as {wanted}.",
    ),
    "not-toml": (
        "Line {line}, column {column} is not TOML ({said}). Words, measures and money stand in "
        'quotes: width = "80 cm".',
    ),
    "nested-too-deep": ("The file has lists within lists too deep to be read; make it flatter.",),
    "number-too-long": ("The file has a number of thousands of digits; shorten it.",),
    # Keys and kinds of value
    "missing": ("This is missing; it must be given.",),
    "unknown-key": (
        "There is no key {read} here; there are {known}.",
        "There is no key {read} here.",
    ),
    "empty-key": ("What stands before the equals sign here is empty; a name is wanted.",),
    "wrong-type": ("{read} was read; what is wanted is {wanted}.", "What is wanted is {wanted}."),
    "not-one-of": (
        "{read} is not among what can be chosen: {known}.",
        "{read} is not among what can be chosen.",
    ),
    "given-twice": ("{read} is given twice; each must have a name of its own.",),
    "control-character": (
        "Character {position} of this shows nothing ({read}); take it out.",
        "This has a character that cannot be printed; type it in plain text.",
    ),
    "too-long": (
        "{begins} is too long, {read} characters; at most {limit} will do.",
        "This is too long, {read} characters; at most {limit} will do.",
    ),
    "too-many-weights": (
        "The balls of {colour} are of {read} different weights, and can be put together in more "
        "ways than can be reckoned: leave out the smallest.",
    ),
    "more-mistakes": ("{read} more mistakes are not told one by one: put these right first.",),
    "too-much-at-once": (
        "These sizes are too much to work out at once: compare fewer of them, or fewer blankets.",
    ),
    "too-large-to-vary": (
        "The order has too many rows, or too many blankets, for changes of it to be tried.",
    ),
    "too-many-lines": (
        "This comes to {read} lines of sections, stripes, border, colours and extras, where the "
        "form has room for {limit}; the command `quoting quote` takes it from its file.",
    ),
    "too-many": ("{read} of them are too many; at most {limit} will do.",),
    # Numbers and measures
    "not-finite": ("{read} is no number to reckon with.", "This is no number to reckon with."),
    "not-above": ("{read} is too small; it must be more than {limit}.",),
    "too-small": ("{read} is too small; the least that will do is {limit}.",),
    "too-large": ("{read} is too large; the most that will do is {limit}.",),
    "not-a-number": ("{read} cannot be read as a number; write it in digits.",),
    "doubtful-number": ("{read} may mean {as_decimal} or {as_grouping}; write one of these.",),
    "too-many-digits": ("{read} has too many digits; at most {limit} will do.",),
    "not-a-measure": ("{read} cannot be read as a measure; write a number and one of {known}.",),
    "missing-unit": (
        "{read} has no unit; write it in quotes with one of {known}, as {quoted}.",
        "{read} has no unit; write one of {known} after it.",
    ),
    "unknown-unit": ("{read} is no unit that is known here; use one of {known}.",),
    # Names
    "unknown-yarn": (
        "The workshop has no yarn {read}; it has {known}.",
        "The workshop has no yarn {read}.",
    ),
    "unknown-colour": (
        "The yarn has no colour {read}; it has {known}.",
        "The yarn has no colour {read}.",
    ),
    "unknown-stitch": (
        "There is no stitch or pattern {read}; there are {known}.",
        "There is no stitch or pattern {read}.",
    ),
    "other-vocabulary": (
        "{read} is not a name of the {terms} stitches; in {terms} names it is {wanted}.",
    ),
    "basic-stitch-name": ("{read} is the name of a basic stitch; give the pattern another.",),
    "unknown-currency": ("{read} is no currency code of ISO 4217, such as GBP or EUR.",),
    "unknown-category": (
        "{read} is no yarn category; they go from {lowest_category} to {highest_category}.",
    ),
    "not-a-colour-code": ("{read} is no colour code; write one such as #1f6f78.",),
    "not-a-locale": ("{read} is no locale; write one such as en_GB or de_DE.",),
    # What belongs together
    "one-target": (
        "{read} cannot go together; give only one of them.",
        "Say what the price is made by: margin or markup.",
    ),
    "price-for-one-order": (
        "A price is given for one order, in its own file; the workshop needs a margin or a markup.",
    ),
    "share-or-yarn": ("A deposit is either a share of the total or the yarn; give one of them.",),
    "share-and-repeats": ("A section has a share of the height or exact repeats; give only one.",),
    "no-shares": ("At least one section must have a share of the height above 0.",),
    "confidence-or-allowance": (
        "Yarn in reserve goes by confidence or by allowance; give only one.",
    ),
    "piece-or-run": (
        "Give the swatch either a piece that was weighed or a run that was measured.",
    ),
    "no-rate": (
        "There is no rate of exchange for {read}; the workshop has {known}.",
        "There is no rate of exchange for {read}; add one to the workshop.",
    ),
    "own-currency": (
        "{read} is the workshop's own currency, which takes no rate: leave this one out.",
    ),
    "not-whole-minor-units": ("{read} is finer than the smallest coin of {currency}.",),
    # What cannot be made or sold so
    "width-too-small": (
        "This is too narrow for one stitch repeat and the border; "
        "the smallest that works is {smallest_cm}.",
    ),
    "height-too-small": (
        "This is too low for one of every stripe and the border; "
        "the smallest that works is {smallest_cm}.",
        "This is too low for one of every stripe, which take {smallest_body_cm}.",
    ),
    "too-many-stitches": ("This comes to {read} stitches in a row; at most {limit} will do.",),
    "too-many-balls": (
        "{colour} takes {read} balls of {yarn}, where at most {limit} will do: look at the weight "
        "and the length of its balls, and at its swatch.",
    ),
    "too-many-rows": ("This comes to {read} rows; at most {limit} will do.",),
    "balls-too-short": ("No ball of {yarn} is longer than the two tails that it needs.",),
    "turns-take-all": (
        "The row turns of this session take all of its {read} minutes; "
        "look at its rows and at the minutes of a turn.",
    ),
    "size-not-compared": ("{read} is none of the sizes that are compared.",),
    "size-without-price": ("There is no price for {read}; give one for each size.",),
    "size-twice": ("{read} is among the sizes already; once is enough.",),
    "not-a-size": ("{read} cannot be read as a size; write a width and a height: {wanted}.",),
    "no-price": (
        "Once the target and tax are taken {kept} of the price is left, and fees take {fees}: "
        "no price covers the costs. A lower target would do.",
    ),
    "price-not-positive": (
        "The price comes to {price}, which is nothing to sell at; a higher one would do.",
    ),
    "price-too-large": (
        "This comes to a price of more than {most}, which cannot be reckoned with. A lower target "
        "would do.",
    ),
    # Reference rates
    "no-connection": (
        "The reference rates could not be reached; any that were kept before still serve.",
    ),
    "bad-status": ("The reference rates were asked for and answered with an error, {read}.",),
    "too-slow": ("The reference rates had not come after {limit} seconds; try again later.",),
    "too-much": ("What came in place of reference rates is too long to be them.",),
    "not-rates": ("What came is not the document of reference rates, and was not read.",),
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

    sentence = sentence_for(mistake.code, {**_SETTLED, **mistake.facts}, MISTAKES, say)
    near = mistake.facts.get("nearest")
    return f"{sentence} Did you mean {near}?" if near else sentence
