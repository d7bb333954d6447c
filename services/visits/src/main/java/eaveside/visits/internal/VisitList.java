package eaveside.visits.internal;

import eaveside.customers.ReadCustomer;
import eaveside.kernel.Id;
import eaveside.kernel.PageKey;
import eaveside.kernel.Shared;
import eaveside.kernel.Slice;
import eaveside.kernel.Texts;
import eaveside.ledger.Books;
import eaveside.visits.Visit;
import eaveside.visits.VisitQuery;
import eaveside.visits.VisitsShown;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.hibernate.Session;
import org.hibernate.query.NativeQuery;
import org.jspecify.annotations.Nullable;

/** The list of visits: narrowed, searched, sorted and cut into pages by the database. */
@Shared
public class VisitList {
    private static final int MOST_WORDS = 8;
    private static final int LONGEST_SEARCH = 200;

    /**
     * A visit's words are its customer's name, its site's name and address, and its crew's names, as the search for
     * customers cuts them. The customer's stored words have those of its sites in them and are asked first, because most
     * visits fail there at once.
     */
    private static final String HAS_WORD = " and ((k.words like :%1$s and (k.sort_name like :%1$s"
            + " or search_words(concat_ws(' ', s.name, s.street, s.city, s.zip_code)) like :%1$s))"
            + " or exists (select 1 from visit_crew m join app_user u on u.id = m.user_id"
            + " where m.visit_id = v.id and search_words(u.name) like :%1$s))";

    private final EntityManager entities;
    private final ReadCustomer readCustomer;
    private final Books books;

    @Inject
    public VisitList(EntityManager entities, ReadCustomer readCustomer, Books books) {
        this.entities = entities;
        this.readCustomer = readCustomer;
        this.books = books;
    }

    public Slice<Visit.Summary> list(VisitQuery query, @Nullable String after, int size) {
        VisitsShown show = query.show();
        String day = show == VisitsShown.COMPLETED ? "v.completed_on" : "v.scheduled_for";
        boolean latestFirst = show == VisitsShown.ALL;
        Map<String, Object> parameters = new LinkedHashMap<>();
        StringBuilder sql = new StringBuilder(
                "select v.* from visit v join site s on s.id = v.site_id"
                        + " join customer c on c.id = v.customer_id join customer k on k.id = coalesce(c.merged_into, c.id) where ");
        sql.append(shown(show, parameters));
        if (query.customer() != null) {
            sql.append(" and v.customer_id in (:customers)");
            parameters.put(
                    "customers",
                    readCustomer.idsOf(query.customer()).stream().map(Id::value).toList());
        }
        for (String word : words(query.search())) {
            String name = "word" + parameters.size();
            sql.append(HAS_WORD.formatted(name));
            parameters.put(name, "% " + word + "%");
        }
        PageKey<LocalDate> key = latestFirst ? PageKey.beforeDay(after) : PageKey.afterDay(after);
        sql.append(" and (" + day + ", v.id) " + (latestFirst ? "<" : ">") + " (:day, :id)");
        parameters.put("day", key.sort());
        parameters.put("id", key.id());
        sql.append(" order by " + day + (latestFirst ? " desc, v.id desc" : ", v.id"));
        NativeQuery<VisitRow> rows = entities.unwrap(Session.class).createNativeQuery(sql.toString(), VisitRow.class);
        parameters.forEach(rows::setParameter);
        return Slice.of(
                        rows.setMaxResults(size + 1).getResultList(),
                        size,
                        row -> (show == VisitsShown.COMPLETED ? row.key() : row.scheduledKey()).toString())
                .map(VisitRow::toSummary);
    }

    private String shown(VisitsShown show, Map<String, Object> parameters) {
        return switch (show) {
            case SCHEDULED -> "v.status = 'SCHEDULED'";
            case COMPLETED -> "v.status = 'COMPLETED'";
            case TODAY -> {
                parameters.put("today", books.today());
                yield "v.scheduled_for = :today and v.status <> 'CANCELED'";
            }
            case ALL -> "true";
        };
    }

    /** The words of the text, as the database itself cuts and lowers them; letters and digits only, so safe in a pattern. */
    private List<String> words(String search) {
        String text = Texts.optional("q", search, LONGEST_SEARCH);
        if (text.isEmpty()) {
            return List.of();
        }
        String cut = (String) entities.createNativeQuery("select search_words(:text)", String.class)
                .setParameter("text", text)
                .getSingleResult();
        return cut.isBlank()
                ? List.of()
                : Stream.of(cut.strip().split(" ")).distinct().limit(MOST_WORDS).toList();
    }
}
