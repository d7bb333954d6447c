package eaveside.web.security;

import eaveside.access.Admitted;
import eaveside.access.Duty;
import eaveside.access.SessionId;
import eaveside.access.Sight;
import eaveside.access.TokenScope;
import eaveside.access.User;
import eaveside.kernel.UserId;
import eaveside.ledger.Books;
import eaveside.ledger.Company;
import eaveside.web.Notation;
import eaveside.web.View;
import eaveside.web.forms.Fields;
import eaveside.web.forms.Form;
import eaveside.web.forms.Shape;
import eaveside.worklist.ReadWorklist;
import jakarta.enterprise.context.RequestScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.core.MultivaluedMap;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.joda.money.CurrencyUnit;
import org.jspecify.annotations.Nullable;

/** Who makes this request, and how to show things to them. */
@RequestScoped
public class Viewer {
    private @Nullable User user;
    private @Nullable SessionId session;
    private @Nullable Duty duty;
    private @Nullable TokenScope scope;
    private boolean comfortable;
    private String path = "/";
    private @Nullable String done;
    private Set<Sight> sights = Set.of();
    private @Nullable Notation notation;
    private @Nullable View view;
    private @Nullable View page;

    @Inject
    Books books;

    @Inject
    Clock clock;

    @Inject
    ReadWorklist readWorklist;

    void signedInAs(Admitted who) {
        user = who.user();
        session = who.session();
        duty = who.duty();
        scope = who.scope();
        sights = who.sights();
        comfortable = who.comfortable();
        view = null;
    }

    void at(String requestPath, @Nullable String doneKey) {
        path = requestPath;
        done = doneKey != null && doneKey.matches("[a-z0-9.-]{1,60}") ? doneKey : null;
    }

    public @Nullable User user() {
        return user;
    }

    /** The session that the request is of; null for a script's, and where nobody is signed in. */
    public @Nullable SessionId session() {
        return session;
    }

    /** What a script's token is good for; null for people. */
    @Nullable
    TokenScope scope() {
        return scope;
    }

    /** What the signed-in person owes before anything else; null for nothing. */
    public @Nullable Duty duty() {
        return duty;
    }

    /** The signed-in person's id; only where {@link Guard} let the request through. */
    public UserId id() {
        if (user == null) {
            throw new IllegalStateException("nobody is signed in");
        }
        return user.id();
    }

    /** Whether the signed-in person may see that; nobody signed in sees nothing. */
    public boolean sees(Sight sight) {
        return sights.contains(sight);
    }

    /** How the company writes numbers, money and dates. */
    @Transactional
    public Notation notation() {
        if (notation == null) {
            notation = books.areFounded()
                    ? new Notation(locale(books.company()), books.currency())
                    : new Notation(Locale.US, CurrencyUnit.USD);
        }
        return notation;
    }

    /** What was sent, to be read as the company writes. */
    public Fields fields(MultivaluedMap<String, String> sent) {
        return Fields.of(sent, notation());
    }

    /** A form that shows a record. */
    public <T extends Record> Form<T> form(T record) {
        return Form.showing(record, notation());
    }

    /** A form for a new record with an id of its own, on which boxes are checked as its defaults say. */
    public <T> Form<T> fresh(Class<T> type) {
        return fresh(type, Map.of());
    }

    /** The same with what is known of it beforehand. */
    public <T> Form<T> fresh(Class<T> type, Map<String, String> values) {
        Map<String, String> first = new HashMap<>(Shape.of(type).fresh());
        first.putAll(values);
        return form(type, first);
    }

    /** A form for a new document, with an id of its own and dated today. */
    public <T> Form<T> dated(Class<T> type, Map<String, String> values) {
        Map<String, String> first = new HashMap<>(values);
        first.put("date", books.today().toString());
        return fresh(type, first);
    }

    /** A form for a new record, with what is known of it beforehand. */
    public <T> Form<T> form(Class<T> type, Map<String, String> values) {
        return Form.empty(type, notation(), values);
    }

    /** What a page is written by, the same for the whole request. */
    @Transactional
    public View view() {
        if (view == null) {
            view = made();
        }
        return view;
    }

    /** The same with how much is due, for a page that is shown with the menu. Asked for only once nothing is changed any more. */
    @Transactional
    public View page() {
        if (page == null) {
            page = view().hasMenu() ? view().with(readWorklist.totals()) : view();
        }
        return page;
    }

    private View made() {
        if (!books.areFounded()) {
            return new View(
                    user,
                    "",
                    ZoneOffset.UTC,
                    LocalDate.now(clock),
                    Locale.US,
                    true,
                    path,
                    done,
                    sights,
                    duty != null,
                    comfortable,
                    Map.of());
        }
        Company company = books.company();
        ZoneId zone = ZoneId.of(company.zone());
        boolean us = company.measures() == Company.Measures.US;
        return new View(
                user,
                company.name(),
                zone,
                books.today(),
                locale(company),
                us,
                path,
                done,
                sights,
                duty != null,
                comfortable,
                Map.of());
    }

    private static Locale locale(Company company) {
        return Locale.of("en", company.address().country());
    }
}
