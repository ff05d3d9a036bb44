"""Owns the currencies of ISO 4217 and how many decimals each is counted in.

Knows no rates of exchange. Source: ISO 4217, list one, without codes for funds, metals and tests; from
memory.
"""

from __future__ import annotations

from types import MappingProxyType

_TWO_DECIMALS = """
AED AFN ALL AMD ANG AOA ARS AUD AWG AZN BAM BBD BDT BGN BMD BND BOB BRL BSD BTN BWP BYN BZD CAD CDF CHF CNY
COP CRC CUP CVE CZK DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP GMD GTQ GYD HKD HNL HTG HUF IDR ILS
INR IRR JMD KES KGS KHR KPW KYD KZT LAK LBP LKR LRD LSL MAD MDL MGA MKD MMK MNT MOP MRU MUR MVR MWK MXN MYR
MZN NAD NGN NIO NOK NPR NZD PAB PEN PGK PHP PKR PLN QAR RON RSD RUB SAR SBD SCR SDG SEK SGD SHP SLE SOS SRD
SSP STN SVC SYP SZL THB TJS TMT TOP TRY TTD TWD TZS UAH USD UYU UZS VES WST XCD YER ZAR ZMW ZWG
"""
_NO_DECIMALS = "BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX VND VUV XAF XOF XPF"
_THREE_DECIMALS = "BHD IQD JOD KWD LYD OMR TND"

CURRENCIES = MappingProxyType(
    {
        code: decimals
        for codes, decimals in ((_TWO_DECIMALS, 2), (_NO_DECIMALS, 0), (_THREE_DECIMALS, 3))
        for code in codes.split()
    }
)
