package eaveside.customers.internal;

import eaveside.customers.CustomerHits;
import eaveside.customers.CustomerHits.ContactHit;
import eaveside.customers.CustomerHits.SiteHit;
import eaveside.kernel.ContactId;
import eaveside.kernel.CustomerId;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Shared;
import eaveside.kernel.SiteId;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.persistence.Tuple;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Function;
import org.hibernate.Session;
import org.hibernate.query.NativeQuery;

/**
 * The search behind {@link eaveside.customers.FindCustomerHits}. Words are looked up by their beginnings; where none of the
 * three tables has them, by what they share of their trigrams (PostgreSQL, "pg_trgm", word similarity), all of it on the
 * trigram indexes.
 */
@Shared
public class HitSearch {
    private static final int LARGEST = 50;

    /** Of a word's trigrams, so many must be in a word there: one slip in a word of five letters, two in one of nine. */
    private static final String CLOSE = "0.45";

    /** Below it, a slip leaves nothing to go by. */
    private static final int SHORTEST_TO_MISSPELL = 4;

    private final EntityManager entities;
    private final SearchedWords searchedWords;

    @Inject
    public HitSearch(EntityManager entities, SearchedWords searchedWords) {
        this.entities = entities;
        this.searchedWords = searchedWords;
    }

    public CustomerHits search(String text, int most) {
        if (most < 1 || most > LARGEST) {
            throw new KernelRefusal.OutOfRange("size", most, 1, LARGEST);
        }
        PhoneDigits phone = PhoneDigits.of(text);
        if (phone.isPhone()) {
            return hits(Wanted.phone(phone.last()), most, true);
        }
        List<String> words = searchedWords.of(text);
        if (words.isEmpty()) {
            return new CustomerHits(List.of(), List.of(), List.of(), true);
        }
        CustomerHits spelled = hits(Wanted.beginnings(words), most, true);
        if (!spelled.isEmpty() || words.stream().anyMatch(word -> word.length() < SHORTEST_TO_MISSPELL)) {
            return spelled;
        }
        entities.createNativeQuery(
                        "select set_config('pg_trgm.word_similarity_threshold', '" + CLOSE + "', true)", String.class)
                .getSingleResult();
        return hits(Wanted.close(words), most, false);
    }

    /**
     * What is wanted of a column of words.
     *
     * @param  condition on the column, which is put in for <code>{words}</code>
     * @param  order     the best first
     */
    private record Wanted(String condition, String order, Map<String, Object> parameters) {
        static Wanted phone(String digits) {
            return new Wanted("{words} like :w0", "", Map.of("w0", "%" + digits + "%"));
        }

        static Wanted beginnings(List<String> words) {
            Map<String, Object> parameters = new LinkedHashMap<>();
            List<String> conditions = new ArrayList<>();
            for (String word : words) {
                String name = "w" + parameters.size();
                conditions.add("{words} like :" + name);
                parameters.put(name, "% " + word + "%");
            }
            parameters.put("first", " " + String.join(" ", words) + "%");
            return new Wanted(String.join(" and ", conditions), "({words} like :first) desc, ", parameters);
        }

        static Wanted close(List<String> words) {
            Map<String, Object> parameters = new LinkedHashMap<>();
            List<String> conditions = new ArrayList<>();
            List<String> closeness = new ArrayList<>();
            for (String word : words) {
                String name = "w" + parameters.size();
                conditions.add(":" + name + " <% {words}");
                closeness.add("word_similarity(:" + name + ", {words})");
                parameters.put(name, word);
            }
            return new Wanted(String.join(" and ", conditions), String.join(" + ", closeness) + " desc, ", parameters);
        }
    }

    private CustomerHits hits(Wanted wanted, int most, boolean spelled) {
        return new CustomerHits(
                read(
                        "select k.id, k.name, k.type, k.street, k.city, k.phone, k.email, k.active from customer k"
                                + " where k.merged_into is null and %s order by k.active desc, %sk.sort_name, k.id",
                        "k.words", wanted, most, CustomerSearch::line),
                read(
                        "select s.id, s.name, s.street, s.city, k.id as customer, k.name as customer_name from site s"
                                + " join customer c on c.id = s.customer_id join customer k on k.id = coalesce(c.merged_into, c.id)"
                                + " where %s order by s.active desc, %sk.sort_name, s.name, s.id",
                        "s.words", wanted, most, HitSearch::site),
                read(
                        "select s.id, s.name, s.phone, s.email, k.id as customer, k.name as customer_name from contact s"
                                + " join customer c on c.id = s.customer_id join customer k on k.id = coalesce(c.merged_into, c.id)"
                                + " where %s order by s.active desc, %ss.name, s.id",
                        "s.words", wanted, most, HitSearch::contact),
                spelled);
    }

    private <T> List<T> read(String sql, String words, Wanted wanted, int most, Function<Tuple, T> hit) {
        NativeQuery<Tuple> query = entities.unwrap(Session.class)
                .createNativeQuery(
                        sql.formatted(wanted.condition(), wanted.order()).replace("{words}", words), Tuple.class);
        wanted.parameters().forEach(query::setParameter);
        return query.setMaxResults(most).getResultList().stream().map(hit).toList();
    }

    private static SiteHit site(Tuple row) {
        return new SiteHit(
                new SiteId(row.get("id", UUID.class)),
                row.get("name", String.class),
                row.get("street", String.class),
                row.get("city", String.class),
                new CustomerId(row.get("customer", UUID.class)),
                row.get("customer_name", String.class));
    }

    private static ContactHit contact(Tuple row) {
        return new ContactHit(
                new ContactId(row.get("id", UUID.class)),
                row.get("name", String.class),
                row.get("phone", String.class),
                row.get("email", String.class),
                new CustomerId(row.get("customer", UUID.class)),
                row.get("customer_name", String.class));
    }
}
