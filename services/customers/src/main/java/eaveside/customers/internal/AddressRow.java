package eaveside.customers.internal;

import eaveside.customers.Address;
import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;

/** A postal address within a row. */
@Embeddable
record AddressRow(
        String street,
        String city,
        String region,
        @Column(name = "zip_code") String zipCode,
        String country) {
    static AddressRow of(Address address) {
        return new AddressRow(address.street(), address.city(), address.region(), address.zipCode(), address.country());
    }

    Address toAddress() {
        return new Address(street, city, region, zipCode, country);
    }
}
