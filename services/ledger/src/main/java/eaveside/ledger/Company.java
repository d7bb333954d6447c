package eaveside.ledger;

import eaveside.kernel.Check;
import eaveside.kernel.Default;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Versioned;
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
 * @param  booksFrom first day of the first month of the books; never changes
 */
public record Company(
        String name,
        Address address,
        @Default String email,
        @Default String phone,
        @Default String taxNumber,
        String currency,
        String zone,
        Measures measures,
        LocalDate booksFrom,
        @Default("0") int version)
        implements Versioned {
    /** Which system quantities are shown in. */
    public enum Measures {
        US,
        METRIC
    }

    /** Where it can be written to. */
    public record Address(
            @Default String street,
            @Default String city,
            @Default String region,
            @Default String zipCode,
            String country) {
        public Address {
            Check check = new Check();
            street = check.optional("street", street, 200);
            city = check.optional("city", city, 100);
            region = check.optional("region", region, 100);
            zipCode = check.optional("zipCode", zipCode, 20);
            check.that(
                    Locale.getISOCountries(Locale.IsoCountryCode.PART1_ALPHA2).contains(country),
                    () -> new KernelRefusal.Unfit(
                            "country", "{field} must be a country code of ISO 3166-1, such as US"));
            check.done();
        }
    }

    public Company {
        Check check = new Check();
        name = check.required("name", name, 200);
        email = check.optional("email", email, 200);
        phone = check.optional("phone", phone, 50);
        taxNumber = check.optional("taxNumber", taxNumber, 50);
        check.that(
                isCurrency(currency),
                () -> new KernelRefusal.Unfit("currency", "{field} must be a currency code of ISO 4217, such as USD"));
        check.that(
                isZone(zone),
                () -> new KernelRefusal.Unfit("zone", "{field} must be a time zone, such as America/Chicago"));
        check.that(
                booksFrom.getDayOfMonth() == 1,
                () -> new KernelRefusal.Unfit("booksFrom", "{field} must be the first day of a month"));
        check.done();
    }

    /** A company that is not founded yet. */
    public Company(
            String name,
            Address address,
            String email,
            String phone,
            String taxNumber,
            String currency,
            String zone,
            Measures measures,
            LocalDate booksFrom) {
        this(name, address, email, phone, taxNumber, currency, zone, measures, booksFrom, 0);
    }

    private static boolean isCurrency(String code) {
        try {
            CurrencyUnit.of(code);
            return true;
        } catch (IllegalCurrencyException e) {
            return false;
        }
    }

    private static boolean isZone(String id) {
        try {
            ZoneId.of(id);
            return true;
        } catch (DateTimeException e) {
            return false;
        }
    }
}
