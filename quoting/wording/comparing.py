"""Which size pays, and by which rules of thumb: what a comparison says in words."""

from __future__ import annotations

from collections.abc import Iterator

from quoting.core.order.joined_squares import JoinMethod
from quoting.core.weighing.budget import Change, Saving
from quoting.core.weighing.comparison import Comparison, Reason, Refusal, Rule
from quoting.wording.calmer import calmer_words
from quoting.wording.mistakes import mistake_sentence
from quoting.wording.motif_words import join_words
from quoting.wording.speech import Speech

_RULES = {
    Rule.THREE_TIMES_MATERIALS: "Three times the materials",
    Rule.BY_AREA: "By area, as the order's own size",
    Rule.BY_SKEIN: "By ball, as the order's own size",
}

_REASONS = {
    Reason.ENDS: "fewer of its hours go into weaving in ends",
    Reason.SKEIN_STEPS: "less yarn is left over for the hours worked",
    Reason.FIXED_HOURS: "the hours that every size takes alike are a smaller part of its own",
    Reason.PRICE: "its price is the highest for the work",
}

_CHANGES = {
    Change.FEWER_COLOURS: "Work {subject} in another of the colours",
    Change.SMALLER_BORDER: "One border round less",
    Change.MIXED_BALLS: "Let a colour come from balls of several sizes or dye lots",
    Change.OTHER_JOIN: "Join the motifs otherwise: {subject}",
    Change.ENDS_WORKED_OVER: "Work the ends over as you go, where you would weave them in",
    Change.OTHER_YARN: "Take {subject} for the yarn",
}

_AT_THE_TARGET = (
    "At your target every size pays about the same for an hour: compare the hours, the ends and "
    "the price for its area instead."
)


def rule_words(rule: Rule, speech: Speech) -> str:
    """Return what a rule of thumb is called."""
    return speech.worded(_RULES[rule])


def change_words(saving: Saving, speech: Speech) -> str:
    """Return what a change is."""
    subject = saving.subject
    if saving.change is Change.OTHER_JOIN:
        subject = join_words(JoinMethod(subject), speech)
    if saving.change is Change.CALMER_STRIPES:
        return speech.worded(calmer_words(saving.quote.order.design.body).saving)
    return speech.worded(_CHANGES[saving.change]).format(subject=subject)


def verdict(comparison: Comparison, speech: Speech) -> str:
    """Return what says which size pays best and why, and whether it pays her hour at all.

    At a target, why none is named.
    """
    if not comparison.sizes:
        return "None of these sizes can be made."
    if comparison.best is None or comparison.reason is None:
        return " ".join((_AT_THE_TARGET, *_prices_kept(comparison, speech)))
    best = comparison.sizes[comparison.best]
    price = best.quote.price
    earned = speech.money(price.earned_per_hour)
    if len(comparison.sizes) == 1:
        said = f"{best.size} earns {earned} an hour; there is no other size to compare it with."
    else:
        said = f"{best.size} pays best, {earned} an hour: {_REASONS[comparison.reason]}."
    if price.pays_the_hour:
        return said
    one_pays = any(compared.quote.price.pays_the_hour for compared in comparison.sizes)
    asked = "it" if one_pays else "each size"
    pay = speech.money(price.pay_per_hour)
    return f"{said} That is less than the {pay} that your own pay comes to: ask more for {asked}."


def _prices_kept(comparison: Comparison, speech: Speech) -> Iterator[str]:
    """Yield what is said of the order's own size, which keeps the price that was given for it."""
    for compared in comparison.sizes:
        price = compared.quote.price
        if price.target.given is not None:
            yield (
                f"{compared.size}, the order's own size, stands at the price that you gave for it, "
                f"{speech.money(price.target.given)}; an hour of it earns "
                f"{speech.money(price.earned_per_hour)}."
            )


def refusal_words(refusal: Refusal, speech: Speech) -> str:
    """Return why a size is left out, in whole sentences."""
    return " ".join(mistake_sentence(mistake, speech) for mistake in refusal.mistakes)
