"""Passphrases against what is published of them, and their digest against published vectors."""

from __future__ import annotations

import base64
import hashlib

import pytest

from quoting.core.ground.codes import MistakeCode
from quoting.store.passphrases import check_passphrase, digest_of, is_passphrase
from tests.store.refusals import refused

MAKER = "Ottermoor Blankets"


def test_the_digest_is_scrypt_by_the_standards_own_example() -> None:
    """RFC 7914 (2016), section 12, the second vector: `password`, `NaCl`, N 1024, r 8, p 16."""
    vector = (
        "fdbabe1c9d3472007856e7190d01e9fe7c6ad7cbc8237830e77376634b373162"
        "2eaf30d92e22a3886ff109279d9830dac727afb94a83ee6d8360cbdfa2cc0640"
    )
    kept = f"scrypt:1024:8:16$NaCl${vector}"
    assert is_passphrase("password", kept)
    assert not is_passphrase("Password", kept)


def test_what_is_kept_can_be_worked_out_again_by_the_standard_library() -> None:
    """Python's own `hashlib.scrypt`, with the cost and the salt that stand in the digest."""
    passphrase = "three otters under a gate"
    method, salt, digest = digest_of(passphrase).split("$")
    n, r, p = map(int, method.removeprefix("scrypt:").split(":"))
    again = hashlib.scrypt(
        passphrase.encode(), salt=salt.encode(), n=n, r=r, p=p, maxmem=2**28, dklen=64
    )
    assert again.hex() == digest
    assert n * p >= 2**16


def test_it_has_fifteen_characters_or_more_and_each_counts() -> None:
    """NIST SP 800-63B-4 (2025), 3.1.1.2: at least 15 where it is the only factor."""
    short = "\u00e9otters by 2 g"
    assert (len(short), refused(lambda: check_passphrase(short, MAKER))) == (
        14,
        MistakeCode.PASSPHRASE_SHORT,
    )
    check_passphrase(short + "a", MAKER)
    assert refused(lambda: check_passphrase(" " * 40, MAKER)) == MistakeCode.PASSPHRASE_SHORT
    assert refused(lambda: check_passphrase("", MAKER)) == MistakeCode.PASSPHRASE_SHORT


@pytest.mark.parametrize(
    "passphrase",
    [
        "lowercaseletters alone",
        "98 41 77 20 53 16",
        "!!§§ ()()() %%&&==",
        "Ни пуха ни пера на дворе",
        "羊毛毯子在门前的树下面晒太阳吗好",
        base64.b64encode(bytes(range(7, 199, 4))).decode(),
        "the otters " * 60,
    ],
)
def test_no_kind_of_sign_is_asked_for_and_none_is_refused(passphrase: str) -> None:
    """NIST SP 800-63B-4, 3.1.1.2: no composition rules; Unicode; 64 characters and more."""
    check_passphrase(passphrase, MAKER)


def test_all_of_it_is_looked_at() -> None:
    """NIST SP 800-63B-4, 3.1.1.2: the entire password is verified, none of it cut off."""
    long = "three otters under a gate " * 30
    kept = digest_of(long + "a")
    assert is_passphrase(long + "a", kept)
    assert not is_passphrase(long + "b", kept)


@pytest.mark.parametrize(
    "passphrase",
    [
        "Ottermoor Blankets",
        "ottermoor-blankets-2026",
        "OttermoorOttermoor",
        "Öttermoor Blankets!",
        "quoting quoting quoting",
        "passphrasepassphrase",
        "aaaaaaaaaaaaaaaaaa",
        "- - - - - - - - - - -",
        "123456789012345",
        "qwertyuiopasdfghjkl",
        "abcdefghijklmnopqrstuvwxyz",
    ],
)
def test_what_anybody_would_try_first_is_refused_as_a_whole(passphrase: str) -> None:
    """NIST SP 800-63B-4, 3.1.1.2: names of the service and the user, and what derives of them."""
    code = refused(lambda: check_passphrase(passphrase, MAKER))
    assert code == MistakeCode.PASSPHRASE_EXPECTED


def test_words_in_it_are_not_held_against_it() -> None:
    """NIST SP 800-63B-4, 3.1.1.2: the whole is compared, not substrings."""
    check_passphrase("ottermoor blankets sells no kettles", MAKER)
    check_passphrase("a password about crochet hooks", "")


def test_a_passphrase_without_an_end_is_refused() -> None:
    code = refused(lambda: check_passphrase("otter gate " * 200, MAKER))
    assert code == MistakeCode.PASSPHRASE_LONG
