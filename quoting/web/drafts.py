"""Reading a small form field by field, so that every mistake is found at once."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from wtforms import Form

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.place import NOWHERE, Place
from quoting.schema.notes import Notes
from quoting.web.forms.lines import entries_of, part_of, typed_of


class Sheet:
    """One form, with its place in the page's form."""

    def __init__(self, form: Form, notes: Notes, place: Place = NOWHERE) -> None:
        self.form = form
        self.notes = notes
        self.place = place

    def part(self, name: str) -> Sheet:
        """Return a form inside this one."""
        return Sheet(part_of(self.form, name), self.notes, self.place / name)

    def lines(self, name: str) -> Iterator[Sheet]:
        """Yield the forms of a list, their places counted from 1."""
        for number, entry in enumerate(entries_of(self.form, name), 1):
            yield Sheet(entry, self.notes, self.place / name / number)

    def may(self, name: str, stand_in: Any = None) -> Any:
        """Return a field's value; the stand-in where it is blank or cannot be read."""
        field = typed_of(self.form, name)
        self.notes.keep(field.mistakes, self.place / name)
        return stand_in if field.data is None else field.data

    def wrong(self, name: str, code: MistakeCode, **facts: Any) -> None:
        """Note a mistake of one field."""
        self.notes.close(self.place / name, code, **facts)
