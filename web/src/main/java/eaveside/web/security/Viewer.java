package eaveside.web.security;

import eaveside.access.User;
import eaveside.kernel.UserId;
import eaveside.ledger.Books;
import eaveside.ledger.Company;
import eaveside.web.View;
import jakarta.enterprise.context.RequestScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** Who makes this request, and how to show things to them. */
@RequestScoped
public class Viewer {
    private @Nullable User user;
    private String path = "/";
    private @Nullable String done;

    @Inject
    Books books;

    @Inject
    Clock clock;

    void signedInAs(User who) {
        user = who;
    }

    void at(String requestPath, @Nullable String doneKey) {
        path = requestPath;
        done = doneKey != null && doneKey.matches("[a-z0-9.-]{1,60}") ? doneKey : null;
    }

    public @Nullable User user() {
        return user;
    }

    /** The signed-in person's id; only where {@link Guard} let the request through. */
    public UserId id() {
        User who = user;
        if (who == null) {
            throw new IllegalStateException("nobody is signed in");
        }
        return who.id();
    }

    @Transactional
    public View view() {
        if (!books.areFounded()) {
            return new View(user, "", ZoneOffset.UTC, LocalDate.now(clock), Locale.US, true, path, done);
        }
        Company company = books.company();
        boolean us = company.measures() == Company.Measures.US;
        return new View(
                user,
                company.name(),
                ZoneId.of(company.zone()),
                books.today(),
                Locale.of("en", company.address().country()),
                us,
                path,
                done);
    }
}
