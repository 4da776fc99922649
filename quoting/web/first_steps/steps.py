"""The questions of the first steps, in order, and the fields of a workshop that each asks for."""

from __future__ import annotations

from dataclasses import dataclass

from werkzeug.datastructures import MultiDict

from quoting.web.forms.sent import Sent


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """One question; `fields` begin the names of the fields that it asks for.

    It was answered when something stands in a field that it is `told_by`, or in one within such.
    """

    word: str
    title: str
    fields: tuple[str, ...]
    told_by: tuple[str, ...]

    def has(self, field_name: str) -> bool:
        """Return whether the question asks for a field, or a place within one."""
        return any(
            field_name == field or field_name.startswith(f"{field}.") for field in self.fields
        )

    def of(self, sent: Sent) -> Sent:
        """Return what was sent of this question."""
        return MultiDict((name, text) for name, text in sent.items() if self.has(name))

    def is_answered(self, sent: Sent) -> bool:
        """Return whether it was answered."""
        tells = tuple(f"{field}." for field in self.told_by)
        return any(text.strip() for name, text in sent.items() if f"{name}.".startswith(tells))


MAKER = Step(
    word="maker",
    title="You and your workshop",
    fields=tuple(f"workshop.{key}" for key in ("name", "locale", "currency", "units", "speaks")),
    told_by=("workshop.name",),
)
YARN = Step(
    word="yarn", title="A yarn, as on its label", fields=("yarns",), told_by=("yarns.1.name",)
)
SWATCH = Step(word="swatch", title="A swatch", fields=("swatches",), told_by=("swatches.1.gauge",))
MOTIF = Step(
    word="motif",
    title="A motif, if you join squares",
    fields=("motifs",),
    told_by=tuple(f"motifs.1.{key}" for key in ("rounds", "side", "two_joined", "weighed")),
)
TIMING = Step(word="timing", title="A timing", fields=("timings",), told_by=("timings.1.minutes",))
PAY = Step(
    word="pay",
    title="Your pay and your hours",
    fields=("pay", "price", "workshop.hours_per_week"),
    told_by=("pay.making_per_hour",),
)
MINUTES = Step(word="minutes", title="The other work", fields=("minutes",), told_by=("minutes",))
STEPS = (MAKER, YARN, SWATCH, MOTIF, TIMING, PAY, MINUTES)
END = "end"
"""What comes after the last question: to begin with what was answered."""


def step_called(word: str) -> Step | None:
    """Return the question of a word; None at the end."""
    if word == END:
        return None
    return next((step for step in STEPS if step.word == word), MAKER)


def next_word(step: Step | None) -> str:
    """Return the word of what comes after a question."""
    if step in (None, STEPS[-1]):
        return END
    return STEPS[STEPS.index(step) + 1].word


def previous_word(step: Step | None) -> str:
    """Return the word of what comes before; of the first, its own."""
    at = len(STEPS) if step is None else STEPS.index(step)
    return STEPS[max(0, at - 1)].word
