"""How a command fails: by what it was given, or by what it could not do."""

from __future__ import annotations

import errno
import unicodedata
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

from quoting.core.ground.errors import JOINERS, Mistake, Refused
from quoting.wording import Speech, mistake_sentence

MOST_SHOWN = 300
"""Characters of a file's name."""


class BadInput(Exception):  # noqa: N818 - it is the answer, not an accident
    """What was given cannot be taken; one line for each mistake."""

    def __init__(self, *lines: str) -> None:
        super().__init__("\n".join(lines))
        self.lines = lines


class NotDone(Exception):  # noqa: N818 - it is the answer, not an accident
    """What was asked could not be done, and why, in a sentence."""


@contextmanager
def mistakes_told(file_of: Callable[[Mistake], Path], speech: Speech) -> Iterator[None]:
    """Turn a refusal into bad input: each mistake with its file and its place."""
    try:
        yield
    except Refused as refused:
        raise BadInput(*(_line(m, file_of(m), speech) for m in refused.mistakes)) from refused


def _line(mistake: Mistake, file: Path, speech: Speech) -> str:
    said = mistake_sentence(mistake, speech)
    return ": ".join(part for part in (shown_path(file), mistake.path, said) if part)


def shown_path(path: Path) -> str:
    """Return a file's name as it is told: of a very long one the beginning."""
    name = str(path)
    return name if len(name) <= MOST_SHOWN else f"{name[:MOST_SHOWN]}…"


def why_not_written(path: Path, error: OSError) -> NotDone | BadInput:
    """Return the failure to write a file, with the reason; a name too long is bad input."""
    if error.errno == errno.ENAMETOOLONG:
        return BadInput(f"{shown_path(path)}: No file has a name as long as this.")
    reasons = {
        errno.ENOENT: "its folder is not there",
        errno.ENOTDIR: "its folder is not a folder",
        errno.EISDIR: "it is a folder",
        errno.ELOOP: "its links lead round in a circle",
        errno.EACCES: "you may not write there",
        errno.EPERM: "you may not write there",
        errno.EROFS: "that disk can only be read",
        errno.ENOSPC: "the disk is full",
    }
    reason = reasons.get(error.errno or 0) or error.strerror or str(error)
    return NotDone(f"{shown_path(path)} could not be written: {reason}.")


def steers_nothing(line: str) -> str:
    """Return a line whose every sign shows, or joins what does: others become a mark."""
    return "".join("\ufffd" if _steers(char) else char for char in line)


def _steers(char: str) -> bool:
    """Return whether a sign moves or colours what a terminal shows; spaces of any kind do not."""
    is_space = unicodedata.category(char) == "Zs"
    return not (char.isprintable() or is_space or char in JOINERS)
