package eaveside.web.sheets;

import eaveside.catalog.Catalog;
import eaveside.customers.ReadSurfaces;
import eaveside.findings.Photo;
import eaveside.findings.ReadFindings;
import eaveside.findings.ReadPhoto;
import eaveside.inventory.Location;
import eaveside.inventory.LotLevel;
import eaveside.inventory.ReadStock;
import eaveside.kernel.PhotoId;
import eaveside.kernel.Shared;
import eaveside.kernel.Unit;
import eaveside.visits.SentSheet;
import eaveside.visits.SkipReason;
import eaveside.visits.Visit;
import eaveside.web.Notation;
import eaveside.web.View;
import eaveside.web.visits.SheetFacts;
import jakarta.inject.Inject;
import jakarta.ws.rs.core.MultivaluedHashMap;
import jakarta.ws.rs.core.MultivaluedMap;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * Puts the fields of a sheet that was sent into words. Nothing that was sent is left out but ids that name nothing: a field
 * of an older form is shown under its own name.
 */
@Shared
public class SentWords {
    /** What names the row or only ties it together. */
    private static final Set<String> IDS = Set.of("id", "new", "finding");

    /** Said by the form itself, so that alone it says nothing. */
    private static final Set<String> PRESET = Set.of("canister", "line");

    private static final Set<String> WHOLE_IDS = Set.of("id", "signer", "numbers", "measures", "count-id");

    /** What people write in their own words, whatever those are; a skip's reason is chosen. */
    private static final Pattern OWN_WORDS = Pattern.compile("(.*-)?(note|name|acceptedBy)|count-reason");

    private static final Pattern NUMBER = Pattern.compile("[-−]?[\\d.,'’\\s]*\\d");

    @Inject
    SheetFacts sheetFacts;

    @Inject
    SheetPages sheetPages;

    @Inject
    ReadSurfaces readSurfaces;

    @Inject
    ReadFindings readFindings;

    @Inject
    ReadPhoto readPhoto;

    @Inject
    ReadStock readStock;

    @Inject
    Catalog catalog;

    /** The second row comes before the tenth. */
    private static final Comparator<String> BY_GROUP_AND_NUMBER = Comparator.comparing(SentWords::group)
            .thenComparing(row -> Integer.valueOf(row.substring(group(row).length() + 1)));

    private static String group(String row) {
        return row.substring(0, row.indexOf('-'));
    }

    /** A row of the sheet, or the sheet as a whole. */
    public record Part(String title, List<Said> said, List<PhotoId> photos) {}

    /** One thing that was said. */
    public record Said(String label, String value) {}

    List<Part> of(Visit visit, SentSheet sheet, View view) {
        Words words = new Words(known(visit, view), units(visit, sheet, view), view);
        Set<PhotoId> stored =
                readPhoto.ofVisit(visit.id()).stream().map(Photo::id).collect(Collectors.toSet());
        Map<String, List<SentSheet.Field>> rows = new TreeMap<>(BY_GROUP_AND_NUMBER);
        List<Said> whole = new ArrayList<>();
        for (SentSheet.Field sent : sheet.fields()) {
            SentSheet.Field field = new SentSheet.Field(PhoneNames.today(sent.name()), sent.value());
            Matcher row = PhoneNames.ROW.matcher(field.name());
            if (row.matches()) {
                rows.computeIfAbsent(row.group("list") + "-" + row.group("row"), k -> new ArrayList<>())
                        .add(field);
            } else if (!field.value().isBlank() && !WHOLE_IDS.contains(field.name())) {
                whole.add(field.name().equals("completedOn") ? day(field, words) : said(field, words));
            }
        }
        List<Part> parts = new ArrayList<>();
        rows.forEach((row, fields) -> {
            Part part = part(row, fields, words, stored);
            if (!part.photos().isEmpty() || !part.said().isEmpty()) {
                parts.add(part);
            }
        });
        parts.add(new Part(view.t("sheets.sent.whole"), List.copyOf(whole), List.of()));
        return List.copyOf(parts);
    }

    /** What values that forms send are called, and what the fields measure in. */
    private record Words(Map<String, String> known, Map<String, Unit> units, View view) {
        /** What stood beside a number that was typed; empty for anything else. */
        String unit(SentSheet.Field field) {
            String name = field.name();
            if (!NUMBER.matcher(field.value()).matches()) {
                return "";
            }
            if (name.endsWith("Minutes")) {
                return view.t("sheets.minutes");
            }
            if (name.endsWith("-tapWater") || name.endsWith("-pureWater")) {
                return view.t("sheets.ppm");
            }
            Unit unit = units.get(name);
            return unit == null ? "" : view.unit(unit);
        }
    }

    private Map<String, Unit> units(Visit visit, SentSheet sheet, View view) {
        MultivaluedMap<String, String> sent = new MultivaluedHashMap<>();
        sheet.fields().forEach(field -> sent.add(field.name(), field.value()));
        return SheetForm.units(TakeSheet.fields(sent, Notation.PLAIN), visit.lines(), sheetPages.known(visit, view));
    }

    private static Part part(String row, List<SentSheet.Field> fields, Words words, Set<PhotoId> stored) {
        String title = words.view().t("sheets.sent.row." + group(row));
        List<Said> said = new ArrayList<>();
        List<PhotoId> photos = new ArrayList<>();
        boolean saysSomething = false;
        for (SentSheet.Field field : fields) {
            Matcher name = PhoneNames.ROW.matcher(field.name());
            if (!name.matches() || field.value().isBlank()) {
                continue;
            }
            String what = name.group("name");
            if (IDS.contains(what)) {
                title = words.known().getOrDefault(field.value(), title);
            } else if (what.equals("photo")) {
                stored.stream()
                        .filter(photo -> photo.toString().equals(field.value()))
                        .forEach(photos::add);
            } else {
                saysSomething |= !PRESET.contains(what);
                said.add(said(field, words));
            }
        }
        return new Part(title, saysSomething ? List.copyOf(said) : List.of(), List.copyOf(photos));
    }

    /** The day as the company writes it; whatever else was sent stays as it was. */
    private static Said day(SentSheet.Field field, Words words) {
        try {
            return new Said(PhoneNames.label(field.name()), words.view().date(LocalDate.parse(field.value())));
        } catch (DateTimeException e) {
            return said(field, words);
        }
    }

    /** A quantity of a script comes with its unit; what people typed stays as they typed it, with the unit that stood beside. */
    private static Said said(SentSheet.Field field, Words words) {
        String label = PhoneNames.label(field.name());
        if (OWN_WORDS.matcher(field.name()).matches()) {
            return new Said(label, field.value());
        }
        if (SentBody.isQuantity(field.value())) {
            return new Said(label, words.view().sentence(field.value()));
        }
        String unit = words.unit(field);
        String value = words.known().getOrDefault(field.value(), field.value());
        return new Said(label, unit.isEmpty() ? value : value + "\u00a0" + unit);
    }

    /** What the values that forms send are called. */
    private Map<String, String> known(Visit visit, View view) {
        Map<String, String> known = new HashMap<>();
        sheetFacts.plan(visit).forEach(work -> known.put(work.id().toString(), work.what()));
        catalog.serviceItems().forEach(o -> known.put(o.id().toString(), o.name()));
        catalog.lines().forEach(line -> known.put(line.id().toString(), line.name()));
        readSurfaces.ofSite(visit.site()).forEach(s -> known.put(s.id().toString(), s.name()));
        readFindings.types().forEach(type -> known.put(type.code().value(), type.name()));
        readFindings.severities().forEach(s -> known.put(s.code().value(), s.name()));
        for (SkipReason reason : SkipReason.values()) {
            known.putIfAbsent(reason.name(), view.t("visits.skip", reason));
        }
        readStock.items().forEach(item -> known.put(item.id().toString(), item.name()));
        readStock.mixes().forEach(mix -> known.put(mix.id().toString(), mix.name()));
        for (Location location : readStock.locations()) {
            known.put(location.id().toString(), location.name());
            for (LotLevel lot : readStock.countedSingly(location.id())) {
                known.put(lot.lot().toString(), VanStock.name(lot));
                known.put(lot.item().id() + "/" + lot.lot(), VanStock.name(lot));
            }
        }
        known.put(SheetForm.NEW, view.t("sheets.extra.new"));
        known.put("yes", view.t("common.yes"));
        return known;
    }
}
