"""The facts of mistakes, said as what they are: what was read, what would do, a limit, a day."""

from __future__ import annotations

from datetime import date
from decimal import Decimal
from typing import Any

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import Fact, Mistake
from quoting.schema.kind import Kind
from quoting.wording.figures import as_decimal
from quoting.wording.limits import past_limit
from quoting.wording.phrases import listed
from quoting.wording.speech import Speech

MOST_LISTED = 15
"""Names that are listed; of more, only how many there are."""

_WANTED = {
    "text": "text in quotes",
    "whole-number": "a whole number",
    "number": "a number without quotes",
    "yes-or-no": "true or false",
    "date": "a date such as 2027-03-20",
    "time": "a time of the day such as 9:10",
    "money-text": 'an amount in quotes such as "4.60"',
    "measure": 'a measure in quotes such as "80 cm"',
    "list": "a list in square brackets",
    "table": "a table of keys",
}


def say_fact(
    name: str, fact: Fact, mistake: Mistake, kind: Kind[Any] | None, speech: Speech
) -> str:
    """Return a fact of a mistake, about a value of that kind, as it is told."""
    if isinstance(fact, tuple):
        return _several([str(word) for word in fact], "and" if name == "read" else "or")
    if isinstance(fact, date):
        return speech.day(fact)
    if isinstance(fact, str):
        return "“”" if mistake.code == MistakeCode.UNKNOWN_KEY and not fact else _text(name, fact)
    assert fact is not None, "a fact that is not there is not said"  # noqa: S101
    return _figure(name, fact, mistake, kind, speech)


def _text(name: str, fact: str) -> str:
    if name == "wanted":
        return _WANTED.get(fact, fact)
    if name not in {"read", "begins"}:
        return fact
    return f"“{fact}”" if fact else "an empty text"


def _several(words: list[str], last: str) -> str:
    if len(words) > MOST_LISTED:
        words = [*words[:MOST_LISTED], f"{len(words) - MOST_LISTED} more"]
        last = "and"
    return listed(words, last)


def _figure(
    name: str, fact: Decimal | float, mistake: Mistake, kind: Kind[Any] | None, speech: Speech
) -> str:
    """Return a figure of a mistake as values of its kind are told."""
    if name in {"smallest_cm", "smallest_body_cm"}:
        return speech.least_length(float(fact))
    if name in {"kept", "fees"}:
        return speech.percent(fact)
    if name in {"as_decimal", "as_grouping"}:
        return speech.ungrouped(fact)
    if name in {"price", "most"}:
        return speech.money(as_decimal(fact))
    currency = mistake.facts.get("currency")
    if mistake.code == MistakeCode.PAID_BACK_TOO_MUCH and isinstance(currency, str):
        return speech.money(as_decimal(fact), currency)
    if mistake.code in {MistakeCode.NOT_ABOVE, MistakeCode.TOO_SMALL, MistakeCode.TOO_LARGE}:
        return past_limit(name, fact, mistake, kind, speech)
    return speech.number(fact)
