"""What the European Central Bank answers, and what an answer is refused for."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date
from decimal import Decimal

import pytest

from quoting.core.ground.errors import Mistake, Refused

DAY = date(2017, 3, 8)
RATES = {"USD": Decimal("1.0556"), "JPY": Decimal("120.65"), "GBP": Decimal("0.86753")}
NAMESPACES = (
    'xmlns:gesmes="http://www.gesmes.org/xml/2002-08-01" '
    'xmlns="http://www.ecb.int/vocabulary/2002-08-01/eurofxref"'
)


def document(
    rates: dict[str, str] | None = None,
    *,
    day: str = "2017-03-08",
    before: str = "",
    more: str = "",
) -> bytes:
    """Return a document of the European Central Bank's form."""
    listed = rates if rates is not None else {code: str(rate) for code, rate in RATES.items()}
    cubes = "".join(f'<Cube currency="{code}" rate="{rate}"/>' for code, rate in listed.items())
    return (
        f'<?xml version="1.0" encoding="UTF-8"?>{before}<gesmes:Envelope {NAMESPACES}>'
        "<gesmes:subject>Reference rates</gesmes:subject>"
        f'<Cube><Cube time="{day}">{cubes}</Cube>{more}</Cube></gesmes:Envelope>'
    ).encode()


def why(call: Callable[[], object]) -> Mistake:
    """Return the one mistake that a call is refused for."""
    with pytest.raises(Refused) as caught:
        call()
    (mistake,) = caught.value.mistakes
    return mistake
