"""Bad inputs by the thousand, each from a seed: files, forms and requests, spoiled at random.

Nothing here is measured or looked up: what spoils them is invented, or known to be awkward to
programs that read text (huge exponents, marks that show nothing, numbers without an end).
"""

from __future__ import annotations

import re
from collections.abc import Callable
from random import Random

_VALUES = '''
1e1000000 -1e1000000 1e-1000000 1e99999999999999999999 nan -nan inf +inf 0 -0.0 -1 0.0000001
9999999999999999999999 1e15 1e308 true false {} [] [[[[[[1]]]]]] [1,2,3] 1979-05-27
9999-12-31 0001-01-01 00:32:00 1979-05-27T07:32:00Z """"""
'''
TOKENS = [
    *_VALUES.split(),
    "9" * 4300,
    "1" * 400,
    f"1.{'3' * 2000}",
    f'"{"x" * 3000}"',
    '"\\u0000"',
    '"\\u200d"',
    '"\\u202e80 cm"',
    '"1e1000000"',
    f'"{"9" * 50} cm"',
    '"1/0 cm"',
    '"-0"',
    '"−3,5"',
    '"٣ cm"',
    '" "',
    "{ a = { b = { c = 1 } } }",
    "[" + "{}, " * 300 + "]",
    "[" + '{ colour = "puce" }, ' * 300 + "]",
    "[" + "1e1000000, " * 200 + "]",
]
"""Values for a key of a TOML file."""

KEYS = ("", '""', "colour", '"a.b"', "rows", "é", '"\\u202e"', "stripes", "share", "1e9")

_TYPED = """
1e1000000 NaN inf -1 0 ½ 1/0 1//2 9e9 1,5 1.5 1,000,000 ' " < \x00 \u202e \u200d ٣ 80cm
2\'6" 1e-400 100 1000 2000 squares centre rows clusters circle hexagon whipstitch fringe enclosed
continuous 10001 9999-12-31 0001-01-01 2027-02-30 moss sc oat ¥ 100% -5% ∞ 0x10 1_000
"""
TYPED = [
    *_TYPED.split(),
    "9" * 60,
    "9" * 5000,
    "x" * 20_000,
    "\n" * 50,
    "",
    " ",
    "﷽" * 80,
    "a\tb",
    "\ud7ff",
]

HEADERS = (
    ("Host", ("evil.example", "localhost", "127.0.0.1:1", "[::1]", "", "a b", "127.0.0.1@x", "é")),
    ("Origin", ("null", "http://evil.example", "http://localhost", "", "x" * 500)),
    ("Sec-Fetch-Site", ("cross-site", "same-site", "same-origin", "none", "?")),
    ("Sec-Fetch-Mode", ("navigate", "cors", "no-cors")),
    ("Sec-Fetch-Dest", ("document", "iframe", "image")),
    ("Content-Type", ("text/plain", "application/json", "multipart/form-data; boundary=", "")),
    ("Cookie", ("quoting=x", "quoting=", "=", ";" * 500, "quoting=" + "e30." * 50)),
    ("Content-Length", ("0", "-1", "9" * 30, "x")),
    ("Transfer-Encoding", ("chunked",)),
)
METHODS = ("GET", "POST", "HEAD", "PUT", "DELETE", "OPTIONS", "TRACE", "PATCH", "BREW")

MOST_CHARACTERS = 1_000_000
"""That a line repeated comes to: what is longer is refused by its length alone."""

_VALUE = re.compile(r'(?<==)\s*("[^"\n]*"|[\d.-]+|true|false)')


def spoiled_file(text: str, random: Random) -> str | bytes:
    """Return the text of a TOML file with some of it spoiled."""
    for _ in range(random.choice((1, 1, 1, 2, 5))):
        text = random.choice(SPOILERS)(text, random)
    if random.random() < 0.1:
        return _broken_bytes(text, random)
    return text


def _value_replaced(text: str, random: Random) -> str:
    found = list(_VALUE.finditer(text))
    if not found:
        return text
    at = random.choice(found)
    return text[: at.start(1)] + random.choice(TOKENS) + text[at.end(1) :]


def _line_left_out(text: str, random: Random) -> str:
    lines = text.splitlines(keepends=True)
    del lines[random.randrange(len(lines) or 1) : random.randrange(len(lines) or 1) + 1]
    return "".join(lines)


def _line_repeated(text: str, random: Random) -> str:
    lines = text.splitlines(keepends=True) or [""]
    at = random.randrange(len(lines))
    more = random.choice((1, 1, 3, 500))
    lines[at:at] = [lines[at]] * min(more, MOST_CHARACTERS // (len(lines[at]) + 1))
    return "".join(lines)


def _key_put_in(text: str, random: Random) -> str:
    lines = text.splitlines(keepends=True)
    at = random.randrange(len(lines) + 1)
    lines.insert(at, f"{random.choice(KEYS)} = {random.choice(TOKENS)}\n")
    return "".join(lines)


def _key_renamed(text: str, random: Random) -> str:
    found = list(re.finditer(r"\b[a-z_]+(?= =)", text))
    if not found:
        return text
    at = random.choice(found)
    return text[: at.start()] + random.choice(KEYS) + text[at.end() :]


def _characters_put_in(text: str, random: Random) -> str:
    at = random.randrange(len(text) + 1)
    return (
        text[:at]
        + random.choice("[]{}\"'=.,#\n\\\x00\u202e") * random.choice((1, 3, 900))
        + text[at:]
    )


SPOILERS: tuple[Callable[[str, Random], str], ...] = (
    _value_replaced,
    _value_replaced,
    _value_replaced,
    _line_left_out,
    _line_repeated,
    _key_put_in,
    _key_renamed,
    _characters_put_in,
)


def _broken_bytes(text: str, random: Random) -> bytes:
    data = bytearray(text.encode("utf-8", "surrogatepass"))
    for _ in range(random.choice((1, 4, 50))):
        if data:
            data[random.randrange(len(data))] = random.randrange(256)
    return bytes(data)


def spoiled_form(fields: dict[str, str], random: Random) -> dict[str, str]:
    """Return the fields of a form with some of them typed over, left out or put in."""
    spoiled = dict(fields)
    for _ in range(random.choice((1, 1, 2, 6))):
        name = random.choice(sorted(spoiled) or ["x"])
        match random.randrange(8):
            case 0:
                spoiled.pop(name, None)
            case 1:
                spoiled[re.sub(r"\d+", str(random.choice((0, 2, 7, 999_999, 10**9))), name)] = "1"
            case 2:
                spoiled["do"] = f"{random.choice(('add', 'up', 'copy', 'remove'))} {name}"
            case _:
                spoiled[name] = random.choice(TYPED)
    return spoiled


def odd_headers(random: Random) -> list[tuple[str, str]]:
    """Return some headers of a request that nobody's browser sends so."""
    some = random.sample(HEADERS, random.randrange(4))
    return [(name, random.choice(values)) for name, values in some]
