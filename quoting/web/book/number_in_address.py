"""The number of a quote as a part of an address: `2026-014`, and `2026-014/2`."""

from __future__ import annotations

from werkzeug.routing import BaseConverter, ValidationError

from quoting.core.quote.given_number import GivenNumber, read_number


class NumberInAddress(BaseConverter):
    """Reads and writes the number; `2026-014/1` is `2026-014`, too."""

    regex = r"\d{4}-\d{3,9}(?:/\d{1,6})?"
    part_isolating = False

    def to_python(self, value: str) -> GivenNumber:
        """Return the number. Errors: ValidationError where it is none."""
        number = read_number(value)
        if number is None:
            raise ValidationError
        return number

    def to_url(self, value: GivenNumber) -> str:
        """Return the number as an address has it."""
        return str(value)
