"""How many decimals each currency's minor unit has.

Source: ISO 4217, list one (active codes), by its published minor units.
"""

from __future__ import annotations

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import refuse
from quoting.core.ground.place import Place

_CODES = {
    2: """
    AED AFN ALL AMD ANG AOA ARS AUD AWG AZN BAM BBD BDT BGN BMD BND BOB BRL BSD BTN BWP BYN BZD CAD
    CDF CHF CNY COP CRC CUP CVE CZK DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP GMD GTQ GYD
    HKD HNL HTG HUF IDR ILS INR IRR JMD KES KGS KHR KPW KYD KZT LAK LBP LKR LRD LSL MAD MDL MGA MKD
    MMK MNT MOP MRU MUR MVR MWK MXN MYR MZN NAD NGN NIO NOK NPR NZD PAB PEN PGK PHP PKR PLN QAR RON
    RSD RUB SAR SBD SCR SDG SEK SGD SHP SLE SOS SRD SSP STN SVC SYP SZL THB TJS TMT TOP TRY TTD TWD
    TZS UAH USD UYU UZS VED VES WST XCD XCG YER ZAR ZMW ZWG
    """,
    0: "BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX VND VUV XAF XOF XPF",
    3: "BHD IQD JOD KWD LYD OMR TND",
}

MINOR_DIGITS = {code: digits for digits, codes in _CODES.items() for code in codes.split()}


def minor_digits(code: str, place: Place | str = "currency") -> int:
    """Return the decimals of a currency's minor unit.

    Errors: `unknown-currency` at `place` when ISO 4217 lists no such code.
    """
    if code not in MINOR_DIGITS:
        raise refuse(place, MistakeCode.UNKNOWN_CURRENCY, read=code)
    return MINOR_DIGITS[code]
