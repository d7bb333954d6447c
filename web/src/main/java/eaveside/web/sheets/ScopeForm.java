package eaveside.web.sheets;

import eaveside.catalog.ServiceItem;
import eaveside.customers.Surface;
import eaveside.customers.SurfaceType;
import eaveside.findings.FindingTypeCode;
import eaveside.findings.SeverityCode;
import eaveside.kernel.FindingId;
import eaveside.kernel.PhotoId;
import eaveside.kernel.Quantity;
import eaveside.kernel.ServiceItemId;
import eaveside.kernel.SurfaceId;
import eaveside.kernel.Unit;
import eaveside.kernel.VisitLineId;
import eaveside.visits.JobSheet;
import eaveside.visits.JobSheet.SurfaceFact;
import eaveside.visits.SkipReason;
import eaveside.visits.Visit;
import eaveside.web.forms.Fields;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Reads from a sheet's fields what was done, skipped and done beyond the plan, what was seen, and what the site has. */
final class ScopeForm {
    /** The value of a surface's select for one that nobody had listed. */
    static final String NEW = "new";

    private static final SeverityCode SOON = new SeverityCode("SOON");
    private static final SeverityCode NOTE = new SeverityCode("NOTE");

    private final Fields fields;
    private final Known known;
    private final List<JobSheet.DoneLine> lines = new ArrayList<>();
    private final List<JobSheet.Extra> extras = new ArrayList<>();
    private final List<JobSheet.Seen> seen = new ArrayList<>();
    private final List<SurfaceFact> surfaces = new ArrayList<>();

    ScopeForm(Fields fields, Visit visit, Known known) {
        this.fields = fields;
        this.known = known;
        Map<VisitLineId, Visit.Line> plan = new LinkedHashMap<>();
        visit.lines().forEach(line -> plan.put(line.id(), line));
        for (int row : fields.rows("line")) {
            Visit.Line line = plan.remove(VisitLineId.of(fields.typed("line-" + row + "-id")));
            if (line == null) {
                fields.wrong("lines", "sheets.other-plan");
            } else {
                readLine("line-" + row + "-", line);
            }
        }
        if (!plan.isEmpty()) {
            fields.wrong("lines", "sheets.other-plan");
        }
        fields.rows("extra").forEach(row -> readExtra("extra-" + row + "-"));
        fields.rows("finding").forEach(row -> readFinding("finding-" + row + "-"));
        fields.rows("surface").forEach(row -> readCount("surface-" + row + "-"));
    }

    List<JobSheet.DoneLine> lines() {
        return lines;
    }

    List<JobSheet.Extra> extras() {
        return extras;
    }

    List<JobSheet.Seen> seen() {
        return seen;
    }

    List<SurfaceFact> surfaces() {
        return surfaces;
    }

    private void readLine(String prefix, Visit.Line line) {
        Unit unit = line.planned().unit();
        boolean saidHowMany = !fields.typed(prefix + "done").isBlank();
        Quantity done = fields.quantity(prefix + "done", unit);
        List<JobSheet.Skip> skips = new ArrayList<>();
        Quantity skipped = Quantity.zero(unit);
        for (int row : fields.rows(prefix + "skip")) {
            JobSheet.Skip skip = readSkip(prefix + "skip-" + row + "-", line);
            if (skip != null) {
                skips.add(skip);
                skipped = skipped.plus(skip.quantity());
            }
        }
        if (saidHowMany && !done.plus(skipped).equals(line.planned())) {
            fields.wrong(
                    prefix + "done", "sheets.not-accounted", line.planned().value(), done.value(), skipped.value());
        }
        JobSheet.DoneLine whole = fields.made(prefix + "done", () -> new JobSheet.DoneLine(line.id(), done, skips));
        if (whole != null) {
            lines.add(whole);
        }
    }

    private JobSheet.@Nullable Skip readSkip(String prefix, Visit.Line line) {
        String typed = fields.typed(prefix + "quantity").strip();
        boolean none = typed.isEmpty() || typed.matches("0+(\\.0*)?");
        List<PhotoId> photos = photos(prefix);
        if (none) {
            if (!fields.typed(prefix + "reason").isEmpty() || !photos.isEmpty()) {
                fields.wrong(prefix + "quantity", "sheets.how-many-skipped");
            }
            return null;
        }
        Quantity quantity = fields.quantity(prefix + "quantity", line.planned().unit());
        SkipReason reason = fields.choice(prefix + "reason", SkipReason.class);
        String note = fields.optional(prefix + "note");
        if (reason == null) {
            return null;
        }
        FindingId finding = readSkipped(prefix, line, reason, note, photos);
        return fields.made(prefix + "quantity", () -> new JobSheet.Skip(quantity, reason, note, finding));
    }

    /** A cracked unit is a finding of its own, and so is whatever else was photographed; else there is none. */
    private @Nullable FindingId readSkipped(
            String prefix, Visit.Line line, SkipReason reason, String note, List<PhotoId> photos) {
        boolean cracked = reason == SkipReason.CRACKED;
        FindingTypeCode type = cracked ? Known.CRACKED : Known.OTHER;
        if (!known.types().contains(type) || (!cracked && photos.isEmpty())) {
            return null;
        }
        FindingId id = new FindingId(fields.id(prefix + "finding"));
        seen.add(new JobSheet.Seen(
                id, type, cracked ? SOON : NOTE, line.surface(), note, fields.ticked(prefix + "told"), photos));
        return id;
    }

    private void readExtra(String prefix) {
        String serviceItemId = fields.typed(prefix + "serviceItem");
        if (serviceItemId.isEmpty()) {
            if (isSaid(prefix, "quantity", "surface", "name", "there", "agreed")) {
                fields.wrong(prefix + "serviceItem", "forms.choose");
            }
            return;
        }
        ServiceItem serviceItem = known.serviceItems().get(ServiceItemId.of(serviceItemId));
        if (serviceItem == null) {
            fields.wrong(prefix + "serviceItem", "forms.choose");
            return;
        }
        Quantity quantity = fields.quantity(prefix + "quantity", serviceItem.unit());
        String agreedBy = fields.text(prefix + "agreed");
        String surface = fields.typed(prefix + "surface");
        SurfaceId where = surface.equals(NEW)
                ? readFound(prefix, serviceItem, quantity)
                : surface.isEmpty() ? null : SurfaceId.of(surface);
        if (agreedBy.isEmpty()) {
            return;
        }
        JobSheet.Extra extra = fields.made(
                prefix + "quantity",
                () -> new JobSheet.Extra(
                        new VisitLineId(fields.id(prefix + "id")), serviceItem.id(), where, quantity, agreedBy));
        if (extra != null) {
            extras.add(extra);
        }
    }

    /** A surface that nobody had listed: as much of it as was done, unless more is said to be there. */
    private @Nullable SurfaceId readFound(String prefix, ServiceItem serviceItem, Quantity done) {
        SurfaceType type = serviceItem.surfaceType();
        if (type == null) {
            fields.wrong(prefix + "surface", "sheets.no-surface-of-its-own");
            return null;
        }
        Unit unit = type.units().contains(serviceItem.unit())
                ? serviceItem.unit()
                : type.units().getFirst();
        Quantity there =
                fields.typed(prefix + "there").isBlank() ? done.in(unit) : fields.quantity(prefix + "there", unit);
        String name = fields.text(prefix + "name");
        SurfaceId id = new SurfaceId(fields.id(prefix + "new"));
        if (!name.isEmpty()) {
            SurfaceFact.Found found = fields.made(
                    prefix + "name",
                    () -> new SurfaceFact.Found(id, type, name, there, type == SurfaceType.ARRAY ? 1 : 0, Map.of()));
            if (found != null) {
                surfaces.add(found);
            }
        }
        return id;
    }

    private void readFinding(String prefix) {
        String type = fields.typed(prefix + "type");
        List<PhotoId> photos = photos(prefix);
        String note = fields.optional(prefix + "note");
        if (type.isEmpty()) {
            if (!photos.isEmpty() || isSaid(prefix, "severity", "surface", "note", "told")) {
                fields.wrong(prefix + "type", "forms.choose");
            }
            return;
        }
        String severity = fields.typed(prefix + "severity");
        if (severity.isEmpty()) {
            fields.wrong(prefix + "severity", "forms.choose");
            return;
        }
        String surface = fields.typed(prefix + "surface");
        JobSheet.Seen finding = fields.made(
                prefix + "type",
                () -> new JobSheet.Seen(
                        new FindingId(fields.id(prefix + "id")),
                        new FindingTypeCode(type),
                        new SeverityCode(severity),
                        surface.isEmpty() ? null : SurfaceId.of(surface),
                        note,
                        fields.ticked(prefix + "told"),
                        photos));
        if (finding != null) {
            seen.add(finding);
        }
    }

    private void readCount(String prefix) {
        if (fields.typed(prefix + "extent").isBlank()) {
            return;
        }
        Surface surface = known.surfaces().get(SurfaceId.of(fields.typed(prefix + "id")));
        if (surface == null) {
            fields.wrong(prefix + "extent", "forms.choose");
            return;
        }
        Quantity extent = fields.quantity(prefix + "extent", surface.extent().unit());
        surfaces.add(new SurfaceFact.Recounted(surface.id(), extent));
    }

    private boolean isSaid(String prefix, String... names) {
        return Stream.of(names).anyMatch(name -> !fields.typed(prefix + name).isBlank());
    }

    private List<PhotoId> photos(String prefix) {
        return fields.all(prefix + "photo").stream().map(PhotoId::of).toList();
    }
}
