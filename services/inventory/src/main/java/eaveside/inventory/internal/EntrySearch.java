package eaveside.inventory.internal;

import eaveside.inventory.StockEntryFilter;
import eaveside.inventory.StockEntryLine;
import eaveside.kernel.Id;
import eaveside.kernel.Ids;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Shared;
import eaveside.kernel.Slice;
import eaveside.ledger.Books;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** Finds entries of the stock ledger, newest first. */
@Shared
public class EntrySearch {
    private final EntityManager entities;
    private final Books books;

    @Inject
    public EntrySearch(EntityManager entities, Books books) {
        this.entities = entities;
        this.books = books;
    }

    /** Where a page ended. */
    private record Key(LocalDate day, UUID document, int line) {
        static Key parse(String text) {
            try {
                String[] part = text.split("_", 3);
                return new Key(LocalDate.parse(part[0]), Ids.parse(part[1]), Integer.parseInt(part[2]));
            } catch (DateTimeException | NumberFormatException | ArrayIndexOutOfBoundsException e) {
                throw new KernelRefusal.BadPageKey();
            }
        }

        static String of(StockEntryLine line) {
            return line.postingDate() + "_" + line.document() + "_" + line.line();
        }
    }

    public Slice<StockEntryLine> find(StockEntryFilter filter, @Nullable String after, int size) {
        Map<String, Object> parameters = new LinkedHashMap<>();
        List<String> conditions = new ArrayList<>(List.of("1 = 1"));
        put(conditions, parameters, "m.postingDate >= :from", "from", filter.from());
        put(conditions, parameters, "m.postingDate <= :to", "to", filter.to());
        put(conditions, parameters, "m.itemId = :item", "item", filter.item());
        put(conditions, parameters, "m.lotId = :lot", "lot", filter.lot());
        put(conditions, parameters, "m.locationId = :location", "location", filter.location());
        put(conditions, parameters, "m.key.documentId = :of", "of", value(filter.document()));
        put(
                conditions,
                parameters,
                "m.documentType in (:types)",
                "types",
                filter.types().isEmpty() ? null : filter.types());
        if (after != null) {
            Key key = Key.parse(after);
            conditions.add("(m.postingDate, m.key.documentId, m.key.line) < (:day, :document, :line)");
            parameters.put("day", key.day());
            parameters.put("document", key.document());
            parameters.put("line", key.line());
        }
        var query = entities.createQuery(
                "from MovementRow m where " + String.join(" and ", conditions)
                        + " order by m.postingDate desc, m.key.documentId desc, m.key.line desc",
                MovementRow.class);
        parameters.forEach(query::setParameter);
        List<StockEntryLine> rows = query.setMaxResults(size + 1).getResultList().stream()
                .map(m -> m.toLine(books.currency()))
                .toList();
        return Slice.of(rows, size, Key::of);
    }

    private static @Nullable UUID value(@Nullable Id id) {
        return id == null ? null : id.value();
    }

    private static void put(
            List<String> conditions,
            Map<String, Object> parameters,
            String condition,
            String name,
            @Nullable Object value) {
        if (value != null) {
            conditions.add(condition);
            parameters.put(name, value);
        }
    }
}
