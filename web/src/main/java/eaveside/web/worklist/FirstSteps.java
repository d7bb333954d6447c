package eaveside.web.worklist;

import eaveside.access.ReadUsers;
import eaveside.access.Role;
import eaveside.catalog.Catalog;
import eaveside.catalog.TaxSettings;
import eaveside.costing.ReadCostRates;
import eaveside.customers.FindCustomers;
import eaveside.inventory.ReadStock;
import eaveside.ledger.Books;
import eaveside.pricing.ReadPriceBooks;
import eaveside.web.View;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import java.util.List;

/** What a new company sets up before its first quote, in the order in which one thing needs another. */
@Dependent
public class FirstSteps {
    @Inject
    TaxSettings taxSettings;

    @Inject
    ReadCostRates readCostRates;

    @Inject
    Catalog catalog;

    @Inject
    ReadPriceBooks readPriceBooks;

    @Inject
    ReadStock readStock;

    @Inject
    FindCustomers findCustomers;

    @Inject
    ReadUsers readUsers;

    @Inject
    Books books;

    /**
     * A step.
     *
     * @param  key  of its words
     * @param  link where it is done
     * @param  ownersOnly whether only the owner may do it
     */
    public record Step(String key, String link, boolean ownersOnly, boolean done) {}

    /** The steps that the viewer may take, done ones too; none once all are done. */
    List<Step> left(View view) {
        List<Step> steps = List.of(
                new Step("taxes", "/settings/taxes", true, !taxSettings.all().isEmpty()),
                new Step("rates", "/settings/rates", true, !readCostRates.all().isEmpty()),
                new Step(
                        "lines",
                        "/settings/service-lines",
                        false,
                        !catalog.lines().isEmpty()),
                new Step(
                        "serviceItems",
                        "/settings/services",
                        false,
                        !catalog.serviceItems().isEmpty()),
                new Step(
                        "prices",
                        "/prices",
                        true,
                        readPriceBooks.findInForce(books.today()).isPresent()),
                new Step("people", "/settings/users", true, readUsers.all().size() > 1),
                new Step(
                        "stock",
                        "/stock",
                        false,
                        !readStock.locations().isEmpty() && !readStock.items().isEmpty()),
                new Step(
                        "customers",
                        "/customers",
                        false,
                        !findCustomers.find("", false, null, 1).rows().isEmpty()));
        List<Step> own = steps.stream()
                .filter(step -> !step.ownersOnly() || view.is(Role.OWNER))
                .toList();
        return own.stream().allMatch(Step::done) ? List.of() : own;
    }
}
