"""Words that lines are found by, no two of them alike."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from quoting.core.workshop.yarns import PutUp, Yarn
from quoting.wording import Speech, sold_as


def told_apart(said: Iterable[str]) -> list[str]:
    """Return words in their order, numbered where they would read alike: `oat`, `oat (2)`."""
    found: dict[str, None] = {}
    for word in said:
        number, own = 1, word
        while own in found:
            number += 1
            own = f"{word} ({number})"
        found[own] = None
    return list(found)


def put_up_words(yarn: Yarn, speech: Speech) -> Mapping[PutUp, str]:
    """Return how each put-up of a yarn is sold: `100 g skeins`, `100 g skeins (2)`."""
    said = told_apart(sold_as(some.weight_g, some.pack, speech) for some in yarn.put_ups)
    return dict(zip(yarn.put_ups, said, strict=True))
