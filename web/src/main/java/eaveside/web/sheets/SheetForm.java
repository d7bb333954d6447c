package eaveside.web.sheets;

import eaveside.costing.Effort;
import eaveside.kernel.DocumentId;
import eaveside.kernel.PlaceId;
import eaveside.kernel.Quantity;
import eaveside.kernel.UserId;
import eaveside.visits.Visit;
import eaveside.visits.VisitSheet;
import eaveside.web.forms.Fields;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/** Reads a visit sheet from its fields. The same fields always make the same sheet, so that sending again is a retry. */
final class SheetForm {
    private SheetForm() {}

    /** The sheet; null where something is wrong, which is then noted at the fields. */
    static @Nullable VisitSheet read(Fields fields, Visit visit, Known known, UserId by) {
        DocumentId id = new DocumentId(fields.id("id"));
        LocalDate doneOn = fields.date("doneOn", visit.date());
        ScopeForm scope = new ScopeForm(fields, visit, known);
        UseForm use = new UseForm(fields, known);
        int onSite = fields.integer("onSiteMinutes", 0, Effort.MOST_MINUTES);
        int driving = fields.integer("drivingMinutes", 0, Effort.MOST_MINUTES);
        int loading = fields.integer("loadingMinutes", 0, Effort.MOST_MINUTES);
        Quantity distance = fields.quantity("distance", known.distance());
        String place = fields.typed("place");
        if (fields.hasErrors()) {
            return null;
        }
        return fields.made(
                "",
                () -> new VisitSheet(
                        id,
                        visit.id(),
                        doneOn,
                        by,
                        place.isEmpty() ? null : PlaceId.of(place),
                        scope.lines(),
                        scope.extras(),
                        use.readings(),
                        use.used(),
                        use.count(),
                        new Effort(onSite, driving, loading, distance),
                        scope.seen(),
                        scope.surfaces(),
                        fields.optional("note")));
    }
}
