package eaveside.web.visits;

import eaveside.access.ReadUsers;
import eaveside.access.Role;
import eaveside.access.Sight;
import eaveside.access.User;
import eaveside.customers.ReadCustomer;
import eaveside.invoicing.ReadInvoices;
import eaveside.kernel.DocumentId;
import eaveside.kernel.VisitId;
import eaveside.ledger.ReadLedger;
import eaveside.pricing.ReadQuotes;
import eaveside.visits.ReadSentSheets;
import eaveside.visits.ReadSheets;
import eaveside.visits.ReadVisits;
import eaveside.visits.SignedSheet;
import eaveside.visits.Visit;
import eaveside.visits.VisitStatus;
import eaveside.web.Names;
import eaveside.web.forms.Fields;
import eaveside.web.security.Viewer;
import eaveside.web.visits.SheetFacts.Facts;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import java.util.Comparator;
import java.util.List;
import java.util.Map;

/** Collects what the office's page of a visit shows. */
@Dependent
public class VisitPages {
    @Inject
    ReadVisits readVisits;

    @Inject
    ReadSheets readSheets;

    @Inject
    ReadSentSheets readSentSheets;

    @Inject
    ReadCustomer readCustomer;

    @Inject
    ReadQuotes readQuotes;

    @Inject
    ReadInvoices readInvoices;

    @Inject
    ReadLedger readLedger;

    @Inject
    ReadUsers readUsers;

    @Inject
    SheetFacts sheetFacts;

    @Inject
    ExtraWorth extraWorth;

    @Inject
    Names names;

    @Inject
    Viewer viewer;

    VisitPage of(VisitId id, String about, Fields fields) {
        Visit visit = readVisits.visit(id);
        List<SignedSheet> sheets = readSheets.ofVisit(id);
        SignedSheet inForce = sheets.stream()
                .filter(s -> s.posted().id().equals(visit.sheet()))
                .findFirst()
                .orElse(null);
        Facts facts = inForce == null ? null : sheetFacts.of(visit, inForce);
        return new VisitPage(
                visit,
                readCustomer.customer(visit.customer()),
                readCustomer.site(visit.site()),
                visit.quote() == null
                        ? null
                        : Long.valueOf(readQuotes.quote(visit.quote()).number()),
                inForce == null ? sheetFacts.plan(visit) : List.of(),
                facts,
                inForce == null || !viewer.sees(Sight.COSTS)
                        ? List.of()
                        : readSheets.costOf(inForce.posted().id()),
                inForce == null || visit.status() != VisitStatus.COMPLETED ? Map.of() : extraWorth.of(visit, inForce),
                sheets.stream().filter(s -> s.reversedBy() != null).toList(),
                sheetFacts.otherPhotos(id, facts),
                readSentSheets.ofVisit(id),
                sheetFacts.soap(visit.warnings()),
                readInvoices.draftOf(id).orElse(null),
                visit.status() == VisitStatus.SCHEDULED ? staff(visit) : List.of(),
                names,
                Entries.workInProgress(readLedger),
                DocumentId.next(),
                about,
                fields);
    }

    /** Who may be in the crew, and who is; those who usually climb first. */
    private List<User> staff(Visit visit) {
        return readUsers.all().stream()
                .filter(user -> user.active() || visit.crew().contains(user.id()))
                .sorted(Comparator.comparing((User user) -> user.role() != Role.TECHNICIAN))
                .toList();
    }
}
