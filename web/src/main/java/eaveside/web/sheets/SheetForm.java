package eaveside.web.sheets;

import eaveside.catalog.ServiceItem;
import eaveside.customers.Surface;
import eaveside.customers.SurfaceType;
import eaveside.findings.FindingTypeCode;
import eaveside.inventory.CountBasis;
import eaveside.inventory.StockItem;
import eaveside.kernel.Ids;
import eaveside.kernel.Quantity;
import eaveside.kernel.Refusal;
import eaveside.kernel.Unit;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitId;
import eaveside.visits.JobSheet;
import eaveside.visits.SkipReason;
import eaveside.visits.Visit;
import eaveside.web.forms.Fields;
import eaveside.web.forms.Form;
import jakarta.ws.rs.core.MultivaluedHashMap;
import jakarta.ws.rs.core.MultivaluedMap;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Reads a job sheet from its page, which asks in the order of the work and not of the record: a photo of a skipped panel is
 * a finding, a service on a surface not listed is a new surface. What was entered is put under the names of the sheet's own
 * fields, with units, and rows that say nothing are left out; errors go back to the fields of the page. The same fields
 * always make the same sheet, so that sending again is a retry.
 */
final class SheetForm {
    /** The value of a surface's select for one that nobody had listed. */
    static final String NEW = "new";

    private final Fields page;
    private final Known known;
    private final MultivaluedMap<String, String> sheet = new MultivaluedHashMap<>();
    private final Map<String, String> asked = new HashMap<>();
    private final Map<String, Unit> units = new HashMap<>();
    private int findings;

    private SheetForm(Fields page, Known known) {
        this.page = page;
        this.known = known;
        List<Integer> rows = page.rows("finding");
        this.findings = rows.isEmpty() ? 0 : rows.getLast() + 1;
    }

    /**
     * What was read.
     *
     * @param  sheet null where something is wrong, which is then noted at the page's fields
     */
    record Read(@Nullable JobSheet sheet, Fields page, Form<JobSheet> form, Map<String, String> asked) {
        /**
         * Notes a use case's refusal at the field of the page that it names; one that the page does not ask for, or that says
         * in words of its own which of the goods it means, stays with its list, for the section of the page.
         */
        void refused(Refusal refusal) {
            page.refused(
                    refusal,
                    problem -> problem.pattern().contains(Refusal.FIELD)
                            ? new Refusal.Problem(onPage(problem.field()), problem.pattern())
                            : problem);
        }

        private String onPage(String path) {
            String name = form.inForm(path);
            return asked.getOrDefault(name, path);
        }
    }

    static Read read(Fields page, VisitId visit, List<Visit.Line> plan, Known known, UserId by) {
        SheetForm form = taken(page, plan, known);
        Form<JobSheet> sheet = Form.sent(JobSheet.class, Fields.of(form.sheet, page.notation()))
                .given("visit", visit)
                .given("by", by);
        JobSheet read = sheet.read();
        page.refusedLike(sheet.fields(), name -> form.asked.getOrDefault(name, name));
        return new Read(page.hasErrors() ? null : read, page, sheet, form.asked);
    }

    /** What each field of the page measures in: the page shows the units and does not send them. */
    static Map<String, Unit> units(Fields page, List<Visit.Line> plan, Known known) {
        return Map.copyOf(taken(page, plan, known).units);
    }

    private static SheetForm taken(Fields page, List<Visit.Line> plan, Known known) {
        SheetForm form = new SheetForm(page, known);
        form.takeWhole();
        form.takeLines(plan);
        form.each("extra", form::takeExtra);
        form.each("finding", form::takeFinding);
        form.each("surface", form::takeExtent);
        form.each("reading", form::takeReading);
        form.each("mix", row -> form.takeUse(row, "mix", "volume", form.measured(known.volume())));
        form.each("brush", row -> form.takeUse(row, "lot", "units", Unit.PIECE));
        form.each("item", row -> form.takeUse(row, "item", "quantity", form.unitOf(page.typed(row + "item"))));
        form.takeCount();
        return form;
    }

    private void each(String group, Consumer<String> row) {
        page.rows(group).forEach(number -> row.accept(group + "-" + number + "-"));
    }

    private void take(String name) {
        take(name, name);
    }

    private void take(String from, String to) {
        asked.put(to, from);
        takeHidden(from, to);
    }

    /** What nobody sees on the page, so that no error can stand there. */
    private void takeHidden(String from, String to) {
        if (!page.all(from).isEmpty()) {
            // A list of its own: what is then put under that name must not change what the page shows again.
            sheet.put(to, new ArrayList<>(page.all(from)));
        }
    }

    private void take(String prefix, List<String> names) {
        names.forEach(name -> take(prefix + name));
    }

    private void takeMeasured(String from, String to, Unit unit) {
        take(from, to);
        units.put(from, unit);
        sheet.putSingle(to + "Unit", unit.code());
    }

    /** The id that the page made for what it may create. */
    private void takeId(String from, String to) {
        sheet.putSingle(to, page.typed(from).isEmpty() ? Ids.next().toString() : page.typed(from));
    }

    private boolean isSaid(String prefix, String... names) {
        return Stream.of(names).anyMatch(name -> !page.typed(prefix + name).isBlank());
    }

    private void takeWhole() {
        takeId("id", "id");
        take("", List.of("completedOn", "location", "note", "onSiteMinutes", "drivingMinutes", "loadingMinutes"));
        takeMeasured("distance", "distance", measured(known.distance()));
    }

    private void takeLines(List<Visit.Line> lines) {
        Map<String, Visit.Line> plan = new LinkedHashMap<>();
        lines.forEach(line -> plan.put(line.id().toString(), line));
        each("line", prefix -> {
            Visit.Line line = plan.remove(page.typed(prefix + "id"));
            if (line == null) {
                page.wrong("lines", "sheets.other-plan");
                return;
            }
            takeHidden(prefix + "id", prefix + "line");
            takeMeasured(prefix + "done", prefix + "done", line.planned().unit());
            each(prefix + "skip", skip -> takeSkip(skip, line));
            requireAccounted(prefix, line.planned());
        });
        if (!plan.isEmpty()) {
            page.wrong("lines", "sheets.other-plan");
        }
    }

    private void takeSkip(String prefix, Visit.Line line) {
        boolean photographed = isSaid(prefix, "photo");
        if (page.typed(prefix + "quantity").strip().matches("(0+([.,]0*)?)?")) {
            if (photographed || isSaid(prefix, "reason", "note")) {
                page.wrong(prefix + "quantity", "sheets.how-many-skipped");
            }
            return;
        }
        takeMeasured(prefix + "quantity", prefix + "quantity", line.planned().unit());
        take(prefix, List.of("reason", "note"));
        // A cracked unit is a finding of its own, and so is whatever else was photographed.
        boolean cracked = page.typed(prefix + "reason").equals(SkipReason.CRACKED.name());
        FindingTypeCode type = cracked ? Known.CRACKED : Known.OTHER;
        if (known.types().contains(type) && (cracked || photographed)) {
            String finding = "finding-" + findings++ + "-";
            takeId(prefix + "finding", prefix + "finding");
            sheet.put(finding + "id", sheet.get(prefix + "finding"));
            sheet.putSingle(finding + "type", type.value());
            sheet.putSingle(finding + "severity", cracked ? "SOON" : "NOTE");
            sheet.putSingle(
                    finding + "surface",
                    line.surface() == null ? "" : line.surface().toString());
            takeSeen(prefix, finding);
        }
    }

    private void takeSeen(String from, String to) {
        take(from + "note", to + "note");
        take(from + "customerNotified", to + "customerNotified");
        take(from + "photo", to + "photos");
    }

    private void requireAccounted(String prefix, Quantity planned) {
        if (page.typed(prefix + "done").isBlank()) {
            return;
        }
        Quantity done = page.quantity(prefix + "done", planned.unit());
        Quantity skipped = page.rows(prefix + "skip").stream()
                .map(row -> prefix + "skip-" + row + "-quantity")
                .filter(field -> !page.typed(field).isBlank())
                .map(field -> page.quantity(field, planned.unit()))
                .reduce(Quantity.zero(planned.unit()), Quantity::plus);
        if (!done.plus(skipped).equals(planned)) {
            page.wrong(prefix + "done", "sheets.not-accounted", planned.value(), done.value(), skipped.value());
        }
    }

    private void takeExtra(String prefix) {
        if (!isSaid(prefix, "serviceItem", "quantity", "surface", "name", "there", "acceptedBy")) {
            return;
        }
        takeId(prefix + "id", prefix + "id");
        take(prefix, List.of("serviceItem", "acceptedBy"));
        boolean onNew = page.typed(prefix + "surface").equals(NEW);
        if (!onNew) {
            take(prefix + "surface");
        }
        ServiceItem serviceItem = known.serviceItems().get(page.typed(prefix + "serviceItem"));
        if (serviceItem == null) {
            page.wrong(prefix + "serviceItem", "forms.choose");
            return;
        }
        takeMeasured(prefix + "quantity", prefix + "quantity", serviceItem.unit());
        if (onNew) {
            takeNewSurface(prefix, serviceItem);
        }
    }

    /** A surface that nobody had listed: as much of it as was done, unless more is said to be there. */
    private void takeNewSurface(String prefix, ServiceItem serviceItem) {
        SurfaceType type = serviceItem.surfaceType();
        if (type == null) {
            page.wrong(prefix + "surface", "sheets.no-surface-of-its-own");
            return;
        }
        String surface = prefix.replace("extra-", "newSurface-");
        takeId(prefix + "new", prefix + "surface");
        sheet.put(surface + "surface", sheet.get(prefix + "surface"));
        sheet.putSingle(surface + "type", type.name());
        sheet.putSingle(surface + "rows", type == SurfaceType.ARRAY ? "1" : "0");
        take(prefix + "name", surface + "name");
        boolean measured = isSaid(prefix, "there");
        takeMeasured(
                prefix + (measured ? "there" : "quantity"),
                surface + "extent",
                !measured || type.units().contains(serviceItem.unit())
                        ? serviceItem.unit()
                        : type.units().getFirst());
    }

    private void takeFinding(String prefix) {
        if (isSaid(prefix, "type", "severity", "surface", "note", "customerNotified", "photo")) {
            takeId(prefix + "id", prefix + "id");
            take(prefix, List.of("type", "severity", "surface"));
            takeSeen(prefix, prefix);
        }
    }

    private void takeExtent(String prefix) {
        if (!isSaid(prefix, "extent")) {
            return;
        }
        Surface surface = known.surfaces().get(page.typed(prefix + "id"));
        if (surface == null) {
            page.wrong(prefix + "extent", "forms.choose");
            return;
        }
        takeHidden(prefix + "id", prefix + "surface");
        takeMeasured(prefix + "extent", prefix + "extent", surface.extent().unit());
    }

    private void takeReading(String prefix) {
        if (isSaid(prefix, "tapWater", "pureWater", "volume")) {
            take(prefix, List.of("tapWater", "pureWater", "canister"));
            takeMeasured(prefix + "volume", prefix + "volume", measured(known.volume()));
            take(prefix + "line", prefix + "serviceLine");
        }
    }

    /** A row that names a thing and how much of it; one without the other is an error, neither is no row. */
    private void takeUse(String prefix, String thing, String amount, Unit unit) {
        if (isSaid(prefix, thing, amount)) {
            take(prefix + thing);
            takeMeasured(prefix + amount, prefix + amount, unit);
            take(prefix + "line", prefix + "serviceLine");
        }
    }

    /** As the page that was filled in measures, whatever the company has changed to since. */
    private Unit measured(Unit unit) {
        return page.notation().unitOf(unit);
    }

    private Unit unitOf(String item) {
        StockItem known = this.known.items().get(item);
        return known == null ? Unit.PIECE : measured(known.baseUnit());
    }

    /** The location's count: its things are items, and after a slash one lot of them. */
    private void takeCount() {
        each("count", prefix -> {
            if (!isSaid(prefix, "item", "found")) {
                return;
            }
            String counted = prefix.replace("count-", "counted-");
            String[] thing = page.typed(prefix + "item").split("/", 2);
            take(prefix + "item", counted + "item");
            sheet.putSingle(counted + "item", thing[0]);
            sheet.putSingle(counted + "lot", thing.length == 2 ? thing[1] : "");
            sheet.putSingle(counted + "basis", CountBasis.FOUND.name());
            takeMeasured(prefix + "found", counted + "quantity", unitOf(thing[0]));
        });
        boolean counted = sheet.keySet().stream().anyMatch(name -> name.startsWith("counted-"));
        if (counted) {
            takeId("count-id", "document");
            take("count-reason", "reason");
        } else if (isSaid("", "count-reason")) {
            page.wrong("count-" + page.rows("count").stream().findFirst().orElse(0) + "-item", "forms.choose");
        }
    }
}
