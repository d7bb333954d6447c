package eaveside.web.sheets;

import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Refusal;
import eaveside.kernel.Shared;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitId;
import eaveside.ledger.Company.Measures;
import eaveside.visits.ReadVisits;
import eaveside.visits.SentSheet;
import eaveside.visits.SignOffVisit;
import eaveside.visits.Visit;
import eaveside.visits.VisitRefusal;
import eaveside.visits.VisitStatus;
import eaveside.web.Notation;
import eaveside.web.View;
import eaveside.web.forms.Fields;
import eaveside.web.security.Viewer;
import jakarta.inject.Inject;
import jakarta.ws.rs.core.MultivaluedMap;
import java.util.List;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Takes a sheet that was sent, and nothing of it is lost: it signs the visit off, or is kept for the office to read, just
 * as it was sent.
 */
@Shared
public class TakeSheet {
    @Inject
    ReadVisits readVisits;

    @Inject
    SignOffVisit signOffVisit;

    @Inject
    KeepSheet keepSheet;

    @Inject
    SheetPages sheetPages;

    @Inject
    Viewer viewer;

    /** What a page sends for {@code numbers} whose numbers are as the company writes them. */
    public static final String COMPANY = "company";

    private static final String MEASURES = "measures";

    /**
     * The form, in which the fields of older pages bear the names of today. Numbers of older pages are as browsers sent those
     * of number fields, whatever the company writes. Goods are in what the page measured in when it was opened, which it says
     * itself; a page that says nothing asked for them in the units that they are kept in.
     */
    static Fields fields(MultivaluedMap<String, String> form, Notation company) {
        boolean older = !COMPANY.equals(form.getFirst("numbers"));
        MultivaluedMap<String, String> typed = PhoneNames.today(form);
        Notation notation = company.in(measures(form.getFirst(MEASURES)));
        return (older ? Fields.shown(typed) : Fields.of(typed, notation))
                .spokenIn(notation)
                .labeled("sheets", "field");
    }

    private static @Nullable Measures measures(@Nullable String said) {
        return Stream.of(Measures.values())
                .filter(measures -> measures.name().equals(said))
                .findFirst()
                .orElse(null);
    }

    /** Says so where the page that is shown again measures in something else than what was typed. */
    static void askForUnits(Fields fields, View view) {
        if (!fields.typed(MEASURES).equals(view.measures().name())) {
            fields.wrong(MEASURES, "sheets.units-changed");
        }
    }

    /**
     * Takes it.
     *
     * @param  sent   as it was sent
     * @param  fields that the sheet is read from
     * @return where its sender goes on; null where the sender has to correct what is noted at the fields
     */
    @Nullable
    String take(VisitId id, MultivaluedMap<String, String> sent, Fields fields) {
        UserId by = viewer.id();
        View view = viewer.view();
        VisitStatus status = VisitStatus.SCHEDULED;
        SheetForm.Read read = null;
        try {
            Visit visit = readVisits.visitFor(by, id);
            status = visit.status();
            read = SheetForm.read(fields, id, visit.lines(), sheetPages.known(visit, view), by);
            if (read.sheet() != null) {
                signOffVisit.signOff(read.sheet());
                return "/sheets/" + id + "?done=sheets.signed";
            }
            if (visit.status() != VisitStatus.SCHEDULED) {
                throw new VisitRefusal.WrongStatus(visit.status(), VisitStatus.SCHEDULED);
            }
        } catch (VisitRefusal.WrongStatus late) {
            // There is nothing left that its sender could correct: another of the crew was first, or the plan has
            // changed.
            keep(id, sent, view.t("sheets.late." + readVisits.visit(id).status()));
            return "/sheets/" + id + "?done=sheets.recorded";
        } catch (VisitRefusal.NotYours meanwhile) {
            keep(id, sent, meanwhile.said());
            return "/sheets?done=sheets.recorded";
        } catch (Refusal refusal) {
            if (refusal.type() != Refusal.Type.RULE && refusal.type() != Refusal.Type.CONFLICT) {
                keep(id, sent, refusal.said());
                throw refusal;
            }
            if (read == null) {
                fields.refused(refusal);
            } else {
                read.refused(refusal);
            }
            if (refusal instanceof KernelRefusal.IdTaken && status != VisitStatus.SCHEDULED) {
                // Once it is billed, nobody can correct the signed one any more.
                // And who sends the same again has read that the office has it, and wants nothing else.
                if (keep(id, sent, view.t("sheets.late.otherwise")) || status != VisitStatus.COMPLETED) {
                    return "/sheets/" + id + "?done=sheets.recorded";
                }
                fields.moveError("id", "");
                fields.reword(said -> view.t("sheets.signed-otherwise"));
            }
        }
        Sections.settle(fields);
        keep(id, sent, fields.errors().values().stream().distinct().collect(Collectors.joining(". ")));
        return null;
    }

    private boolean keep(VisitId visit, MultivaluedMap<String, String> sent, String refusal) {
        // By name, since the order in which a form is read is nobody's promise.
        List<SentSheet.Field> fields = new TreeMap<>(sent)
                .entrySet().stream()
                        .flatMap(field ->
                                field.getValue().stream().map(value -> new SentSheet.Field(field.getKey(), value)))
                        .toList();
        return keepSheet.keep(visit, fields, refusal);
    }
}
