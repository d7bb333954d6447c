package eaveside.web.invoices;

import eaveside.catalog.Catalog;
import eaveside.catalog.ServiceItem;
import eaveside.catalog.ServiceLine;
import eaveside.catalog.TaxSetting;
import eaveside.catalog.TaxSettings;
import eaveside.invoicing.PaymentMethod;
import eaveside.ledger.Books;
import eaveside.web.View;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.Map;

/** What the forms of invoices and payments offer to choose from. */
@Dependent
public class Choices {
    @Inject
    Catalog catalog;

    @Inject
    TaxSettings taxSettings;

    @Inject
    Books books;

    Map<String, String> serviceLines() {
        Map<String, String> lines = new LinkedHashMap<>();
        catalog.lines().stream()
                .filter(ServiceLine::active)
                .forEach(line -> lines.put(line.id().toString(), line.name()));
        return lines;
    }

    /** What is sold, by name. */
    Map<String, String> services() {
        Map<String, String> services = new LinkedHashMap<>();
        catalog.serviceItems().stream()
                .filter(ServiceItem::active)
                .sorted(Comparator.comparing(ServiceItem::name))
                .forEach(serviceItem -> services.put(serviceItem.id().toString(), serviceItem.name()));
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
            methods.put(method.name(), view.t("invoices.payment.method", method));
        }
        return methods;
    }
}
