package eaveside.web.worklist;

import eaveside.access.ReadUsers;
import eaveside.access.Role;
import eaveside.catalog.Catalog;
import eaveside.catalog.TaxSettings;
import eaveside.costing.ReadCostRates;
import eaveside.customers.FindCustomers;
import eaveside.inventory.ReadStock;
import eaveside.kernel.Shared;
import eaveside.ledger.Books;
import eaveside.pricing.ReadPriceBooks;
import eaveside.web.View;
import jakarta.inject.Inject;
import java.util.List;

/** What a new company sets up before its first quote, in the order in which one thing needs another. */
@Shared
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
    public record Step(boolean done, String key, String link, boolean ownersOnly) {}

    /** The steps that the viewer may take, done ones too; none once all are done. */
    List<Step> left(View view) {
        List<Step> steps = List.of(
                new Step(!taxSettings.all().isEmpty(), "taxes", "/settings/taxes", true),
                new Step(!readCostRates.all().isEmpty(), "rates", "/settings/rates", true),
                new Step(!catalog.lines().isEmpty(), "lines", "/settings/service-lines", false),
                new Step(!catalog.serviceItems().isEmpty(), "serviceItems", "/settings/services", false),
                new Step(readPriceBooks.findInForce(books.today()).isPresent(), "prices", "/prices", true),
                new Step(readUsers.all().size() > 1, "people", "/settings/users", true),
                new Step(!readStock.locations().isEmpty() && !readStock.items().isEmpty(), "stock", "/stock", false),
                new Step(!findCustomers.find("", false, null, 1).rows().isEmpty(), "customers", "/customers", false));
        List<Step> own = steps.stream()
                .filter(step -> !step.ownersOnly() || view.is(Role.OWNER))
                .toList();
        return own.stream().allMatch(Step::done) ? List.of() : own;
    }
}
