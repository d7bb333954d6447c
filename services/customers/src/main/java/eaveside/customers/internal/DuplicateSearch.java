package eaveside.customers.internal;

import eaveside.customers.Customer;
import eaveside.customers.Duplicate;
import eaveside.customers.Duplicate.Because;
import eaveside.kernel.CustomerId;
import eaveside.kernel.Shared;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.persistence.Tuple;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Compares customers with those that are stored; the database makes the keys, so that both sides are made alike. */
@Shared
public class DuplicateSearch {
    private static final String ASKED = """
            with asked as (
              select n, id, name, phone_key(phone) as phone_key, lower(email) as email_key,
                name_and_address_key(name, street, city) as name_and_address_key
              from unnest(cast(:ids as uuid[]), cast(:phones as text[]), cast(:emails as text[]), cast(:names as text[]),
                cast(:streets as text[]), cast(:cities as text[])) with ordinality as u(id, phone, email, name, street, city, n)
            )
            """;

    /** Each reason is a join of its own, so that each is answered by its index. */
    private static final String DUPLICATES = ASKED
            + Stream.of(Because.values())
                    .map(because -> """
                            select a.n, c.id, c.name, '%1$s' as because
                            from asked a join customer c on c.%2$s = a.%2$s and c.%2$s <> ''
                            where a.%2$s <> '' and c.id <> a.id and c.merged_into is null
                            union all
                            select a.n, b.id, b.name, '%1$s' from asked a join asked b on b.%2$s = a.%2$s and b.n < a.n
                            where a.%2$s <> ''
                            """.formatted(because.name(), key(because)))
                    .collect(Collectors.joining("union all "))
            + "order by 1, 3, 2";

    private final EntityManager entities;

    @Inject
    public DuplicateSearch(EntityManager entities) {
        this.entities = entities;
    }

    /** Whom the customer may be the same as, by name; never itself. */
    public List<Duplicate> of(Customer customer) {
        return among(List.of(customer)).getOrDefault(customer.id(), List.of());
    }

    /** The same for many at once, which are compared with one another too; those like nobody are left out. */
    public Map<CustomerId, List<Duplicate>> among(List<Customer> customers) {
        List<Tuple> found = entities.createNativeQuery(DUPLICATES, Tuple.class)
                .setParameter("ids", customers.stream().map(c -> c.id().value()).toArray(UUID[]::new))
                .setParameter("phones", texts(customers, Customer::phone))
                .setParameter("emails", texts(customers, Customer::email))
                .setParameter("names", texts(customers, Customer::name))
                .setParameter("streets", texts(customers, c -> c.address().street()))
                .setParameter("cities", texts(customers, c -> c.address().city()))
                .getResultList();
        Map<CustomerId, Map<CustomerId, Found>> byAsked = new LinkedHashMap<>();
        for (Tuple row : found) {
            CustomerId asked =
                    customers.get(row.get("n", Number.class).intValue() - 1).id();
            CustomerId other = new CustomerId(row.get("id", UUID.class));
            byAsked.computeIfAbsent(asked, k -> new LinkedHashMap<>())
                    .computeIfAbsent(
                            other, k -> new Found(row.get("name", String.class), EnumSet.noneOf(Because.class)))
                    .because()
                    .add(Because.valueOf(row.get("because", String.class)));
        }
        Map<CustomerId, List<Duplicate>> duplicates = new LinkedHashMap<>();
        byAsked.forEach((asked, others) -> {
            List<Duplicate> list = new ArrayList<>();
            others.forEach((id, other) -> list.add(new Duplicate(id, other.name(), other.because())));
            list.sort(Comparator.comparing(Duplicate::name));
            duplicates.put(asked, List.copyOf(list));
        });
        return duplicates;
    }

    private static String key(Because because) {
        return switch (because) {
            case PHONE -> "phone_key";
            case EMAIL -> "email_key";
            case NAME_AND_ADDRESS -> "name_and_address_key";
        };
    }

    private record Found(String name, Set<Because> because) {}

    private static String[] texts(List<Customer> customers, Function<Customer, String> part) {
        return customers.stream().map(part).toArray(String[]::new);
    }
}
