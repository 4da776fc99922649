"""What fields of the log are called for one order: by what it is made of, and what its ends become.

The shapes know no order, so that their labels are those of rows, and of ends that are woven in.
"""

from __future__ import annotations

from wtforms import Form

from quoting.core.plan.passes import Plan
from quoting.core.quote.fate_of_ends import main_fate
from quoting.core.quote.quote import Quote
from quoting.web.making.at_hand import AtHand
from quoting.wording.ends import FATES
from quoting.wording.phrases import capitalized
from quoting.wording.ticks import ticks_words


def called_for(hand: AtHand, form: Form) -> Form:
    """Return a form with its fields called as the order has them."""
    labels = _labels(hand.quote)
    for field in form:
        if field.short_name in labels and field.label.text:
            field.label.text = labels[field.short_name]
    return form


def yarn_and_ends(quote: Quote) -> str:
    """Return what heads the fields of yarn and ends: `Yarn used up, ends woven in`."""
    return f"Yarn used up, ends {FATES[main_fate(quote)].done}"


def _labels(quote: Quote) -> dict[str, str]:
    ends = f"Ends {FATES[main_fate(quote)].done}"
    return {"ends": ends} | (_of_ticks(quote.plan) if quote.plan.counted is not None else {})


def _of_ticks(plan: Plan) -> dict[str, str]:
    """Return the labels of what is ticked off, where that is not rows."""
    several = ticks_words(plan)
    return {
        "rows": f"{capitalized(several)} done" if plan.grid is None else "Done so far",
        "first_row": f"From number, of {several}",
        "last_row": f"To number, of {several}",
        "pulled_back": f"Some {several} were pulled back",
    }
