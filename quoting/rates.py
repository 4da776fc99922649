"""Euro reference rates over HTTP: fetched only when asked, kept for use without a network.

The European Central Bank's document has a root `gesmes:Envelope` with nested `Cube` elements; the
inner ones carry `currency` and `rate`, the one around them the day as `time`.
"""

from __future__ import annotations

import json
import time
from datetime import date
from decimal import Decimal, InvalidOperation
from pathlib import Path
from queue import Empty, SimpleQueue
from threading import Thread
from typing import TYPE_CHECKING

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.currencies import MINOR_DIGITS
from quoting.core.ground.errors import Refused, refuse
from quoting.core.workshop.euro_rates import EuroRates
from quoting.files.whole_file import write_whole

if TYPE_CHECKING:
    from requests import Response

ADDRESS = "https://www.ecb.europa.eu/stats/eurofxref/eurofxref-daily.xml"
MOST_BYTES = 100_000
SECONDS = 10.0
"""The whole answer must be here by then; a timeout of `requests` is for one read only."""

PLACE = "rates"
_CUBE = "{http://www.ecb.int/vocabulary/2002-08-01/eurofxref}Cube"


def fetch_rates(address: str = ADDRESS, *, seconds: float = SECONDS) -> EuroRates:
    """Return today's reference rates.

    Errors, all at `rates`: `no-connection`, also where this computer is not set up for one;
    `bad-status`, also for a redirection, which nobody follows; `too-slow`, `too-much`; as
    `read_rates`.
    """
    answers: SimpleQueue[bytes | Exception] = SimpleQueue()
    Thread(target=_ask, args=(address, seconds, answers), daemon=True).start()
    try:
        answer = answers.get(timeout=seconds)
    except Empty as error:
        raise refuse(PLACE, MistakeCode.TOO_SLOW, limit=seconds) from error
    if isinstance(answer, Exception):
        raise answer
    return read_rates(answer)


def _ask(address: str, seconds: float, answers: SimpleQueue[bytes | Exception]) -> None:
    """Put the document into `answers`, or what went wrong.

    It is run beside the caller, who waits so long and no longer: a server can also dribble what
    comes before the document, where no clock is read.
    """
    try:
        answers.put(_document(address, seconds))
    except Exception as error:
        answers.put(error)


def _document(address: str, seconds: float) -> bytes:
    import requests
    from urllib3.exceptions import HTTPError

    deadline = time.monotonic() + seconds
    try:
        with requests.get(
            address,
            stream=True,
            timeout=seconds,
            allow_redirects=False,
            headers={"Accept-Encoding": "identity"},  # what is bounded is what comes
        ) as response:
            if response.status_code != requests.codes.ok:
                raise refuse(PLACE, MistakeCode.BAD_STATUS, read=response.status_code)
            return _body(response, deadline, seconds)
    except requests.Timeout as error:
        raise refuse(PLACE, MistakeCode.TOO_SLOW, limit=seconds) from error
    except (requests.RequestException, HTTPError, OSError, ValueError) as error:
        # Certificates that are not there and addresses that are none come as these, bare.
        raise refuse(PLACE, MistakeCode.NO_CONNECTION) from error


def _body(response: Response, deadline: float, seconds: float) -> bytes:
    body = bytearray()
    for byte in response.iter_content(1):  # so that the clock is read while bytes dribble in
        body += byte
        if len(body) > MOST_BYTES:
            raise refuse(PLACE, MistakeCode.TOO_MUCH, limit=MOST_BYTES)
        if time.monotonic() > deadline:
            raise refuse(PLACE, MistakeCode.TOO_SLOW, limit=seconds)
    return bytes(body)


def read_rates(document: bytes) -> EuroRates:
    """Return the rates of a document.

    Errors, at `rates`: `not-rates` for anything that is not the document described above, a
    document type definition and entities included.
    """
    from defusedxml import DefusedXmlException
    from defusedxml.ElementTree import ParseError, fromstring

    try:
        root = fromstring(document, forbid_dtd=True)
    except (ParseError, DefusedXmlException, ValueError, LookupError) as error:
        raise refuse(PLACE, MistakeCode.NOT_RATES) from error
    days = [cube for cube in root.iter(_CUBE) if "time" in cube.attrib]
    if len(days) != 1:
        raise refuse(PLACE, MistakeCode.NOT_RATES)
    rates = {cube.get("currency", ""): cube.get("rate", "") for cube in days[0].iter(_CUBE)}
    rates.pop("", None)
    return _checked(days[0].get("time", ""), rates)


def _checked(day: str, rates: dict[str, str]) -> EuroRates:
    """Return the rates as numbers; a currency that ISO 4217 no longer lists is left out."""
    try:
        read = {code: Decimal(rate) for code, rate in rates.items() if code in MINOR_DIGITS}
        return EuroRates(day=date.fromisoformat(day), rates=read)
    except (InvalidOperation, ValueError, Refused) as error:
        raise refuse(PLACE, MistakeCode.NOT_RATES) from error


def kept_rates_path() -> Path:
    """Return where the last fetched rates are kept for this user."""
    import platformdirs

    return platformdirs.user_cache_path("quoting") / "euro-rates.json"


def keep_rates(rates: EuroRates, path: Path) -> None:
    """Write the rates, whole or not at all. Errors: as `write_whole`."""
    path.parent.mkdir(parents=True, exist_ok=True)
    record = {"day": rates.day.isoformat(), "rates": {c: str(r) for c, r in rates.rates.items()}}
    write_whole(path, json.dumps(record).encode())


def _kept_text(path: Path) -> str:
    """Return what a file has, as far as rates may take. Errors: OSError, ValueError."""
    if not path.is_file():
        raise FileNotFoundError(path)
    with path.open("rb") as file:
        content = file.read(MOST_BYTES + 1)
    if len(content) > MOST_BYTES:
        raise ValueError(len(content))
    return content.decode("utf-8")


def kept_rates(path: Path) -> EuroRates | None:
    """Return the rates kept there; None where there are none that can be read."""
    try:
        record = json.loads(_kept_text(path))
        return _checked(str(record["day"]), {str(c): str(r) for c, r in record["rates"].items()})
    except (OSError, ValueError, KeyError, TypeError, AttributeError, RecursionError, Refused):
        return None
