package eaveside.customers.internal;

import eaveside.customers.CustomerLine;
import eaveside.customers.CustomerType;
import eaveside.kernel.CustomerId;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Shared;
import eaveside.kernel.Slice;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.persistence.Tuple;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.hibernate.Session;
import org.hibernate.query.NativeQuery;
import org.jspecify.annotations.Nullable;

/**
 * The search behind {@link eaveside.customers.FindCustomers}: every word is looked up by its beginning in the words of
 * the customer, its contacts and its sites. Rare words are found on the trigram index, common ones by walking the names.
 */
@Shared
public class CustomerSearch {
    private static final int LARGEST_PAGE = 200;

    private final EntityManager entities;
    private final SearchedWords searchedWords;

    @Inject
    public CustomerSearch(EntityManager entities, SearchedWords searchedWords) {
        this.entities = entities;
        this.searchedWords = searchedWords;
    }

    public Slice<CustomerLine> find(String text, boolean activeOnly, @Nullable String after, int size) {
        if (size < 1 || size > LARGEST_PAGE) {
            throw new KernelRefusal.OutOfRange("size", size, 1, LARGEST_PAGE);
        }
        Map<String, Object> parameters = new LinkedHashMap<>();
        StringBuilder sql =
                new StringBuilder("select c.id, c.name, c.type, c.street, c.city, c.phone, c.email, c.active,"
                        + " c.sort_name from customer c where c.merged_into is null");
        if (activeOnly) {
            sql.append(" and c.active");
        }
        for (String word : searchedWords.of(text)) {
            String name = "word" + parameters.size();
            parameters.put(name, "% " + word + "%");
            sql.append(" and c.words like :").append(name);
        }
        if (after != null) {
            Key key = Key.parse(after);
            sql.append(" and (c.sort_name, c.id) > (:name, :id)");
            parameters.put("name", key.sortName());
            parameters.put("id", key.id());
        }
        sql.append(" order by c.sort_name, c.id");
        NativeQuery<Tuple> query = entities.unwrap(Session.class).createNativeQuery(sql.toString(), Tuple.class);
        parameters.forEach(query::setParameter);
        List<Tuple> found = query.setMaxResults(size + 1).getResultList();
        return Slice.of(
                        found,
                        size,
                        row -> new Key(row.get("id", UUID.class), row.get("sort_name", String.class)).text())
                .map(CustomerSearch::line);
    }

    /** Of a row with the columns that a list of customers reads. */
    static CustomerLine line(Tuple row) {
        return new CustomerLine(
                new CustomerId(row.get("id", UUID.class)),
                row.get("name", String.class),
                CustomerType.valueOf(row.get("type", String.class)),
                row.get("street", String.class),
                row.get("city", String.class),
                row.get("phone", String.class),
                row.get("email", String.class),
                row.get("active", Boolean.class));
    }

    /** Where a page ended. */
    private record Key(UUID id, String sortName) {
        String text() {
            return id + sortName;
        }

        static Key parse(String text) {
            try {
                return new Key(UUID.fromString(text.substring(0, 36)), text.substring(36));
            } catch (IllegalArgumentException | IndexOutOfBoundsException e) {
                throw new KernelRefusal.BadPageKey();
            }
        }
    }
}
