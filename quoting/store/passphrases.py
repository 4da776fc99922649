"""What serves as a passphrase, and the digest that is kept of it.

After NIST SP 800-63B-4, section 3.1.1.2: where nothing but it is asked, it has 15 characters or
more; of which kinds they are is nobody's business; what anybody would try first is refused; and
it is kept salted, by a function that takes time and memory.
"""

from __future__ import annotations

import re
import unicodedata

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import refuse
from quoting.store.order_rows import search_key

LEAST_CHARACTERS = 15
MOST_CHARACTERS = 1_000
"""No less than 64, as the guideline has it; all of them count."""

SCRYPT = "scrypt:32768:8:3"
"""As costly to guess as the N = 2^17, p = 1 that OWASP's Password Storage Cheat Sheet names (from
memory), with a quarter of its memory for each that is looked at."""

_EXPECTED = ("quoting", "passphrase", "password", "letmein", "blanket", "crochet")
_ROWS = ("1234567890", "0123456789", "qwertyuiopasdfghjklzxcvbnm", "abcdefghijklmnopqrstuvwxyz")


def check_passphrase(passphrase: str, maker: str) -> None:
    """Refuse what does not serve as a passphrase of this maker.

    Errors: `passphrase-short`, `passphrase-long`, `passphrase-expected`.
    """
    meant = _as_meant(passphrase)
    if len(meant) < LEAST_CHARACTERS:
        raise refuse("", MistakeCode.PASSPHRASE_SHORT, limit=LEAST_CHARACTERS)
    if len(meant) > MOST_CHARACTERS:
        raise refuse("", MistakeCode.PASSPHRASE_LONG, limit=MOST_CHARACTERS)
    if _is_expected(meant, maker):
        raise refuse("", MistakeCode.PASSPHRASE_EXPECTED)


def digest_of(passphrase: str) -> str:
    """Return what is kept of a passphrase: the function with its cost, the salt, the digest."""
    from werkzeug.security import generate_password_hash  # a command that asks none needs no web

    return generate_password_hash(_as_meant(passphrase), method=SCRYPT)


def is_passphrase(passphrase: str, digest: str) -> bool:
    """Return whether a digest is of this passphrase, after the same time either way."""
    from werkzeug.security import check_password_hash

    return check_password_hash(digest, _as_meant(passphrase))


def _as_meant(passphrase: str) -> str:
    """Return a passphrase however a keyboard composes its signs, without spaces around it."""
    return unicodedata.normalize("NFKC", passphrase).strip()


def _is_expected(meant: str, maker: str) -> bool:
    """Return whether the whole of it is a name, said again or counted on, or a row of keys."""
    plain = _plain(meant) or "".join(meant.split())
    names = [_plain(maker), *map(_plain, maker.split()), *_EXPECTED]
    if any(re.fullmatch(rf"(?:{re.escape(name)})+\d*", plain) for name in names if name):
        return True
    is_row = any(plain in row * (len(plain) // len(row) + 2) for row in _ROWS)
    return is_row or len(set(plain)) <= 1


def _plain(text: str) -> str:
    return "".join(char for char in search_key(text) if char.isalnum())
