package eaveside.web.books;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.web.testing.Visitor;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** The chart of accounts, by page and for scripts. */
class AccountsHttpIT {
    private final Visitor owner = Visitor.owner();

    @BeforeAll
    static void openBooks() {
        Visitor.letOfficeReadBooks(true);
    }

    @AfterAll
    static void closeBooks() {
        Visitor.letOfficeReadBooks(false);
    }

    @Test
    void the_owner_adds_an_account_that_journals_may_name() {
        Map<String, String> account = Map.of("code", "6310", "name", "Ladders and ropes", "type", "EXPENSE");
        var added = owner.post("books/accounts", account);
        assertEquals(303, added.statusCode());
        assertTrue(Visitor.text(owner.get("books/accounts")).contains("6310 Ladders and ropes Expense"));
        assertTrue(Visitor.page(owner.get("books/journal"))
                        .select("option[value=6310]")
                        .size()
                > 0);

        assertEquals(303, owner.post("books/accounts", account).statusCode(), "the same again is a retry");
        assertEquals("1", Visitor.value("select count(*) from account where code = ?", "6310"));
        assertEquals(
                "1",
                Visitor.value("select count(*) from audit_event where action = 'account.add' and subject = ?", "6310"));
        assertTrue(Visitor.text(owner.get("books/accounts?q=ladders")).contains("Ladders and ropes"));
        assertTrue(owner.get("books/accounts/list.csv").body().contains("6310"));

        var again = owner.post("books/accounts", Map.of("code", "6310", "name", "Ropes only", "type", "EXPENSE"));
        assertEquals(409, again.statusCode());
        assertTrue(Visitor.text(again).contains("is taken by another account"), Visitor.text(again));
        assertEquals("6310", Visitor.page(again).select("#code").attr("value"), "what was typed is still there");
    }

    @Test
    void a_number_that_is_none_is_marked() {
        var refused = owner.post("books/accounts", Map.of("code", "63", "name", "Ropes", "type", "EXPENSE"));
        assertEquals(422, refused.statusCode());
        assertEquals("Ropes", Visitor.page(refused).select("#name").attr("value"));
        assertEquals(
                422,
                owner.post("books/accounts", Map.of("code", "6311", "name", "", "type", ""))
                        .statusCode());
    }

    @Test
    void the_office_looks_and_does_not_add() {
        Visitor office = Visitor.office();
        assertEquals(200, office.get("books/accounts").statusCode());
        assertTrue(Visitor.page(office.get("books/accounts"))
                .select("main a[href$=/new]")
                .isEmpty());
        assertEquals(403, office.get("books/accounts/new").statusCode());
        assertEquals(
                403,
                office.post("books/accounts", Map.of("code", "6312", "name", "Rope", "type", "EXPENSE"))
                        .statusCode());
        assertEquals(403, Visitor.technician().get("books/accounts").statusCode());
    }

    @Test
    void scripts_do_the_same() {
        String body = "{\"code\": \"6320\", \"name\": \"Training\", \"type\": \"EXPENSE\"}";
        var added = owner.json("POST", "api/books/accounts", body);
        assertEquals(201, added.statusCode(), added.body());
        String location = added.headers().firstValue("Location").orElseThrow();
        assertTrue(location.endsWith("/api/books/accounts/6320"), location);
        assertEquals(added.body(), owner.getJson("api/books/accounts/6320").body());
        var again = owner.json("POST", "api/books/accounts", body);
        assertEquals(201, again.statusCode(), "a retry is answered as before");
        assertEquals(added.body(), again.body());
        assertEquals(
                409,
                owner.json("POST", "api/books/accounts", body.replace("Training", "Courses"))
                        .statusCode());
        assertEquals(404, owner.getJson("api/books/accounts/6399").statusCode());
        assertEquals(
                400,
                owner.json("POST", "api/books/accounts", body.replace("EXPENSE", "WISH"))
                        .statusCode());
        assertEquals(
                403, Visitor.office().json("POST", "api/books/accounts", body).statusCode());
        assertTrue(owner.getJson("api/books/accounts").body().contains("\"6320\""));
    }
}
