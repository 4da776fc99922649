"""A comparison as plain tables, lists, numbers and text: what `quoting compare --json` prints."""

from __future__ import annotations

from exports.records.construction_record import closing_record
from exports.records.plain_values import Record, money_text, plain_float, plain_words
from quoting.core.weighing.closing import closing_of
from quoting.core.weighing.comparison import Compared, Comparison, RuleOfThumb
from quoting.wording import Speech, refusal_words, verdict


def comparison_record(comparison: Comparison, speech: Speech) -> Record:
    """Return a comparison as a table that JSON can hold."""
    return {
        "sizes": [_compared(compared) for compared in comparison.sizes],
        "refused": [
            {"size": str(refusal.size), "why": plain_words(refusal_words(refusal, speech))}
            for refusal in comparison.refused
        ],
        "best": comparison.best,
        "verdict": plain_words(verdict(comparison, speech)),
    }


def _compared(compared: Compared) -> Record:
    quote = compared.quote
    plan, estimate, price = quote.plan, quote.estimate, quote.price
    amounts = {
        "cost": price.cost,
        "price": price.price,
        "total": price.total,
        "profit": price.profit,
        "earned_per_hour": price.earned_per_hour,
        "price_per_100_cm2": compared.price_per_100_cm2,
    }
    return {
        "size": str(compared.size),
        "width_cm": plain_float(plan.width_cm),
        "height_cm": plain_float(plan.height_cm),
        "stitches": plan.stitches,
        "rows": sum(plan.rows_by_colour.values()),
        "closing": closing_record(closing_of(quote)),
        "ends": estimate.ends,
        "skeins": estimate.skeins,
        "metres_left": plain_float(estimate.metres_left),
        "hours": float(estimate.hours.total),
        "low": float(estimate.hours.low),
        "high": float(estimate.hours.high),
        **{name: money_text(amount, price.currency) for name, amount in amounts.items()},
        "rules_of_thumb": [_rule(rule, price.currency) for rule in compared.rules],
    }


def _rule(rule: RuleOfThumb, currency: str) -> Record:
    return {
        "rule": rule.rule.value,
        "price": money_text(rule.price, currency),
        "earned_per_hour": money_text(rule.earned_per_hour, currency),
    }
