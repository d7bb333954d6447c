package eaveside.web.sheets;

import eaveside.costing.Effort;
import eaveside.kernel.DocumentId;
import eaveside.kernel.LocationId;
import eaveside.kernel.Quantity;
import eaveside.kernel.UserId;
import eaveside.visits.JobSheet;
import eaveside.visits.Visit;
import eaveside.web.forms.Fields;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/** Reads a job sheet from its fields. The same fields always make the same sheet, so that sending again is a retry. */
final class SheetForm {
    private SheetForm() {}

    /** The sheet; null where something is wrong, which is then noted at the fields. */
    static @Nullable JobSheet read(Fields fields, Visit visit, Known known, UserId by) {
        DocumentId id = new DocumentId(fields.id("id"));
        LocalDate completedOn = fields.date("completedOn", visit.date());
        ScopeForm scope = new ScopeForm(fields, visit, known);
        UseForm use = new UseForm(fields, known);
        int onSite = fields.integer("onSiteMinutes", 0, Effort.MOST_MINUTES);
        int driving = fields.integer("drivingMinutes", 0, Effort.MOST_MINUTES);
        int loading = fields.integer("loadingMinutes", 0, Effort.MOST_MINUTES);
        Quantity distance = fields.quantity("distance", known.distance());
        String location = fields.typed("location");
        if (fields.hasErrors()) {
            return null;
        }
        return fields.made(
                "",
                () -> new JobSheet(
                        id,
                        visit.id(),
                        completedOn,
                        by,
                        location.isEmpty() ? null : LocationId.of(location),
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
