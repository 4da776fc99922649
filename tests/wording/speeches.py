"""Makers of several places, and how each wants things said."""

from __future__ import annotations

from quoting.core.ground.measures import Units
from quoting.core.workshop.stitches import Vocabulary
from quoting.wording import Speech

LOCALES = ["en_GB", "en_US", "de_DE", "de_CH", "fr_FR", "nb_NO", "en_IN", "ja_JP", "ar_EG", "fa_IR"]
GB = Speech(locale="en_GB", currency="GBP")
DE = Speech(locale="de_DE", currency="EUR")
US = Speech(locale="en_US", units=Units.INCHES, currency="USD")
UK_NAMES = Speech(locale="en_GB", vocabulary=Vocabulary.UK, currency="GBP")
