"""What is wrong with a line of an order's log, in sentences."""

from __future__ import annotations

from quoting.core.ground.codes import MistakeCode
from quoting.wording.phrases import Sentences

MAKING_MISTAKES: Sentences = {
    MistakeCode.MORE_ROWS_THAN_THERE_ARE: (
        "{read} is more than there is to make: the order has {limit} in all.",
    ),
    MistakeCode.MORE_YARN_THAN_THERE_IS: (
        "{read} g of {colour} is more than there is: {limit} g are left. If more was bought or "
        "taken from the shelf, write that down first.",
    ),
    MistakeCode.MORE_ENDS_THAN_THERE_ARE: (
        "{read} is more ends than there can be; {limit} at most are left.",
    ),
    MistakeCode.COLOUR_NOT_IN_ORDER: ("There is no {read} in this order; there are {known}.",),
    MistakeCode.CURRENCY_NOT_OFFERED: (
        "Nothing was offered in {read}; what comes for this order is in {known}.",
    ),
    MistakeCode.PAID_BACK_TOO_MUCH: (
        "{read} is more than came; at most {limit} can be paid back.",
    ),
    MistakeCode.DAY_TO_COME: ("{read} is still to come; write down what happened by {limit}.",),
    MistakeCode.DAY_PAST: ("{read} is past; take {limit} or a day after it.",),
    MistakeCode.NOTHING_DUE: ("Nothing is due, so that there is nothing to bill.",),
    MistakeCode.PAPER_HOLDS: (
        "Batch record {number} says otherwise and holds: cancel it first, then write another.",
    ),
    MistakeCode.PAPER_CANCELS: (
        "This paper cancels {number}, and is not cancelled itself: write a new one instead.",
    ),
    MistakeCode.ENDS_BEFORE_IT_BEGINS: (
        "This is not after it began; what went on past midnight is told by its minutes.",
    ),
}
