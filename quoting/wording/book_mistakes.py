"""What is wrong with the book, or with what is asked of it, in sentences."""

from __future__ import annotations

from quoting.core.ground.codes import MistakeCode
from quoting.wording.phrases import Sentences

BOOK_MISTAKES: Sentences = {
    MistakeCode.NOT_A_BOOK: (
        "This is no book of this program, and was left as it is: it is another program's, or its "
        "beginning is damaged.",
    ),
    MistakeCode.NOT_A_BOOK_ADDRESS: (
        "This is no address of a book; write the path of a file, or one that begins with {wanted} "
        "where a server keeps it.",
    ),
    MistakeCode.NO_DATABASE_DRIVER: (
        "A book on a server takes a part that is not installed: install `quoting[postgres]`.",
    ),
    MistakeCode.BOOK_NOT_MADE: ("No book can be made or opened there: {said}.",),
    MistakeCode.BOOK_DAMAGED: (
        "This file is damaged: a part of it is missing or written over. Put one of the copies "
        "beside the book, or a backup, in its place.",
    ),
    MistakeCode.BOOK_NEWER: (
        "This book was written by a newer version of the program ({read}, where this one knows "
        "{wanted}), and was left as it is: bring the program up to date.",
    ),
    MistakeCode.BOOK_READ_ONLY: (
        "The book may only be read, so that nothing could be saved; look at its permissions.",
    ),
    MistakeCode.BOOK_LOCKED: (
        "Another program has the book to itself just now. Nothing was saved; try again.",
    ),
    MistakeCode.BOOK_IN_USE: (
        "The book is open in another program, perhaps in these pages: close it there first.",
    ),
    MistakeCode.BOOK_UNREACHABLE: (
        "The server that keeps the book does not let the program in, or does not answer; look at "
        "its address, its name and its password.",
    ),
    MistakeCode.BOOK_ON_SERVER: (
        "This book is on a server, whose own tools make copies of it and put them back.",
    ),
    MistakeCode.BACKUP_IS_BOOK: ("This is the book itself; name another file for its copy.",),
    MistakeCode.DISK_FULL: (
        "The disk is full: nothing was saved. What was saved before is there; make room and try "
        "again.",
    ),
    MistakeCode.DISK_FAILS: (
        "The disk could not be written to or read. What was saved before is there, if the disk "
        "is sound.",
    ),
    MistakeCode.LOG_LINE_MISSING: (
        "There is no such line in the order's log, or it was corrected before.",
    ),
    MistakeCode.LOG_OVERTAKEN: (
        "Something was written down for this order since the page was opened. Look at what is "
        "there now, and press again if this is to come on top.",
    ),
    MistakeCode.ROWS_GO_BACK: (
        "{limit} are written down as done already, and {read} is fewer: say so if some were "
        "pulled back, or correct the line of the log that was wrong.",
    ),
    MistakeCode.NOTHING_WRITTEN: (
        "There is nothing to write down yet: work done, time, yarn or ends.",
    ),
    MistakeCode.ORDER_MISSING: ("There is no such order in the book.",),
    MistakeCode.ORDER_OVERTAKEN: (
        "The order was changed on another page meanwhile. Look at it again, then go on.",
    ),
    MistakeCode.QUOTE_MISSING: ("There is no quote of that number in the book.",),
    MistakeCode.PAPER_MISSING: ("There is no paper of that kind and number in the book.",),
    MistakeCode.QUOTE_AGREED: (
        "The order was agreed already, and its quote is declined no more: call the order off.",
    ),
    MistakeCode.QUOTE_ENDED: (
        "The quote ended on {ended}. Say that you accept it all the same, or give a new version.",
    ),
    MistakeCode.STAGE_CLOSED: (
        "Quotes are given and accepted while there is work to do: this order is called off, "
        "finished or handed over. Bring it back first.",
    ),
    MistakeCode.STAGE_SKIPPED: ("An order goes on by one stage at a time, or back by one.",),
    MistakeCode.STAGE_TAKES_ACCEPTING: (
        "An order is agreed by accepting a quote that was given: do so on the quote’s page.",
    ),
    MistakeCode.STAGE_TAKES_QUOTE: (
        "An order is quoted by giving a quote: give one beside its figures first.",
    ),
    MistakeCode.PASSPHRASE_SHORT: (
        "A passphrase has {limit} characters or more, spaces among them: four or five words that "
        "nobody connects with you. Capitals, digits and signs are not asked for.",
    ),
    MistakeCode.PASSPHRASE_LONG: ("A passphrase has at most {limit} characters.",),
    MistakeCode.PASSPHRASE_EXPECTED: (
        "That is what anybody would try first: a name, a row of keys or one sign over and over. "
        "Take four or five words that nobody connects with you.",
    ),
    MistakeCode.NO_PASSPHRASE: ("No passphrase is asked here.",),
    MistakeCode.NO_BUYER: ("This order has no buyer’s name that could be forgotten.",),
    MistakeCode.LOT_MISSING: ("There is no such lot on the shelf any more.",),
    MistakeCode.LOT_TOO_SMALL: ("The shelf has {limit} g of this lot, and {read} g are more.",),
    MistakeCode.VERSION_MISSING: ("There is no such version of the workshop in the book.",),
    MistakeCode.WORKSHOP_OVERTAKEN: (
        "The workshop was changed elsewhere meanwhile, and is at version {read} now. Nothing was "
        "overwritten: look at it, and save again.",
    ),
}

BOOK_FAILURES = frozenset(
    {
        MistakeCode.BOOK_NOT_MADE,
        MistakeCode.BOOK_DAMAGED,
        MistakeCode.BOOK_READ_ONLY,
        MistakeCode.BOOK_LOCKED,
        MistakeCode.BOOK_IN_USE,
        MistakeCode.BOOK_UNREACHABLE,
        MistakeCode.NO_DATABASE_DRIVER,
        MistakeCode.DISK_FULL,
        MistakeCode.DISK_FAILS,
    }
)
"""What the book or its disk fails by, whatever is asked of it."""
