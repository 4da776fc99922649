"""Beside which part of an answer each of the maker's cautions is said."""

from __future__ import annotations

from enum import StrEnum


class CautionPlace(StrEnum):
    """A part of the answer; what is said in `general` belongs to none of them."""

    PRICE = "price"
    DATES = "dates"
    SIZE = "size"
    YARN = "yarn"
    HOURS = "hours"
    ENDS = "ends"
    BABY = "baby"
    GENERAL = "general"


_CODES = {
    CautionPlace.PRICE: (
        "pays-under-wage",
        "under-minimum",
        "no-delivery-band",
        "too-heavy-for-bands",
        "no-profit",
        "old-rate",
        "rate-to-come",
    ),
    CautionPlace.DATES: ("late",),
    CautionPlace.SIZE: (
        "count-breaks-repeat",
        "row-ends-off",
        "repeats-miss-height",
        "rows-break-repeat",
        "gauges-apart",
        "corners-cup",
        "corners-ruffle",
        "rounds-cup",
        "rounds-ruffle",
        "one-size-across",
        "layout-left-out",
    ),
    CautionPlace.YARN: (
        "labels-apart",
        "rough-yarn",
        "estimated-yarn",
        "runs-out-late",
        "rough-pattern",
        "no-category",
        "clusters-by-swatch",
        "few-motifs-weighed",
    ),
    CautionPlace.HOURS: (
        "minutes-not-given",
        "usual-minutes",
        "one-timing",
        "estimated-pace",
        "pattern-pace",
        "other-yarn-pace",
        "other-thickness-pace",
        "odd-pace",
        "few-timings",
        "more-timings",
    ),
    CautionPlace.ENDS: (
        "many-ends",
        "wrong-edge",
        "yarns-tangle",
        "long-pass",
        "ends-lie-within",
    ),
    CautionPlace.BABY: (
        "baby-small-parts",
        "baby-ends",
        "fringe-for-a-baby",
    ),
    CautionPlace.GENERAL: (
        "selling-rules",
        "hands",
    ),
}

SAID_AT = {code: place for place, codes in _CODES.items() for code in codes}
"""The place of each code."""
