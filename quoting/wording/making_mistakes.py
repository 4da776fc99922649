"""What is wrong with a line of an order's log, in sentences."""

from __future__ import annotations

from quoting.core.ground.codes import MistakeCode
from quoting.wording.phrases import Sentences

MAKING_MISTAKES: Sentences = {
    MistakeCode.MORE_ROWS_THAN_THERE_ARE: (
        "{read} is more rows than there are: the order has {limit} rows and rounds.",
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
    MistakeCode.ENDS_BEFORE_IT_BEGINS: (
        "This is not after the session began; look at both times.",
    ),
}
