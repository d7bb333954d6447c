package eaveside.web.sheets;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;

import eaveside.findings.FindingTypeCode;
import eaveside.kernel.DocumentId;
import eaveside.kernel.FindingId;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.LotId;
import eaveside.kernel.PhotoId;
import eaveside.kernel.Quantity;
import eaveside.kernel.ServiceItemId;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.SurfaceId;
import eaveside.kernel.Unit;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitId;
import eaveside.kernel.VisitLineId;
import eaveside.visits.JobSheet;
import eaveside.visits.SkipReason;
import eaveside.visits.Visit;
import eaveside.web.Notation;
import eaveside.web.forms.Fields;
import jakarta.ws.rs.core.MultivaluedHashMap;
import jakarta.ws.rs.core.MultivaluedMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.joda.money.CurrencyUnit;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

class SheetFormTest {
    private static final Notation US = new Notation(Locale.US, CurrencyUnit.USD);
    private static final VisitId VISIT = VisitId.next();
    private static final UserId SIGNER = UserId.next();
    private static final SurfaceId ARRAY = SurfaceId.next();
    private static final Visit.Line PANELS = new Visit.Line(
            VisitLineId.next(), ServiceItemId.next(), ServiceLineId.next(), ARRAY, pieces(48), null, null);
    private static final Known KNOWN = new Known(
            Map.of(),
            Map.of(),
            Map.of(),
            Set.of(new FindingTypeCode("CRACKED_GLASS"), new FindingTypeCode("OTHER")),
            Unit.US_GALLON,
            Unit.MILE);

    private final MultivaluedMap<String, String> form = new MultivaluedHashMap<>();

    private static Quantity pieces(int units) {
        return Quantity.of(units, Unit.PIECE);
    }

    @BeforeEach
    void all_done() {
        form.putSingle("id", DocumentId.next().toString());
        form.putSingle("completedOn", "2026-03-31");
        form.putSingle("line-0-id", PANELS.id().toString());
        form.putSingle("line-0-done", "48");
        form.putSingle("onSiteMinutes", "120");
        form.putSingle("drivingMinutes", "0");
        form.putSingle("loadingMinutes", "0");
        form.putSingle("distance", "12.5");
        // What the page sends in rows that nothing was entered in.
        form.putSingle("line-0-skip-0-finding", FindingId.next().toString());
        form.putSingle("line-0-skip-0-quantity", "");
        form.putSingle("extra-0-id", VisitLineId.next().toString());
        form.putSingle("extra-0-new", SurfaceId.next().toString());
        form.putSingle("finding-0-id", FindingId.next().toString());
        form.putSingle("surface-0-id", ARRAY.toString());
        form.putSingle("reading-0-canister", LotId.next().toString());
        form.putSingle("mix-0-line", ServiceLineId.next().toString());
        form.putSingle("count-id", DocumentId.next().toString());
        form.putSingle("count-reason", "");
    }

    private @Nullable JobSheet read(Fields fields) {
        return SheetForm.read(fields, VISIT, List.of(PANELS), KNOWN, SIGNER).sheet();
    }

    private JobSheet sheet() {
        Fields fields = TakeSheet.fields(form, US);
        JobSheet sheet = read(fields);
        return Objects.requireNonNull(sheet, () -> fields.errors().toString());
    }

    private void skipTwo(String reason) {
        form.putSingle("line-0-done", "46");
        form.putSingle("line-0-skip-0-quantity", "2");
        form.putSingle("line-0-skip-0-reason", reason);
        form.putSingle("line-0-skip-0-note", "Row two");
    }

    @Test
    void rows_that_say_nothing_are_none_and_the_same_fields_make_the_same_sheet() {
        JobSheet sheet = sheet();
        assertEquals(List.of(new JobSheet.DoneLine(PANELS.id(), pieces(48), List.of())), sheet.lines());
        assertEquals(List.of(), sheet.extras());
        assertEquals(List.of(), sheet.findings());
        assertEquals(List.of(), sheet.readings());
        assertEquals(List.of(), sheet.used());
        assertEquals(List.of(), sheet.surfaceFacts());
        assertNull(sheet.count());
        assertEquals(
                Quantity.of("12.5", Unit.MILE), sheet.effort().distance(), "number fields send a point everywhere");
        assertEquals(sheet, sheet());
    }

    /** What the page does not ask for stays with its list, which its section knows. */
    @Test
    void what_is_refused_stands_where_the_page_asks_for_it() {
        form.putSingle("finding-0-type", "OTHER");
        form.putSingle("finding-0-severity", "SOON");
        form.put("finding-0-photo", List.of(PhotoId.next().toString()));
        form.putSingle("line-0-skip-0-quantity", "");
        Fields fields = TakeSheet.fields(form, US);
        SheetForm.Read read = SheetForm.read(fields, VISIT, List.of(PANELS), KNOWN, SIGNER);
        read.refused(new KernelRefusal.TooMany("findings[0].photos", 13, 12));
        read.refused(new KernelRefusal.NotPositive("effort.onSiteMinutes"));
        read.refused(new KernelRefusal.NotPositive("newSurfaces[0].rows"));
        assertEquals(
                Set.of("finding-0-photo", "onSiteMinutes", "newSurfaces[0].rows"),
                fields.errors().keySet());
    }

    @Test
    void a_cracked_unit_is_a_finding_and_so_is_what_was_photographed() {
        skipTwo("CRACKED");
        form.putSingle("line-0-skip-0-customerNotified", "yes");
        JobSheet.Seen cracked = sheet().findings().getFirst();
        assertEquals("CRACKED_GLASS", cracked.type().value());
        assertEquals("SOON", cracked.severity().value());
        assertEquals(ARRAY, cracked.surface());
        assertEquals("Row two", cracked.note());
        assertEquals(true, cracked.customerNotified());
        assertEquals(cracked.id(), sheet().lines().getFirst().skips().getFirst().finding());

        skipTwo("WEATHER");
        assertEquals(List.of(), sheet().findings());
        JobSheet.Skip skip = sheet().lines().getFirst().skips().getFirst();
        assertEquals(new JobSheet.Skip(pieces(2), SkipReason.WEATHER, "Row two", null), skip);

        PhotoId photo = PhotoId.next();
        form.putSingle("line-0-skip-0-photo", photo.toString());
        assertEquals("OTHER", sheet().findings().getFirst().type().value());
        assertEquals(List.of(photo), sheet().findings().getFirst().photos());
    }

    @Test
    void errors_stand_at_the_fields_of_the_page() {
        skipTwo("");
        form.putSingle("mix-0-volume", "some");
        form.putSingle("item-0-item", "");
        form.putSingle("item-0-quantity", "3");
        form.putSingle("finding-0-note", "Rust");
        form.putSingle("count-0-found", "3");
        form.putSingle("reading-0-tapWater", "4");
        form.putSingle("reading-0-pureWater", "310");
        form.putSingle("reading-0-volume", "20");
        Fields fields = TakeSheet.fields(form, US);
        assertNull(read(fields));
        for (String name : List.of(
                "line-0-skip-0-reason",
                "mix-0-mix",
                "mix-0-volume",
                "item-0-item",
                "finding-0-type",
                "finding-0-severity",
                "count-0-item",
                "count-reason",
                "reading-0-pureWater")) {
            assertNotNull(fields.error(name), name + " in " + fields.errors());
        }
    }

    /** A page kept on a phone from before wrote numbers as number fields do. */
    @Test
    void numbers_are_as_the_company_writes_them_unless_an_older_page_kept_them() {
        Notation german = new Notation(Locale.of("en", "DE"), CurrencyUnit.EUR);
        form.putSingle("distance", "12.5");
        JobSheet older = Objects.requireNonNull(read(TakeSheet.fields(form, german)));
        assertEquals("12.5", older.effort().distance().value().toPlainString());
        form.putSingle("numbers", TakeSheet.COMPANY);
        Fields refused = TakeSheet.fields(form, german);
        assertNull(read(refused));
        assertEquals(Set.of("distance"), refused.errors().keySet());
        form.putSingle("distance", "12,5");
        JobSheet today = Objects.requireNonNull(read(TakeSheet.fields(form, german)));
        assertEquals("12.5", today.effort().distance().value().toPlainString());
    }

    @Test
    void what_is_said_of_a_skip_without_how_many_is_asked_for() {
        form.putSingle("line-0-skip-0-note", "Row two");
        Fields fields = TakeSheet.fields(form, US);
        assertNull(read(fields));
        assertNotNull(fields.error("line-0-skip-0-quantity"));
    }

    @Test
    void a_line_that_the_plan_does_not_have_or_does_not_get_is_told() {
        form.putSingle("line-0-id", VisitLineId.next().toString());
        Fields fields = TakeSheet.fields(form, US);
        assertNull(read(fields));
        assertNotNull(fields.error("lines"));
    }
}
