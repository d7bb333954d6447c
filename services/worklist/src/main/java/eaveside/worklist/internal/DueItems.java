package eaveside.worklist.internal;

import eaveside.kernel.CustomerId;
import eaveside.kernel.Quantity;
import eaveside.kernel.Shared;
import eaveside.kernel.Unit;
import eaveside.ledger.Books;
import eaveside.worklist.DueItem;
import eaveside.worklist.DueKey;
import eaveside.worklist.DueOrder;
import eaveside.worklist.DueTotal;
import eaveside.worklist.DueType;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.persistence.Tuple;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import org.hibernate.Session;
import org.hibernate.query.NativeQuery;
import org.jspecify.annotations.Nullable;

/** Reads the rows of the database's {@code due_items}, which says what is due on a day. */
@Shared
public class DueItems {
    private static final String DUE = "due_items(cast(:today as date)) d"
            + " left join put_aside p on p.type = d.type and p.id = d.id and p.place = d.place";

    private static final String IS_ASIDE = "p.type is not null and (p.until is null or p.until > :today)";

    private static final String COLUMNS =
            "d.type, d.id, d.place, d.opens, k.id as customer, k.name as customer_name, k.phone,"
                    + " d.since, d.day, d.number, d.amount, d.name, d.detail, d.urgent, d.held, d.wanted, d.unit, p.until, p.note";

    private static final String CUSTOMER = " left join customer c on c.id = d.customer_id"
            + " left join customer k on k.id = coalesce(c.merged_into, c.id)";

    private final EntityManager entities;
    private final Books books;

    @Inject
    public DueItems(EntityManager entities, Books books) {
        this.entities = entities;
        this.books = books;
    }

    public Map<DueType, DueTotal> totals(LocalDate today) {
        Map<DueType, DueTotal> totals = new EnumMap<>(DueType.class);
        query("select d.type, count(*) as items, coalesce(sum(d.amount), 0) as amount from " + DUE + " where not ("
                        + IS_ASIDE + ") group by d.type")
                .setParameter("today", today)
                .getResultList()
                .forEach(row -> totals.put(
                        DueType.valueOf(row.get("type", String.class)),
                        new DueTotal(row.get("items", Long.class), books.money(row.get("amount", BigDecimal.class)))));
        return totals;
    }

    /** The first so many of each type, type by type. */
    public List<DueItem> due(LocalDate today, @Nullable DueType type, DueOrder order, int most) {
        String first = order == DueOrder.AGE
                ? "d.urgent desc, d.since, d.amount desc nulls last, d.name, d.id, d.place"
                : "d.amount desc nulls last, d.urgent desc, d.since, d.name, d.id, d.place";
        NativeQuery<Tuple> query = query("select " + COLUMNS
                        + ", d.row from (select d.*, row_number() over (partition by d.type"
                        + " order by " + first + ") as row from " + DUE + " where not (" + IS_ASIDE + ")"
                        + (type == null ? "" : " and d.type = :type") + ") d"
                        + " left join put_aside p on p.type = d.type and p.id = d.id and p.place = d.place" + CUSTOMER
                        + " where d.row <= :most order by d.type, d.row")
                .setParameter("today", today)
                .setParameter("most", most);
        if (type != null) {
            query.setParameter("type", type.name());
        }
        return query.getResultList().stream().map(row -> item(row, false)).toList();
    }

    public List<DueItem> aside(LocalDate today, int most) {
        return query("select " + COLUMNS + " from " + DUE + CUSTOMER + " where " + IS_ASIDE
                        + " and p.until is not null order by p.until, d.type, d.id, d.place")
                .setParameter("today", today)
                .setMaxResults(most)
                .getResultList()
                .stream()
                .map(row -> item(row, true))
                .toList();
    }

    public long countAside(LocalDate today) {
        return query("select count(*) as items from " + DUE + " where " + IS_ASIDE + " and p.until is not null")
                .setParameter("today", today)
                .getSingleResult()
                .get("items", Long.class);
    }

    private NativeQuery<Tuple> query(String sql) {
        return entities.unwrap(Session.class).createNativeQuery(sql, Tuple.class);
    }

    private DueItem item(Tuple row, boolean aside) {
        UUID customer = row.get("customer", UUID.class);
        BigDecimal amount = row.get("amount", BigDecimal.class);
        LocalDate until = row.get("until", LocalDate.class);
        return new DueItem(
                new DueKey(
                        DueType.valueOf(row.get("type", String.class)),
                        row.get("id", UUID.class).toString(),
                        row.get("place", UUID.class).toString()),
                row.get("opens", UUID.class).toString(),
                customer == null ? null : new CustomerId(customer),
                Objects.requireNonNullElse(row.get("customer_name", String.class), ""),
                Objects.requireNonNullElse(row.get("phone", String.class), ""),
                row.get("since", LocalDate.class),
                row.get("day", LocalDate.class),
                row.get("number", Long.class),
                amount == null ? null : books.money(amount),
                row.get("name", String.class),
                row.get("detail", String.class),
                row.get("urgent", Boolean.class),
                quantity(row, "held"),
                quantity(row, "wanted"),
                aside && until != null
                        ? new DueItem.Aside(until, Objects.requireNonNullElse(row.get("note", String.class), ""))
                        : null);
    }

    private static @Nullable Quantity quantity(Tuple row, String column) {
        BigDecimal value = row.get(column, BigDecimal.class);
        return value == null ? null : Quantity.of(value, Unit.ofCode(row.get("unit", String.class)));
    }
}
