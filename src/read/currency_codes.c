/* The three-letter codes of currencies, and into how many decimals their smallest coins divide them.
 *
 * Source: ISO 4217, as listed by Debian's package iso-codes 4.15.0, without the codes of metals, of units that only
 *         banks and funds count in, and of none.
 * Trust:  seen; every currency in force that the GNU C library's locales name is in it (tests).
 *         The decimals: the minor units of ISO 4217 as OpenJDK 17.0.15 holds them (java.util.Currency); seen there.
 * Rows:   a code is in the list or it is not. Two decimals, but for those listed with none or three.
 */
#include "order_fields_private.h"

const struct CodeList *currency_codes(void)
{
    /* clang-format off */
    static const struct CodeList list = {
        "AED AFN ALL AMD ANG AOA ARS AUD AWG AZN BAM BBD BDT BGN BHD BIF BMD BND BOB BRL BSD BTN BWP BYN BZD CAD "
        "CDF CHF CLP CNY COP CRC CUC CUP CVE CZK DJF DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP GMD GNF "
        "GTQ GYD HKD HNL HRK HTG HUF IDR ILS INR IQD IRR ISK JMD JOD JPY KES KGS KHR KMF KPW KRW KWD KYD KZT LAK "
        "LBP LKR LRD LSL LYD MAD MDL MGA MKD MMK MNT MOP MRU MUR MVR MWK MXN MYR MZN NAD NGN NIO NOK NPR NZD OMR "
        "PAB PEN PGK PHP PKR PLN PYG QAR RON RSD RUB RWF SAR SBD SCR SDG SEK SGD SHP SLE SLL SOS SRD SSP STN SVC "
        "SYP SZL THB TJS TMT TND TOP TRY TTD TWD TZS UAH UGX USD UYU UZS VED VES VND VUV WST XAF XCD XOF XPF YER "
        "ZAR ZMW ZWL",
        3};
    /* clang-format on */
    return &list;
}

int currency_coin_decimals(const char *code)
{
    /* clang-format off */
    static const struct CodeList none = {
        "BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX VND VUV XAF XOF XPF", 3};
    static const struct CodeList three = {"BHD IQD JOD KWD LYD OMR TND", 3};
    /* clang-format on */
    return code_listed(&none, code) ? 0 : code_listed(&three, code) ? 3 : 2;
}
