"""A field of typed text, and the fields that are words: names, dates, choices, ticks."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date
from enum import StrEnum
from typing import Any

from wtforms import Field

from quoting.core.errors import Mistake, Refused, refuse
from quoting.notation import Marks
from quoting.notation.marks import shown


class Typed(Field):
    """A line of text, kept as it was typed."""

    typed: str = ""
    mistake: Mistake | None = None
    says: tuple[str, ...] = ()
    mode = "text"

    @property
    def marks(self) -> Marks:
        """The decimal and grouping marks of the workshop's locale."""
        return self.meta.shop.marks  # type: ignore[no-any-return]

    def read(self, text: str) -> Any:
        """Return the value of a text that is not blank. Errors: one refusal, without a place."""
        return text

    def write(self, value: Any) -> str:
        """Return the text that is read as `value`."""
        return str(value)

    def process_data(self, value: Any) -> None:
        """Take a value, and write it."""
        self.data = value
        self.typed = "" if value is None else self.write(value)

    def process_formdata(self, valuelist: Sequence[str]) -> None:
        """Take what was typed, and read it."""
        self.typed = valuelist[0] if valuelist else ""
        self.data = None
        if not self.typed.strip():
            return
        try:
            self.data = self.read(self.typed)
        except Refused as refused:
            mistake = refused.mistakes[0]
            self.mistake = Mistake(self.name, mistake.code, mistake.facts)

    @property
    def understood(self) -> str | None:
        """How the text was read, where that is not plain from the text itself."""
        return None


class Text(Typed):
    """A line of text without the spaces around it."""

    def read(self, text: str) -> str:
        """Return the text, its line ends as one character each."""
        return text.replace("\r\n", "\n").strip()


class Day(Typed):
    """A date, as browsers send it: year, month, day (ISO 8601)."""

    mode = "date"

    def read(self, text: str) -> date:
        """Return the date. Errors: `wrong-type`."""
        try:
            return date.fromisoformat(text.strip())
        except ValueError:
            raise refuse("", "wrong-type", read=shown(text), wanted="date") from None

    def write(self, value: Any) -> str:
        """Return the date in ISO form."""
        return str(value.isoformat())


class Choice(Typed):
    """One of several names. Whether there is such a name is the core's to say."""


class OneOf(Typed):
    """One of a closed set of words."""

    def __init__(self, label: str, kind: type[StrEnum], **kwargs: Any) -> None:
        super().__init__(label, **kwargs)
        self.kind = kind

    def read(self, text: str) -> StrEnum:
        """Return the word. Errors: `not-one-of` with the words there are."""
        known = tuple(item.value for item in self.kind)
        if text not in known:
            raise refuse("", "not-one-of", read=shown(text), known=known, nearest=None)
        return self.kind(text)


class Tick(Typed):
    """A yes or no. A browser sends nothing for no, so its `data` is never None."""

    def process_data(self, value: Any) -> None:
        """Take a value."""
        self.data = bool(value)

    def process_formdata(self, valuelist: Sequence[str]) -> None:
        """Take what was sent: anything is yes."""
        self.data = bool(valuelist)
