"""A comparison as a page of plain text: sizes side by side, and the rules of thumb."""

from __future__ import annotations

from collections.abc import Iterator

from quoting.cli.columns import PAGE_WIDTH, columns, wrapped
from quoting.core.weighing.comparison import Compared, Comparison
from quoting.wording import Speech, count_figures, refusal_words, rule_words, verdict
from quoting.wording.shapes import sides_note, width_note


def comparison_table(comparison: Comparison, speech: Speech) -> str:
    """Return the page."""
    lines = [
        f"Sizes side by side, in {speech.currency}",
        "-" * PAGE_WIDTH,
        *_sizes(comparison, speech),
        "",
        *_note(comparison),
        *wrapped(verdict(comparison, speech), PAGE_WIDTH),
        *_rules(comparison, speech),
        *_refused(comparison, speech),
    ]
    return "\n".join(lines) + "\n"


def _note(comparison: Comparison) -> Iterator[str]:
    """Yield what the figures of a size are, where they are no width and length."""
    for compared in comparison.sizes[:1]:
        yield from wrapped(width_note(compared.quote.plan), PAGE_WIDTH)
        yield from wrapped(sides_note(compared.quote.plan), PAGE_WIDTH)


def _sizes(comparison: Comparison, speech: Speech) -> Iterator[str]:
    """Yield the figures, a line for each and a column for each size, as they read in a quote."""
    if not comparison.sizes:
        return
    figures = [_figures(compared, speech) for compared in comparison.sizes]
    names = list(figures[0])
    for start in range(0, len(figures), 5):
        some = figures[start : start + 5]
        yield from columns([(name, *(figure[name] for figure in some)) for name in names])


def _figures(compared: Compared, speech: Speech) -> dict[str, str]:
    quote = compared.quote
    plan, estimate, price = quote.plan, quote.estimate, quote.price
    hours = estimate.hours
    return {
        "Size": str(compared.size),
        f"Made, {speech.length_unit}": " × ".join(
            speech.bare_length(side_cm) for side_cm in (plan.width_cm, plan.height_cm)
        ),
        **count_figures(quote, speech),
        "Ends": speech.number(estimate.ends),
        speech.worded("Balls"): speech.number(estimate.skeins),
        "Yarn left": speech.yarn_length(estimate.metres_left),
        "Hours": speech.number(hours.total, 2),
        "  from": speech.number(hours.low, 2),
        "  to": speech.number(hours.high, 2),
        "Cost": speech.bare_money(price.cost),
        "Price": speech.bare_money(price.price),
        "Total": speech.bare_money(price.total),
        "Profit": speech.bare_money(price.profit),
        "An hour earns": speech.bare_money(price.earned_per_hour),
        f"Price per 100 {speech.length_unit}²": speech.bare_money(
            compared.price_per_100_in2 if speech.inches else compared.price_per_100_cm2
        ),
    }


def _rules(comparison: Comparison, speech: Speech) -> Iterator[str]:
    rows = [
        (
            f"{compared.size}: {rule_words(rule.rule, speech).lower()}",
            speech.bare_money(rule.price),
            speech.bare_money(rule.earned_per_hour),
        )
        for compared in comparison.sizes
        for rule in compared.rules
    ]
    if rows:
        yield from ("", "Rules of thumb", "-" * PAGE_WIDTH)
        yield from columns([("", "price", "an hour earns"), *rows])


def _refused(comparison: Comparison, speech: Speech) -> Iterator[str]:
    if comparison.refused:
        yield from ("", "Left out", "-" * PAGE_WIDTH)
    for refusal in comparison.refused:
        yield from wrapped(f"{refusal.size}: {refusal_words(refusal, speech)}", PAGE_WIDTH)
