"""What finished orders say of the quotes, ready to be shown: sentences, offers, pictures."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from decimal import Decimal

from markupsafe import Markup

from exports.charts import Dot, dots
from quoting.core.making.case import Case
from quoting.core.making.outturn import Outturn
from quoting.core.making.track_record import Accuracy, TrackRecord
from quoting.core.making.widening import Widening
from quoting.wording import (
    Speech,
    bias_sentences,
    coverage_sentence,
    more_or_less,
    outturn_words,
    widening_sentence,
)

MOST_DRAWN = 30
"""Orders in a picture, the last ones; the table has them all."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Figure:
    """What is said of hours, or of yarn: `what` is also its key in the workshop's ranges.

    `offer` is a factor that the workshop can take over, and `says_it` the sentence with it.
    """

    what: str
    sentences: tuple[str, ...]
    offer: Widening | None
    says_it: str
    narrow: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Earnings:
    """The picture of what hours earned in one currency."""

    currency: str
    picture: Markup


@dataclass(frozen=True, slots=True, kw_only=True)
class RecordView:
    """All that the page shows besides the groups and the table; `drawn` are orders in a picture."""

    record: TrackRecord
    figures: tuple[Figure, ...]
    hours: Markup | None
    earnings: tuple[Earnings, ...]
    drawn: int
    left_undrawn: int


def view_record(record: TrackRecord, say: Speech) -> RecordView:
    """Return what finished orders say, ready to be shown."""
    told = [case for case in record.cases if case.hours is not None]
    return RecordView(
        record=record,
        figures=tuple(_figures(record, say)),
        hours=_hours_picture(told[-MOST_DRAWN:], say) if told else None,
        earnings=tuple(
            Earnings(currency=code, picture=_earnings_picture(record.cases, code, say))
            for code in record.currencies
        ),
        drawn=min(len(told), MOST_DRAWN),
        left_undrawn=max(0, len(told) - MOST_DRAWN),
    )


def _figures(record: TrackRecord, say: Speech) -> Iterator[Figure]:
    for what, accuracy in (("hours", record.hours), ("yarn", record.grams)):
        if accuracy is not None:
            yield _figure(what, accuracy, say)


def _figure(what: str, accuracy: Accuracy, say: Speech) -> Figure:
    widening = accuracy.widening
    asked = widening is not None and (widening.is_needed or widening.present > 1)
    sentences = list(bias_sentences(accuracy.bias, what, say))
    if accuracy.coverage is not None:
        sentences.append(coverage_sentence(accuracy.coverage, what, say))
    return Figure(
        what=what,
        sentences=tuple(sentences),
        offer=widening if asked and widening is not None and widening.is_other else None,
        says_it=widening_sentence(widening, what, say) if asked and widening is not None else "",
        narrow=widening is not None and widening.is_needed,
    )


# The charts escape every word that they write.


def _hours_picture(cases: Sequence[Case], say: Speech) -> Markup:
    drawn = dots(
        [_hours_dot(case, case.hours, say) for case in cases if case.hours is not None],
        title="Real hours against those quoted, order by order",
        description=(
            "For each order in turn a line for the range that was quoted, and a dot where the real "
            "hours fell, as parts more or less than quoted: filled within the range, hollow "
            "outside."
        ),
        zero="as quoted",
        say=lambda share: more_or_less(float(share), say),
        prefix="hours",
    )
    return Markup(drawn)  # noqa: S704


def _hours_dot(case: Case, hours: Outturn, say: Speech) -> Dot:
    reach = (hours.half_width or 0.0) / hours.stated
    return Dot(
        name=case.number,
        label=outturn_words(hours, say),
        expected=Decimal(0),
        real=_share(hours.ratio - 1),
        low=_share(max(-1.0, -reach)),
        high=_share(reach),
    )


def _earnings_picture(cases: Sequence[Case], currency: str, say: Speech) -> Markup:
    earned = [(case, case.earned) for case in cases if case.currency == currency]
    known = [(case, amount) for case, amount in earned if amount is not None]
    drawn = dots(
        [_earnings_dot(case, amount, say) for case, amount in known[-MOST_DRAWN:]],
        title=f"What an hour earned, order by order, in {currency}",
        description=(
            "For each order in turn a dot at what an hour of it really earned, and a stroke at "
            "what it was to earn."
        ),
        zero="nothing",
        say=lambda amount: say.money(amount, currency),
        prefix=f"earned-{currency}",
    )
    return Markup(drawn)  # noqa: S704


def _earnings_dot(case: Case, earned: Decimal, say: Speech) -> Dot:
    stated = say.money(case.was_to_earn, case.currency)
    return Dot(
        name=case.number,
        label=f"{say.money(earned, case.currency)}, quoted at {stated}",
        expected=case.was_to_earn,
        real=earned,
    )


def _share(share: float) -> Decimal:
    return Decimal(str(round(share, 6)))
