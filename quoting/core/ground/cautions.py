"""A caution: something the maker or the buyer should hear, as a code and its facts."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum
from types import MappingProxyType

from quoting.core.ground.codes import CautionCode
from quoting.core.ground.errors import Fact


class Reader(StrEnum):
    """Who should read a caution."""

    MAKER = "maker"
    BUYER = "buyer"


@dataclass(frozen=True, slots=True)
class Caution:
    """A code, the facts a sentence needs, and who should read it."""

    code: CautionCode
    reader: Reader = Reader.MAKER
    facts: Mapping[str, Fact] = field(default_factory=lambda: MappingProxyType({}))


def for_maker(code: CautionCode, **facts: Fact) -> Caution:
    """Return a caution for the maker."""
    return Caution(code, Reader.MAKER, facts)


def for_buyer(code: CautionCode, **facts: Fact) -> Caution:
    """Return a caution for the buyer."""
    return Caution(code, Reader.BUYER, facts)
