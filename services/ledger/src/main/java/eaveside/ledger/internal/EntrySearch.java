package eaveside.ledger.internal;

import eaveside.kernel.Ids;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Money;
import eaveside.kernel.Shared;
import eaveside.kernel.Slice;
import eaveside.ledger.Books;
import eaveside.ledger.EntryFilter;
import eaveside.ledger.EntryLine;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.persistence.Query;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** The entries behind a figure: one set of conditions for the rows and for their sum, so that the two always agree. */
@Shared
public class EntrySearch {
    private final EntityManager entities;
    private final ChartOfAccounts chart;
    private final Books books;

    @Inject
    public EntrySearch(EntityManager entities, ChartOfAccounts chart, Books books) {
        this.entities = entities;
        this.chart = chart;
        this.books = books;
    }

    public Slice<EntryLine> find(EntryFilter filter, @Nullable String after, int size) {
        Map<String, Object> parameters = new LinkedHashMap<>();
        String where = conditions(filter, parameters);
        if (after != null) {
            if (!after.matches("\\d{4}-\\d{2}-\\d{2}_[0-9a-f-]{36}_\\d{1,9}")) {
                throw new KernelRefusal.BadPageKey();
            }
            String[] key = after.split("_", 3);
            where += " and (e.postingDate, e.key.documentId, e.key.line) < (:day, :document, :line)";
            parameters.put("day", LocalDate.parse(key[0]));
            parameters.put("document", Ids.parse(key[1]));
            parameters.put("line", Integer.parseInt(key[2]));
        }
        var query = entities.createQuery(
                "select d, e, a.name from EntryRow e join DocumentRow d on d.id = e.key.documentId "
                        + "join AccountRow a on a.code = e.accountCode where " + where
                        + " order by e.postingDate desc, e.key.documentId desc, e.key.line desc",
                LedgerQueries.Line.class);
        parameters.forEach(query::setParameter);
        List<EntryLine> rows = query.setMaxResults(size + 1).getResultList().stream()
                .map(line -> line.toLine(books.currency()))
                .toList();
        return Slice.of(rows, size, row -> row.postingDate() + "_" + row.document() + "_" + row.line());
    }

    public Money total(EntryFilter filter) {
        Map<String, Object> parameters = new LinkedHashMap<>();
        Query query = entities.createQuery(
                "select coalesce(sum(e.amount), 0) from EntryRow e where " + conditions(filter, parameters),
                BigDecimal.class);
        parameters.forEach(query::setParameter);
        return books.money((BigDecimal) query.getSingleResult());
    }

    private String conditions(EntryFilter filter, Map<String, Object> parameters) {
        StringBuilder where =
                new StringBuilder("e.key.documentId not in (select s.documentId from SupersededCloseRow s)");
        add(where, parameters, "e.postingDate >= :from", "from", filter.from());
        add(where, parameters, "e.postingDate <= :to", "to", filter.to());
        add(where, parameters, "e.serviceLineId = :serviceLine", "serviceLine", filter.serviceLine());
        add(where, parameters, "e.visitId = :visit", "visit", filter.visit());
        add(
                where,
                parameters,
                "e.customerId in (:customers)",
                "customers",
                filter.customers().isEmpty() ? null : filter.customers());
        add(where, parameters, "e.costType = :costType", "costType", filter.costType());
        if (filter.fromFindings()) {
            where.append(" and e.findingId is not null");
        }
        if (filter.withoutServiceLine()) {
            where.append(" and e.serviceLineId is null");
        }
        if (!filter.accounts().isEmpty()) {
            where.append(" and e.accountCode in (:accounts)");
            parameters.put(
                    "accounts",
                    filter.accounts().stream().map(a -> chart.account(a).code()).toList());
        }
        return where.toString();
    }

    private static void add(
            StringBuilder where,
            Map<String, Object> parameters,
            String condition,
            String name,
            @Nullable Object value) {
        if (value != null) {
            where.append(" and ").append(condition);
            parameters.put(name, value);
        }
    }
}
