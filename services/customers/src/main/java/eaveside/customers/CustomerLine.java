package eaveside.customers;

import eaveside.kernel.CustomerId;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** A customer in a list. */
public record CustomerLine(
        CustomerId id,
        String name,
        CustomerType type,
        String street,
        String city,
        String phone,
        String email,
        boolean active) {
    /** On one line; parts that are not known are left out. */
    public String streetAndCity() {
        return Stream.of(street, city).filter(part -> !part.isEmpty()).collect(Collectors.joining(", "));
    }
}
