package eaveside.web.forms;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.access.NewPassword;
import eaveside.kernel.Check;
import eaveside.kernel.CustomerId;
import eaveside.kernel.Default;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Money;
import eaveside.kernel.Percent;
import eaveside.kernel.Quantity;
import eaveside.kernel.Refusal;
import eaveside.kernel.Unit;
import eaveside.kernel.UserId;
import eaveside.kernel.Versioned;
import eaveside.web.Notation;
import jakarta.json.Json;
import jakarta.json.JsonObject;
import jakarta.ws.rs.core.MultivaluedHashMap;
import jakarta.ws.rs.core.MultivaluedMap;
import java.io.StringReader;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.joda.money.CurrencyUnit;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

class FormTest {
    private static final Notation US = new Notation(Locale.US, CurrencyUnit.USD);
    private static final CustomerId ID = CustomerId.of("01890000-0000-7000-8000-000000000001");

    public enum Color {
        RED,
        GREEN
    }

    public record Part(String street, @Default("") String city) {}

    public record Row(
            CustomerId id, Quantity quantity, @Nullable Money cost) {}

    public record Thing(
            CustomerId id,
            String name,
            @Default("") String note,
            Color color,
            @Nullable Color accent,
            Part part,
            LocalDate day,
            int days,
            boolean active,
            @Default List<Row> lines,
            @Default List<UserId> crew,
            @Default Map<Color, Integer> counts,
            UserId by,
            @Default("0") int version)
            implements Versioned {
        public Thing {
            Check check = new Check();
            name = check.required("name", name, 10);
            note = check.optional("note", note, 5);
            check.between("days", days, 0, 365);
            check.done();
        }
    }

    private static final UserId BY = UserId.of("01890000-0000-7000-8000-000000000009");

    private static MultivaluedMap<String, String> typed() {
        MultivaluedMap<String, String> typed = new MultivaluedHashMap<>();
        Map.ofEntries(
                        Map.entry("id", ID.toString()),
                        Map.entry("name", " Maple "),
                        Map.entry("color", "GREEN"),
                        Map.entry("accent", ""),
                        Map.entry("street", "1 Road"),
                        Map.entry("day", "2026-03-02"),
                        Map.entry("days", "1,0"),
                        Map.entry("active", "yes"),
                        Map.entry("line-0-id", ID.toString()),
                        Map.entry("line-0-quantity", "1,250.5"),
                        Map.entry("line-0-cost", "$12.50"),
                        Map.entry("line-1-id", ID.toString()),
                        Map.entry("line-1-quantity", ""),
                        Map.entry("RED", "3"))
                .forEach(typed::putSingle);
        typed.add("crew", BY.toString());
        typed.add("crew", ID.toString());
        return typed;
    }

    private static Form<Thing> form(MultivaluedMap<String, String> typed) {
        return Form.sent(Thing.class, Fields.of(typed, US)).given("by", BY).in(Unit.US_GALLON);
    }

    @Test
    void a_form_becomes_its_record() {
        var typed = typed();
        typed.putSingle("days", "10");

        Thing thing = form(typed).read();

        assertEquals("Maple", thing.name());
        assertEquals(Color.GREEN, thing.color());
        assertNull(thing.accent());
        assertEquals(new Part("1 Road", ""), thing.part());
        assertEquals(1, thing.lines().size(), "a row with nothing in it is no row");
        assertEquals(
                Quantity.of("1250.5", Unit.US_GALLON), thing.lines().getFirst().quantity());
        assertEquals(
                Money.of(CurrencyUnit.USD, "12.50"), thing.lines().getFirst().cost());
        assertEquals(2, thing.crew().size());
        assertEquals(Map.of(Color.RED, 3), thing.counts());
        assertEquals(BY, thing.by());
        assertEquals(0, thing.version());
        assertTrue(thing.active());
    }

    @Test
    void all_that_is_wrong_is_said_at_once_and_nothing_typed_is_lost() {
        var typed = typed();
        typed.putSingle("name", "");
        typed.putSingle("color", "BLUE");
        typed.putSingle("line-0-quantity", "1,25");

        Form<Thing> form = form(typed);

        assertNull(form.read());
        assertEquals(
                List.of("name", "color", "days", "line-0-quantity").stream()
                        .sorted()
                        .toList(),
                form.fields().errors().keySet().stream().sorted().toList());
        assertEquals("Name is required", form.fields().error("name"));
        assertEquals("1,25", form.fields().typed("line-0-quantity"));
        assertEquals("BLUE", form.fields().typed("color"));
    }

    @Test
    void what_the_record_refuses_stands_at_its_fields_too() {
        var typed = typed();
        typed.putSingle("days", "400");
        typed.putSingle("note", "much too long");
        typed.putSingle("name", "also much too long");

        Form<Thing> form = form(typed);

        assertNull(form.read());
        assertEquals(
                List.of("days", "name", "note"),
                form.fields().errors().keySet().stream().sorted().toList());
    }

    @Test
    void a_record_shown_and_sent_again_is_the_same() {
        var typed = typed();
        typed.putSingle("days", "10");
        Thing thing = form(typed).read();

        Form<Thing> shown = Form.showing(thing, US);
        MultivaluedMap<String, String> again = new MultivaluedHashMap<>();
        shown.fields().names().forEach(name -> again.put(name, shown.fields().all(name)));

        assertEquals(thing, form(again).read());
        assertEquals("12.50", shown.fields().typed("line-0-cost"));
    }

    @Test
    void whoever_saved_meanwhile_is_shown_with_what_differs() {
        var typed = typed();
        typed.putSingle("days", "10");
        Form<Thing> form = form(typed);

        boolean saved = form.run(mine -> {
            Thing theirs =
                    (Thing) eaveside.kernel.Records.with(mine, "name", "Oak").withVersion(7);
            throw new KernelRefusal.Stale("thing", mine, theirs);
        });

        assertFalse(saved);
        assertEquals(409, form.fields().status());
        assertEquals("7", form.fields().version());
        assertTrue(
                form.differences().contains(new Form.Difference("Name", "Oak", "Maple")),
                form.differences().toString());
        assertEquals(1, form.differences().size(), form.differences().toString());
    }

    @Test
    void a_body_becomes_its_record() {
        Thing thing = JsonReading.read(Thing.class, json("""
                        {"id":"%s","name":"Maple","color":"RED","part":{"street":"1 Road"},"day":"2026-03-02","days":3,
                         "active":true,
                         "lines":[{"id":"%s","quantity":{"value":"2.5","unit":"GLL"},
                                   "cost":{"amount":"12.50","currency":"USD"}}],
                         "crew":["%s"],"counts":{"GREEN":2}}""".formatted(ID, ID, BY)), Map.of("by", BY, "id", ID));

        assertEquals(
                Quantity.of("2.5", Unit.US_GALLON), thing.lines().getFirst().quantity());
        assertEquals(Map.of(Color.GREEN, 2), thing.counts());
        JsonObject written = JsonWriting.of(thing).asJsonObject();
        assertEquals(
                "2.5",
                written.getJsonArray("lines")
                        .getJsonObject(0)
                        .getJsonObject("quantity")
                        .getString("value"));
        assertEquals(thing, JsonReading.read(Thing.class, written, Map.of()));
    }

    @Test
    void a_body_is_told_everything_that_is_wrong_with_it() {
        Refusal refusal = assertThrows(
                Refusal.class,
                () -> JsonReading.read(Thing.class, json("""
                                {"nme":"Maple","color":"BLUE","part":{"street":1},"day":"yesterday","days":"3",
                                 "active":true,"lines":[{"id":"%s","quantity":{"value":"2.5"}}],"crew":[],"counts":{}}""".formatted(ID)), Map.of("by", BY, "id", ID)));

        assertEquals(400, refusal.type().status());
        assertEquals(
                List.of("color", "day", "days", "lines[0].quantity.unit", "name", "nme", "part.street"),
                refusal.fields().stream().sorted().toList());
    }

    @Test
    void a_body_cannot_outrank_its_address() {
        Refusal refusal = assertThrows(
                Refusal.class,
                () -> JsonReading.read(Part.class, json("{\"street\":\"1 Road\"}"), Map.of("street", "2 Road")));

        assertEquals(List.of("street"), refusal.fields());
    }

    private static JsonObject json(String text) {
        try (var reader = Json.createReader(new StringReader(text))) {
            return reader.readObject();
        }
    }

    public record Code(String value) {
        public Code {
            if (!value.matches("[A-Z]+")) {
                throw new KernelRefusal.Unfit("code", "{field} takes capitals");
            }
        }
    }

    public record Coded(
            Code abbreviation,
            @Default("12.5") Percent rate,
            @Nullable Quantity height) {}

    @Test
    void what_a_code_refuses_is_told_of_the_field_that_holds_it() {
        MultivaluedMap<String, String> typed = new MultivaluedHashMap<>();
        typed.putSingle("abbreviation", "small");
        Form<Coded> form = Form.sent(Coded.class, Fields.of(typed, US));
        assertNull(form.read());
        assertEquals("Abbreviation takes capitals", form.fields().error("abbreviation"));
        assertEquals("small", form.fields().typed("abbreviation"));
        JsonObject body =
                Json.createObjectBuilder().add("abbreviation", "small").build();
        Refusal refused = assertThrows(Refusal.class, () -> JsonReading.read(Coded.class, body, Map.of()));
        assertEquals(List.of("abbreviation"), refused.fields());
    }

    @Test
    void a_default_is_of_the_type_of_its_field() {
        JsonObject body = Json.createObjectBuilder().add("abbreviation", "A").build();
        assertEquals(
                Percent.of("12.5"),
                JsonReading.read(Coded.class, body, Map.of()).rate());
    }

    @Test
    void a_quantity_is_shown_and_read_in_what_the_form_counts_in() {
        Coded kept = new Coded(new Code("A"), Percent.of("1"), Quantity.of(10, Unit.FOOT));
        Form<Coded> form = Form.showing(kept, US, quantity -> quantity.in(Unit.METER));
        assertEquals("3.048", form.fields().typed("height"));
        assertEquals(Unit.METER, form.unit("height"));
        assertNull(form.unit("rate"), "no quantity");
        Coded read = form.read();
        assertEquals(Quantity.of("3.048", Unit.METER), read == null ? null : read.height());
    }

    @Test
    void a_password_is_read_as_it_was_typed_and_shown_nowhere() {
        MultivaluedMap<String, String> typed = new MultivaluedHashMap<>();
        typed.putSingle("password", "short");
        Form<Secret> form = Form.sent(Secret.class, Fields.of(typed, US));
        assertNull(form.read());
        assertTrue(form.fields().error("password").startsWith("Password needs at least 15"));
        Secret secret = new Secret(new NewPassword(" larks over the gutter "));
        assertEquals("", Form.showing(secret, US).fields().typed("password"));
        assertFalse(JsonWriting.of(secret).toString().contains("larks"));
    }

    public record Secret(NewPassword password) {}

    /** What stands in a row of a row is not of the first row twice. */
    @Test
    void a_field_is_called_by_all_rows_that_it_is_in() {
        assertEquals("Amount in row 3", Fields.empty().label("line-2-amount"));
        assertEquals("Amount of adjustment 2 in row 1", Fields.empty().label("line-0-adjustment-1-amount"));
        Fields sheet = Fields.empty().labeled("sheets", "field");
        assertEquals(
                "Skipped of skip 1 in row 1",
                sheet.label("line-0-skip-0-quantity"),
                "not as the link that skips to the content");
    }
}
