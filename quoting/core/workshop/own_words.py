"""What a maker tells every buyer in words of her own, beside what is worked out for each."""

from __future__ import annotations

from dataclasses import dataclass, replace

from quoting.core.ground.errors import Checks

MOST_CONTACT = 300
MOST_ADDRESS = 1_000
MOST_WORDS = 10_000
"""Characters of each text."""


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnWords:
    """How a buyer reaches the maker, and what she says herself; what is empty is not shown.

    `contact` is one line; the others keep their lines as they were typed.
    """

    contact: str = ""
    address: str = ""
    greeting: str = ""
    care: str = ""
    terms: str = ""

    def __post_init__(self) -> None:
        checks = Checks()
        checks.text("contact", self.contact, most=MOST_CONTACT)
        checks.text("address", self.address, most=MOST_ADDRESS, lines=True)
        checks.text("greeting", self.greeting, most=MOST_WORDS, lines=True)
        checks.text("care", self.care, most=MOST_WORDS, lines=True)
        checks.text("terms_of_sale", self.terms, most=MOST_WORDS, lines=True)
        checks.done()


@dataclass(frozen=True, slots=True, kw_only=True)
class WordsIn:
    """What a maker says herself to buyers who read another language (`de`, `en_US`)."""

    language: str
    greeting: str = ""
    care: str = ""
    terms: str = ""

    def __post_init__(self) -> None:
        checks = Checks()
        checks.name("language", self.language)
        checks.text("greeting", self.greeting, most=MOST_WORDS, lines=True)
        checks.text("care", self.care, most=MOST_WORDS, lines=True)
        checks.text("terms_of_sale", self.terms, most=MOST_WORDS, lines=True)
        checks.done()


def words_in(language: str, usual: OwnWords, others: tuple[WordsIn, ...]) -> OwnWords:
    """Return a maker's words for a buyer who reads a language; what she lacks in it is as usual.

    Words for the same country come before those for its language elsewhere.
    """
    alike = [words for words in others if _parts(words.language)[0] == _parts(language)[0]]
    alike.sort(key=lambda words: _parts(words.language) != _parts(language))
    found = next(iter(alike), None)
    if found is None:
        return usual
    return replace(
        usual,
        greeting=found.greeting or usual.greeting,
        care=found.care or usual.care,
        terms=found.terms or usual.terms,
    )


def _parts(language: str) -> list[str]:
    return language.replace("_", "-").lower().split("-")
