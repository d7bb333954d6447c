package eaveside.web.security;

import static org.junit.jupiter.api.Assertions.assertEquals;

import eaveside.web.testing.Visitor;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** No change stays off the audit log, whether its page names it or not; what changes nothing is not on it. */
class AuditLogHttpIT {
    private final Visitor office = Visitor.office();
    private final Visitor owner = Visitor.owner();

    private static int events() {
        return Integer.parseInt(Visitor.value("select count(*) from audit_event where outcome = 'DONE'"));
    }

    private static String last() {
        return Visitor.value("select action || ' ' || subject from audit_event order by at desc, id desc limit 1");
    }

    @Test
    void a_change_is_told_by_its_use_case_and_not_once_more_by_its_page() {
        Map<String, String> form = office.form("customers/new", "/customers/save");
        form.put("name", "Linden Ashgrove");
        int before = events();
        var saved = office.post("customers/save", form);
        assertEquals(303, saved.statusCode());
        assertEquals(before + 1, events());
        assertEquals("customer.save " + form.get("id"), last());
    }

    @Test
    void a_form_that_is_shown_again_changed_nothing() {
        Map<String, String> form = office.form("customers/new", "/customers/save");
        int before = events();
        assertEquals(422, office.post("customers/save", form).statusCode());
        assertEquals(before, events());
    }

    @Test
    void working_something_out_is_not_told() {
        int before = events();
        var worked = office.json("POST", "api/invoices/preview", """
                {"currency": "USD", "lines": [{"quantity": {"value": 2, "unit": "C62"},
                  "price": {"gross": {"amount": 10, "currency": "USD", "per": {"value": 1, "unit": "C62"}}},
                  "tax": {"category": "S", "rate": 5}}]}
                """);
        assertEquals(200, worked.statusCode(), worked.body());
        assertEquals(before, events());
    }

    @Test
    void a_deed_that_the_use_case_tells_is_told_once() {
        int before = events();
        owner.hire("Rowan Birchfield", "log.hire", "TECHNICIAN");
        assertEquals(
                "1",
                Visitor.value(
                        "select count(*) from audit_event where action = 'user.added' and subject = ?", "log.hire"));
        // Added, signed in for the first time, and chose a password.
        assertEquals(before + 3, events());
    }

    @Test
    void a_month_that_is_none_is_refused_by_name() {
        var refused = owner.post("books/close", Map.of("month", "next"));
        assertEquals(422, refused.statusCode());
        assertEquals(422, owner.post("books/close", Map.of()).statusCode());
    }
}
