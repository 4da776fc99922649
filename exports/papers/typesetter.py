"""The program that sets papers: typst, started once, as its fonts take longer than any paper."""

from __future__ import annotations

import json
import re
from functools import cache
from importlib import import_module
from threading import Lock
from typing import TYPE_CHECKING

from exports.papers.paper_record import Record
from quoting.places import templates_folder

if TYPE_CHECKING:
    from typst import Compiler

NOT_INSTALLED = "A PDF is made by typst, which is not installed here: pip install typst."

_turn = Lock()
_UNSET = re.compile(r'the text (?:contains the disallowed codepoint )?`"((?:[^"\\]|\\.)*)"`')
_ESCAPED = re.compile(r"\\(?:u\{([0-9a-f]+)\}|(.))")
_NAMED = {"n": "\n", "r": "\r", "t": "\t", "0": "\0"}


class NoTypesetter(Exception):  # noqa: N818 - it is the answer, not an accident
    """There is nothing on this computer to make a PDF with; its words say how to have it."""

    def __init__(self) -> None:
        super().__init__(NOT_INSTALLED)


class Unset(Exception):  # noqa: N818 - some letters have no shape in any font
    """What a paper could not be set for: letters, alone or several that are written as one."""

    def __init__(self, letters: frozenset[str]) -> None:
        super().__init__(", ".join(sorted(letters)))
        self.letters = letters


@cache
def can_set() -> bool:
    """Return whether there is a typesetter on this computer, and one that can be loaded."""
    try:
        import_module("typst")
    except ImportError:  # not there, or made for another computer
        return False
    return True


def set_paper(record: Record, *, readable: bool = True) -> bytes:
    """Return a paper, told as a record, as a PDF; the same bytes for the same paper.

    A `readable` one keeps to PDF/UA-1 (ISO 14289-1): tagged, titled, in a language that is named,
    and every letter in it has a shape.

    Errors: NoTypesetter; Unset with the letters for which there is no font here.
    """
    if not can_set():
        raise NoTypesetter
    from typst import TypstError

    try:
        with _turn:  # one compiler serves one call at a time
            return _compiled(record, readable=readable)
    except TypstError as error:
        raise Unset(_letters_in(error.diagnostic)) from error


def _compiled(record: Record, *, readable: bool) -> bytes:
    pdf = _compiler().compile(
        format="pdf",
        sys_inputs={"paper": json.dumps(record, ensure_ascii=False)},
        pdf_standards=["ua-1"] if readable else [],
    )
    assert isinstance(pdf, bytes), "one file"  # noqa: S101
    return pdf


@cache
def _compiler() -> Compiler:
    from typst import Compiler

    folder = templates_folder() / "papers"
    return Compiler(folder / "paper.typ", root=folder)


def _letters_in(diagnostic: str) -> frozenset[str]:
    """Return the letters that a refusal names, in quotes and with escapes of its own."""
    return frozenset(map(_plain, _UNSET.findall(diagnostic)))


def _plain(text: str) -> str:
    return _ESCAPED.sub(lambda sign: _sign(sign[1], sign[2]), text)


def _sign(code: str | None, letter: str) -> str:
    return chr(int(code, 16)) if code else _NAMED.get(letter, letter)
