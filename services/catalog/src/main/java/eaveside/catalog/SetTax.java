package eaveside.catalog;

import eaveside.access.RecordAudit;
import eaveside.catalog.internal.CatalogQueries;
import eaveside.catalog.internal.TaxCodeRow;
import eaveside.catalog.internal.TaxSettingRow;
import eaveside.kernel.FromDay;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Shared;
import eaveside.kernel.UserId;
import eaveside.ledger.Books;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.util.List;

/**
 * Sets how a tax code is taxed from a day on. The first setting of a code may begin on any day, and one may be added
 * before the first; any other begins today or later, and can be set again until its day has come.
 */
@Shared
public class SetTax {
    private final EntityManager entities;
    private final CatalogQueries queries;
    private final Books books;
    private final RecordAudit audit;
    private final Clock clock;

    @Inject
    public SetTax(EntityManager entities, CatalogQueries queries, Books books, RecordAudit audit, Clock clock) {
        this.entities = entities;
        this.queries = queries;
        this.books = books;
        this.audit = audit;
        this.clock = clock;
    }

    /**
     * Refuses a change on days that may have been billed, and a first day far away ({@link Books#near}); the same setting again
     * is a retry.
     */
    @Transactional
    public void set(TaxSetting setting, UserId by) {
        queries.takeTurn(CatalogQueries.CATALOG);
        String code = setting.code().value();
        List<TaxSettingRow> before = queries.taxSettingsOf(code);
        List<TaxSettingRow> sameDay =
                before.stream().filter(row -> row.from().equals(setting.from())).toList();
        if (!sameDay.isEmpty() && sameDay.getFirst().toTaxSetting().equals(setting)) {
            return;
        }
        books.near(setting.from(), "from");
        FromDay.earliestInsteadOf(
                        setting.from(), before.stream().map(TaxSettingRow::from).toList(), books.today())
                .ifPresent(earliest -> {
                    throw new KernelRefusal.TooEarly(
                            "from", setting.from(), earliest, "days before may be billed already");
                });
        if (before.isEmpty()) {
            entities.persist(new TaxCodeRow(code));
        }
        entities.persist(new TaxSettingRow(setting, sameDay.size() + 1, by, clock.instant()));
        audit.done("tax.set", by, setting.code());
        entities.flush();
    }
}
