"""What a maker tells every buyer in words of her own, beside what is worked out for each."""

from __future__ import annotations

from dataclasses import dataclass

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
