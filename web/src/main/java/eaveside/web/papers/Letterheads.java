package eaveside.web.papers;

import eaveside.kernel.Shared;
import eaveside.ledger.Books;
import eaveside.ledger.Company;
import eaveside.reports.Letterhead;
import eaveside.reports.PaperSize;
import eaveside.reports.Papers;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.context.Dependent;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/** The head of the company's papers, and the printer of them all. */
@Shared
public class Letterheads {
    private final Books books;

    @Inject
    public Letterheads(Books books) {
        this.books = books;
    }

    /** Of the company as it is now; US measures print on US Letter, metric ones on A4. */
    public Letterhead current() {
        Company company = books.company();
        Company.Address address = company.address();
        return new Letterhead(
                company.name(),
                lines(address),
                company.email(),
                company.phone(),
                company.taxNumber(),
                Locale.of("en", address.country()),
                company.measures() == Company.Measures.US ? PaperSize.US_LETTER : PaperSize.A4);
    }

    private static List<String> lines(Company.Address address) {
        String town = String.join(
                " ",
                Stream.of(address.city(), address.region(), address.zipCode())
                        .filter(part -> !part.isBlank())
                        .toList());
        return List.of(address.street(), town);
    }

    /** Printing keeps no state and compiled templates in memory: one for all. */
    @ApplicationScoped
    public static class Printer {
        @Produces
        @Dependent
        Papers papers() {
            return SHARED;
        }

        private static final Papers SHARED = new Papers();
    }
}
