package eaveside.web.customers;

import eaveside.customers.Address;
import eaveside.web.forms.Fields;
import java.util.List;
import java.util.Map;

/** Addresses in forms: the same five fields everywhere. */
final class Addresses {
    static final List<String> NAMES = List.of("street", "city", "region", "postalCode", "country");

    private Addresses() {}

    static Map<String, String> values(Address address) {
        return Map.of(
                "street", address.street(),
                "city", address.city(),
                "region", address.region(),
                "postalCode", address.postalCode(),
                "country", address.country());
    }

    /** What was typed; a refusal of the address is noted at the country, the only part that can be wrong as a whole. */
    static Address of(Fields fields) {
        Address address = fields.made(
                "country",
                () -> new Address(
                        fields.optional("street"),
                        fields.optional("city"),
                        fields.optional("region"),
                        fields.optional("postalCode"),
                        fields.optional("country")));
        return address == null ? new Address("", "", "", "", "US") : address;
    }
}
