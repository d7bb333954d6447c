package eaveside.ledger;

import eaveside.kernel.Texts;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Locale;
import org.joda.money.CurrencyUnit;
import org.joda.money.IllegalCurrencyException;

/**
 * The company whose books these are.
 *
 * @param  country   ISO 3166-1 alpha-2
 * @param  currency  ISO 4217; never changes once founded
 * @param  zone      an IANA zone; the dates of business are dates there
 * @param  booksFrom first day of the first month of the books
 */
public record Company(
        String name,
        Address address,
        String email,
        String phone,
        String taxNumber,
        String currency,
        String zone,
        Measures measures,
        LocalDate booksFrom) {
    /** Which system quantities are shown in. */
    public enum Measures {
        US,
        METRIC
    }

    /** Where it can be written to. */
    public record Address(String street, String city, String region, String zipCode, String country) {
        public Address {
            street = Texts.optional("street", street, 200);
            city = Texts.optional("city", city, 100);
            region = Texts.optional("region", region, 100);
            zipCode = Texts.optional("zipCode", zipCode, 20);
            if (!Locale.getISOCountries(Locale.IsoCountryCode.PART1_ALPHA2).contains(country)) {
                throw new LedgerRefusal.BadSetting("country", country + " is not a country code of ISO 3166-1");
            }
        }
    }

    public Company {
        name = Texts.required("name", name, 200);
        email = Texts.optional("email", email, 200);
        phone = Texts.optional("phone", phone, 50);
        taxNumber = Texts.optional("taxNumber", taxNumber, 50);
        try {
            CurrencyUnit.of(currency);
        } catch (IllegalCurrencyException e) {
            throw new LedgerRefusal.BadSetting("currency", currency + " is not a currency code of ISO 4217");
        }
        try {
            ZoneId.of(zone);
        } catch (DateTimeException e) {
            throw new LedgerRefusal.BadSetting("zone", zone + " is not a time zone known here");
        }
        if (booksFrom.getDayOfMonth() != 1) {
            throw new LedgerRefusal.BadSetting("booksFrom", "The books begin on the first day of a month");
        }
    }
}
