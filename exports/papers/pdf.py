"""A paper as a PDF: tagged, and made whatever is in its names."""

from __future__ import annotations

import re
from dataclasses import replace

from exports.papers.paper_record import Record, paper_record
from exports.papers.typesetter import Unset, set_paper
from quoting.wording.catalogues import sentence, translated
from quoting.wording.paper import Paper, Words

MISSING = "\ufffd"
"""The replacement character (Unicode), which stands for a letter that no font here has."""

MOST_TRIES = 4

_LETTERS_MISSING = sentence(
    "Some letters could not be printed on the computer that made this: {sign} stands for them."
)


def paper_pdf(paper: Paper) -> bytes:
    """Return a paper as a PDF; the same paper is the same bytes.

    Where a name has letters that no font on this computer has, a sign stands for each, and a
    sentence at the end says so. Errors: NoTypesetter.
    """
    record, lacking = paper_record(paper), frozenset[str]()
    for _ in range(MOST_TRIES):
        try:
            return set_paper(record)
        except Unset as unset:
            if unset.letters <= lacking:
                break
            lacking |= unset.letters
            record = _without(lacking, paper)
    return set_paper(record, standard=None)


def _without(letters: frozenset[str], paper: Paper) -> Record:
    """Return a paper with a sign in place of each of those letters, and a word of it."""
    language = paper.language.partition("-")[0]
    told = translated(_LETTERS_MISSING, language).format(sign=MISSING)
    noted = replace(paper, blocks=(*paper.blocks, Words(texts=(told,))))
    longest_first = sorted(letters, key=len, reverse=True)
    return _exchanged_in(paper_record(noted), re.compile("|".join(map(re.escape, longest_first))))


def _exchanged_in(record: Record, letters: re.Pattern[str]) -> Record:
    """Return a record, each of these letters in its texts replaced by the sign for them."""
    return {name: _exchanged(value, letters) for name, value in record.items()}


def _exchanged(value: object, letters: re.Pattern[str]) -> object:
    match value:
        case str():
            return letters.sub(MISSING, value)
        case list() | tuple():
            return [_exchanged(each, letters) for each in value]
        case dict():
            return _exchanged_in(value, letters)
        case _:
            return value
