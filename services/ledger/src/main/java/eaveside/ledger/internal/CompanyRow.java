package eaveside.ledger.internal;

import eaveside.ledger.Company;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.time.LocalDate;
import java.time.ZoneId;
import org.joda.money.CurrencyUnit;

/** The company: one row in a database. */
@Entity
@Table(name = "company")
public class CompanyRow {
    /** Of the one row. */
    public static final Short ID = 1;

    @Id
    Short id;

    String name;
    String street;
    String city;
    String region;

    @Column(name = "zip_code")
    String zipCode;

    String country;
    String email;
    String phone;

    @Column(name = "tax_number")
    String taxNumber;

    @Column(updatable = false)
    String currency;

    String zone;

    @Enumerated(EnumType.STRING)
    Company.Measures measures;

    @Column(name = "books_from", updatable = false)
    LocalDate booksFrom;

    @Version
    int version;

    CompanyRow() {}

    public CompanyRow(Company company) {
        this.id = ID;
        this.currency = company.currency();
        this.booksFrom = company.booksFrom();
        this.version = 1;
        write(company);
    }

    /** Everything but what never changes. */
    public final void write(Company company) {
        this.name = company.name();
        this.street = company.address().street();
        this.city = company.address().city();
        this.region = company.address().region();
        this.zipCode = company.address().zipCode();
        this.country = company.address().country();
        this.email = company.email();
        this.phone = company.phone();
        this.taxNumber = company.taxNumber();
        this.zone = company.zone();
        this.measures = company.measures();
    }

    public CurrencyUnit currency() {
        return CurrencyUnit.of(currency);
    }

    public ZoneId zone() {
        return ZoneId.of(zone);
    }

    public Company toCompany() {
        return new Company(
                name,
                new Company.Address(street, city, region, zipCode, country),
                email,
                phone,
                taxNumber,
                currency,
                zone,
                measures,
                booksFrom,
                version);
    }
}
