"""Bytes of a file to a table, whatever the bytes are."""

from __future__ import annotations

import codecs
import errno
import re
import stat
import tomllib
from collections.abc import Iterator
from contextlib import contextmanager
from decimal import Decimal, InvalidOperation
from pathlib import Path

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import Refused, refuse

MOST_BYTES = 1_000_000

_OTHER_ENCODINGS = {
    codecs.BOM_UTF32_LE: "UTF-32",
    codecs.BOM_UTF32_BE: "UTF-32",
    codecs.BOM_UTF16_LE: "UTF-16",
    codecs.BOM_UTF16_BE: "UTF-16",
}
_LONG_PATH = re.compile(r"""(?<![\w-])(?:(?:[\w-]++|"[^"\n]*+"|'[^'\n]*+')[ \t]*+\.[ \t]*+){100}""")
"""A key of so many parts that reading it takes time in squares, or minutes in a long file."""

_DEEP = re.compile(r"(?:[\[{][^\[{\]}]*+){200}")
"""So many lists or tables opened, none of them closed: nobody writes that."""

_PLACE = re.compile(r"\(at (?:line (\d+), column (\d+)|end of document)\)$")


def load_file(path: Path) -> dict[str, object]:
    """Return the table in a file.

    Errors: those of `check_file` and of `load_toml`.
    """
    check_file(path)
    with _failures_told(path), path.open("rb") as file:
        data = file.read(MOST_BYTES + 1)
    return load_toml(data)


def check_file(path: Path) -> None:
    """Refuse what is no file that was saved: of a pipe or a device nobody knows where it ends.

    Errors: `file-missing`, `file-is-folder`, `file-is-no-file`, `file-name-too-long`,
    `file-unreadable`.
    """
    with _failures_told(path):
        mode = path.stat().st_mode
    if stat.S_ISDIR(mode):
        raise refuse("", MistakeCode.FILE_IS_FOLDER, file=str(path))
    if not stat.S_ISREG(mode):
        raise refuse("", MistakeCode.FILE_IS_NO_FILE, file=str(path))


@contextmanager
def _failures_told(path: Path) -> Iterator[None]:
    try:
        yield
    except (FileNotFoundError, NotADirectoryError, ValueError):
        raise refuse("", MistakeCode.FILE_MISSING, file=str(path)) from None
    except OSError as error:
        if error.errno == errno.ENAMETOOLONG:
            raise refuse("", MistakeCode.FILE_NAME_TOO_LONG, file=str(path)) from None
        raise refuse("", MistakeCode.FILE_UNREADABLE, file=str(path)) from None


def load_toml(source: bytes | str) -> dict[str, object]:
    """Return the table in a file's bytes or text; its decimals are exact.

    Errors: `file-too-large`, `wrong-encoding`, `not-toml` with line and column,
    `nested-too-deep`, `number-too-long`.
    """
    if len(source) > MOST_BYTES:
        raise refuse("", MistakeCode.FILE_TOO_LARGE, limit=MOST_BYTES)
    text = _decode(source) if isinstance(source, bytes) else source
    if _LONG_PATH.search(text) or _DEEP.search(text):
        raise refuse("", MistakeCode.NESTED_TOO_DEEP)
    try:
        return tomllib.loads(text, parse_float=_exact)
    except tomllib.TOMLDecodeError as error:
        raise _not_toml(str(error), text) from None
    except RecursionError:
        raise refuse("", MistakeCode.NESTED_TOO_DEEP) from None
    except ValueError:
        # The language converts no more than some thousands of digits to an integer.
        raise refuse("", MistakeCode.NUMBER_TOO_LONG) from None


def _exact(text: str) -> Decimal:
    try:
        return Decimal(text)
    except InvalidOperation:
        return Decimal("Infinity")


def _decode(data: bytes) -> str:
    for mark, name in _OTHER_ENCODINGS.items():
        if data.startswith(mark):
            raise refuse("", MistakeCode.WRONG_ENCODING, read=name, wanted="UTF-8")
    if b"\0" in data:
        raise refuse(
            "", MistakeCode.WRONG_ENCODING, read=None, wanted="UTF-8", line=_line(data, b"\0")
        )
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = data.count(b"\n", 0, error.start) + 1
        raise refuse("", MistakeCode.WRONG_ENCODING, read=None, wanted="UTF-8", line=line) from None


def _line(data: bytes, sought: bytes) -> int:
    return data.count(b"\n", 0, data.index(sought)) + 1


def _not_toml(said: str, text: str) -> Refused:
    place = _PLACE.search(said)
    if place and place[1]:
        line, column = int(place[1]), int(place[2])
    else:
        line, column = text.count("\n") + 1, len(text.rpartition("\n")[2]) + 1
    return refuse(
        "", MistakeCode.NOT_TOML, line=line, column=column, said=_PLACE.sub("", said).strip()
    )
