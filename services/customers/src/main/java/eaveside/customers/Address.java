package eaveside.customers;

import eaveside.kernel.Default;
import eaveside.kernel.Texts;
import jakarta.persistence.Embeddable;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * A postal address; parts that are not known are empty.
 *
 * @param  country ISO 3166-1 alpha-2
 */
@Embeddable
public record Address(
        @Default String street,
        @Default String city,
        @Default String region,
        @Default String zipCode,
        String country) {
    public Address {
        street = Texts.optional("street", street, 200);
        city = Texts.optional("city", city, 100);
        region = Texts.optional("region", region, 100);
        zipCode = Texts.optional("zipCode", zipCode, 20);
        country = Texts.required("country", country, 2).toUpperCase(Locale.ROOT);
        if (!Locale.getISOCountries(Locale.IsoCountryCode.PART1_ALPHA2).contains(country)) {
            throw new CustomersRefusal.UnknownCountry(country);
        }
    }

    /** On one line, without the empty parts. */
    public String oneLine() {
        return Stream.of(street, city, (region + " " + zipCode).strip())
                .filter(part -> !part.isEmpty())
                .collect(Collectors.joining(", "));
    }

    /** As it stands on paper below the name: the street, then the town with its region and ZIP code. */
    public List<String> onPaper(String name) {
        String town =
                Stream.of(city, region, zipCode).filter(part -> !part.isEmpty()).collect(Collectors.joining(" "));
        return List.of(name, street, town);
    }
}
