package eaveside.web.sheets;

import eaveside.ledger.Books;
import eaveside.visits.ReadVisits;
import eaveside.visits.Visit;
import eaveside.web.Names;
import eaveside.web.Page;
import eaveside.web.security.Roles;
import eaveside.web.security.Viewer;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.List;

/** The own sheets of a day: the first page of a technician, and the only list. */
@Path("/sheets")
@Dependent
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Roles.OWNER, Roles.OFFICE, Roles.TECHNICIAN})
public class SheetsResource {
    /** How far the day can be switched to either side of today. */
    private static final int DAYS = 7;

    @Inject
    ReadVisits readVisits;

    @Inject
    Books books;

    @Inject
    Names names;

    @Inject
    Viewer viewer;

    /** The visits of a day, and whether there is a day to switch to on either side. */
    public record SheetsPage(
            LocalDate day, boolean hasBefore, boolean hasAfter, List<Visit.Summary> visits, Names names)
            implements Page {}

    @GET
    @Transactional
    public SheetsPage sheets(@QueryParam("day") @DefaultValue("") String asked) {
        LocalDate today = books.today();
        LocalDate first = today.minusDays(DAYS);
        LocalDate last = today.plusDays(DAYS);
        LocalDate day = day(asked, today);
        day = day.isBefore(first) ? first : day.isAfter(last) ? last : day;
        List<Visit.Summary> visits = readVisits.sheetsOf(viewer.id(), day);
        names.lookUpVisits(visits);
        return new SheetsPage(day, day.isAfter(first), day.isBefore(last), visits, names);
    }

    private static LocalDate day(String text, LocalDate otherwise) {
        try {
            return text.isEmpty() ? otherwise : LocalDate.parse(text);
        } catch (DateTimeException e) {
            return otherwise;
        }
    }
}
