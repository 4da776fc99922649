"""The facts of cautions, said as what they are: a stitch, a length, money, a share, a day."""

from __future__ import annotations

from datetime import date
from decimal import Decimal

from quoting.core.ground.errors import Fact
from quoting.core.order.design import EndsBecome
from quoting.wording.catalogues import sentence
from quoting.wording.categories import category_words
from quoting.wording.ends import FATES
from quoting.wording.figures import as_decimal
from quoting.wording.phrases import listed
from quoting.wording.speech import Speech
from quoting.wording.trade_words import task_words

_HEALTH_SERVICES = {
    "DE": sentence(
        "the federal institute of public health (BIÖG, formerly BZgA) advises a sleeping bag in "
        "place of any cover"
    ),
    "ES": sentence(
        "the health services advise against duvets, pillows and anything soft in the cot"
    ),
    "FR": sentence("Santé publique France advises a sleeping bag, and no blanket, duvet or pillow"),
    "GB": sentence("the NHS advises a clear cot, with nothing loose in it"),
    "NL": sentence(
        "the youth health service (JGZ) advises against duvets, pillows and anything loose in "
        "the cot"
    ),
    "US": sentence(
        "the American Academy of Pediatrics (2022) advises keeping soft objects and loose "
        "bedding out of the sleep area"
    ),
}
"""What the health service of each country in `HEALTH_SERVICES` of the core advises: a clause."""

_LENGTHS = frozenset({"height_cm", "wanted_cm", "stripe_cm", "row_cm"})
_STITCHES = frozenset({"stitch", "wide", "narrow"})
_MONEY = frozenset({"earned", "pay", "short", "price", "minimum"})
_A_SHARE = "_off"


def say_fact(name: str, fact: Fact, speech: Speech) -> str:
    """Return a fact of a caution in the words, the measures or the money that it is of."""
    if name == "tasks" and isinstance(fact, tuple):
        return listed([task_words(str(task), speech) for task in fact], "and")
    if name == "layouts" and isinstance(fact, tuple):
        return listed(map(str, fact), "and")
    if isinstance(fact, tuple):
        return listed([speech.stitch(str(word)) for word in fact], "and")
    if isinstance(fact, date):
        return speech.day(fact)
    if isinstance(fact, str):
        return _word(name, fact, speech)
    assert fact is not None, "a fact that is not there is not said"  # noqa: S101
    return _figure(name, fact, speech)


def _word(name: str, fact: str, speech: Speech) -> str:
    if name in _STITCHES:
        return speech.stitch(fact)
    if name == "become":
        return FATES[EndsBecome(fact)].doing.lower()
    return speech.worded(_HEALTH_SERVICES[fact]) if name == "advised_in" else fact


def _figure(name: str, fact: Decimal | float, speech: Speech) -> str:
    if name in _LENGTHS:
        return speech.length(float(fact))
    if name in _MONEY:
        return speech.money(as_decimal(fact))
    if name == "apart" or name.endswith(_A_SHARE):
        return speech.percent(fact)
    if name == "category":
        return category_words(int(fact))
    if name == "hours":
        return speech.hours(as_decimal(fact))
    return speech.trimmed(fact, 2)
