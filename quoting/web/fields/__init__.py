"""Form fields that own both directions: typed text to value, value to text.

`typed` is what stands in the field, whatever becomes of it; `data` its value, None where it is
blank or cannot be read; `mistake` why it cannot.
"""

from quoting.web.fields.figures import Count, Measure, Money, Number, PerCent
from quoting.web.fields.words import Choice, Day, OneOf, Text, Tick, Typed

__all__ = [
    "Choice",
    "Count",
    "Day",
    "Measure",
    "Money",
    "Number",
    "OneOf",
    "PerCent",
    "Text",
    "Tick",
    "Typed",
]
