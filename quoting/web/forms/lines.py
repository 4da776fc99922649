"""Forms within a form, named by their places: `blanket.sections.2.stripes.1.rows`."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any, cast

from wtforms import Field, Form
from wtforms.utils import unset_value

from quoting.web.forms.fields import Typed


class Part(Field):
    """One form inside another."""

    form: Form

    def __init__(self, form_class: type[Form], **kwargs: Any) -> None:
        super().__init__("", **kwargs)
        self.form_class = form_class

    def process(self, formdata: Any, data: Any = unset_value, extra_filters: Any = None) -> None:
        """Bind the inner form to what was sent."""
        del data, extra_filters
        self.form = self.form_class(formdata, prefix=f"{self.name}.", meta=_shared(self.meta))

    @property
    def data(self) -> Mapping[str, Any]:
        """The inner form's values."""
        return self.form.data


class Lines(Field):
    """A list of like forms, numbered from 1."""

    entries: list[Form]
    says: tuple[str, ...] = ()

    def __init__(self, form_class: type[Form], label: str = "", **kwargs: Any) -> None:
        super().__init__(label, **kwargs)
        self.form_class = form_class

    def process(self, formdata: Any, data: Any = unset_value, extra_filters: Any = None) -> None:
        """Bind a form to each line sent."""
        del data, extra_filters
        meta, numbers = _shared(self.meta), self.meta.lines.get(self.name, [])
        self.entries = [
            self.form_class(formdata, prefix=f"{self.name}.{number}.", meta=meta)
            for number in numbers
        ]

    @property
    def data(self) -> list[Mapping[str, Any]]:
        """The values of every line."""
        return [entry.data for entry in self.entries]


def _shared(meta: Any) -> dict[str, Any]:
    return {"shop": meta.shop, "lines": meta.lines}


def fields_by_place(form: Form, place: str = "") -> Iterator[tuple[str, Field]]:
    """Yield every field with its place, lines counted as they stand."""
    for field in form:
        at = f"{place}{field.short_name}"
        yield at, field
        if isinstance(field, Part):
            yield from fields_by_place(field.form, f"{at}.")
        elif isinstance(field, Lines):
            for number, entry in enumerate(field.entries, 1):
                yield from fields_by_place(entry, f"{at}.{number}.")


def typed_of(form: Form, name: str) -> Typed:
    """Return a field that holds text."""
    return cast("Typed", form[name])


def entries_of(form: Form, name: str) -> list[Form]:
    """Return the forms of a list."""
    return cast("Lines", form[name]).entries


def part_of(form: Form, name: str) -> Form:
    """Return a form inside a form."""
    return cast("Part", form[name]).form
