package eaveside.web.invoices;

import eaveside.invoicing.PaymentMethod;
import eaveside.ledger.Books;
import eaveside.offerings.Catalogue;
import eaveside.offerings.Offering;
import eaveside.offerings.ServiceLine;
import eaveside.offerings.TaxSetting;
import eaveside.offerings.TaxSettings;
import eaveside.web.View;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.Map;

/** What the forms of invoices and payments offer to choose from. */
@Dependent
public class Choices {
    private final Catalogue catalogue;
    private final TaxSettings taxSettings;
    private final Books books;

    @Inject
    public Choices(Catalogue catalogue, TaxSettings taxSettings, Books books) {
        this.catalogue = catalogue;
        this.taxSettings = taxSettings;
        this.books = books;
    }

    Map<String, String> serviceLines() {
        Map<String, String> lines = new LinkedHashMap<>();
        catalogue.lines().stream()
                .filter(ServiceLine::active)
                .forEach(line -> lines.put(line.id().toString(), line.name()));
        return lines;
    }

    /** What is sold, by name. */
    Map<String, String> services() {
        Map<String, String> services = new LinkedHashMap<>();
        catalogue.offerings().stream()
                .filter(Offering::active)
                .sorted(Comparator.comparing(Offering::name))
                .forEach(offering -> services.put(offering.id().toString(), offering.name()));
        return services;
    }

    /** Each of the owner's codes with what it means today. */
    Map<String, String> taxCodes(View view) {
        Map<String, String> codes = new LinkedHashMap<>();
        for (TaxSetting setting : taxSettings.all()) {
            if (!setting.from().isAfter(books.today())) {
                // The newest day comes first: it is the one in force.
                codes.putIfAbsent(
                        setting.code().value(),
                        view.t(
                                "invoices.tax-choice",
                                setting.code().value(),
                                setting.category().hasRate()
                                        ? view.percent(setting.rate())
                                        : view.t("invoices.category", setting.category())));
            }
        }
        return codes;
    }

    static Map<String, String> methods(View view) {
        Map<String, String> methods = new LinkedHashMap<>();
        for (PaymentMethod method : PaymentMethod.values()) {
            methods.put(method.name(), view.t("invoices.method", method));
        }
        return methods;
    }
}
