"""How a maker types who has no workshop yet: by what she has said so far, or her browser says."""

from __future__ import annotations

from dataclasses import dataclass

from quoting.core.ground.measures import Units
from quoting.core.workshop.stitches import Vocabulary
from quoting.schema.notation import Medium, Notation
from quoting.web.forms.sent import Sent
from quoting.wording import OFFERED_LOCALES, Speech, is_locale, usual_currency

_AMERICAN = frozenset({"en_US", "en_CA", "es_MX", "fr_CA"})
"""Where stitches go by American names: common practice."""

_INCHES = frozenset({"en_US"})


@dataclass(frozen=True, slots=True, kw_only=True)
class Beginner:
    """What the fields of a form ask of a workshop, before there is any."""

    speech: Speech

    @property
    def notation(self) -> Notation:
        """How she types."""
        return Notation(
            medium=Medium.TYPED,
            terms=self.speech.vocabulary,
            marks=self.speech.marks,
            units=self.speech.units,
            signs=tuple(self.speech.currency_signs),
        )


def beginner_of(sent: Sent) -> Beginner:
    """Return who has typed so much."""
    locale = sent.get("workshop.locale", "")
    inches = sent.get("workshop.units") == Units.INCHES
    british = sent.get("workshop.speaks") == Vocabulary.UK
    return Beginner(
        speech=Speech(
            locale=locale if is_locale(locale) else OFFERED_LOCALES[0],
            units=Units.INCHES if inches else Units.METRIC,
            vocabulary=Vocabulary.UK if british else Vocabulary.US,
            currency=sent.get("workshop.currency", ""),
        )
    )


def offered_to(languages: str | None) -> dict[str, str]:
    """Return what the first question is filled in with, for a locale that a browser prefers."""
    locale = languages or OFFERED_LOCALES[0]
    terms = Vocabulary.US if locale in _AMERICAN else Vocabulary.UK
    return {
        "workshop.locale": locale,
        "workshop.currency": usual_currency(locale),
        "workshop.units": (Units.INCHES if locale in _INCHES else Units.METRIC).value,
        "workshop.speaks": terms.value,
    }
