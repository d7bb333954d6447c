package eaveside.web.security;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.kernel.Ids;
import eaveside.schema.BooksProof;
import eaveside.web.testing.OnItsOwnCompany;
import eaveside.web.testing.Server;
import eaveside.web.testing.Visitor;
import java.io.IOException;
import java.math.BigDecimal;
import java.net.http.HttpResponse;
import java.sql.SQLException;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Whatever is taken can be added up, shown and closed: the largest amounts that are taken, again and again, until their sums are
 * far beyond any amount that is taken; then every address is read.
 */
@Tag("long")
@OnItsOwnCompany
class HugeSumsHttpIT {
    private static final String LARGEST = "999999999999.99";
    private static final int ROWS = 500;
    private static final int JOURNALS = 6;
    private static final int PAYMENTS = 1_100;

    private static Server server;
    private static Visitor owner;

    @BeforeAll
    static void start() {
        server = Server.demoAt(Clock.systemUTC().instant());
        owner = Visitor.signedIn(server, "edda", server.passwordOf("edda"));
    }

    @AfterAll
    static void stop() {
        server.stop();
    }

    @Test
    void every_sum_can_be_read() throws SQLException, IOException {
        LocalDate today = LocalDate.parse(value("select max(posting_date)::text from document"));
        for (LocalDate day : List.of(today.minusMonths(1), today)) {
            for (int i = 0; i < JOURNALS; i++) {
                taken(post("api/books/journals", journal(day)));
            }
        }
        taken(post("api/stock/receipts", receipt(today)));
        String customer = value("select id::text from customer order by name limit 1");
        for (int i = 0; i < PAYMENTS; i++) {
            taken(post("api/payments", payment(customer, today)));
        }
        String month = today.minusMonths(1).toString().substring(0, 7);
        taken(post("api/books/months/" + month + "/close", "{\"id\":\"" + Ids.next() + "\"}"));

        assertTrue(new BigDecimal(value("select sum(abs(amount))::text from money_entry"))
                        .compareTo(new BigDecimal("1E15"))
                > 0);
        List<String> broken = new ArrayList<>();
        for (List<String> addresses : Addresses.all(server.database().asOwner()).values()) {
            for (String address : addresses) {
                HttpResponse<String> answer = owner.get(address.substring(1));
                if (answer.statusCode() >= 400) {
                    broken.add(address + " -> " + answer.statusCode());
                }
            }
        }
        assertEquals(List.of(), broken);
        try (var connection = server.database().asOwner().getConnection()) {
            for (BooksProof.Result proof : BooksProof.run(connection)) {
                assertTrue(proof.holds(), proof.toString());
            }
        }
    }

    /** As many rows as a document has, half of them on each side; the account of pay is one whose variance a close keeps. */
    private static String journal(LocalDate day) {
        String debit = "{\"account\":\"6000\",\"debit\":" + money() + "}";
        String credit = "{\"account\":\"1000\",\"credit\":" + money() + "}";
        return "{\"id\":\"" + Ids.next() + "\",\"type\":\"JOURNAL\",\"date\":\"" + day
                + "\",\"summary\":\"Large\",\"lines\":["
                + String.join(",", Collections.nCopies(ROWS / 2, debit + "," + credit)) + "]}";
    }

    private static String receipt(LocalDate day) {
        String item = value("select item_id::text from pack order by item_id limit 1");
        String unit = value("select base_unit from stock_item where id::text = ?", item);
        List<String> lines = new ArrayList<>();
        for (int i = 0; i < ROWS; i++) {
            lines.add("{\"lot\":\"" + Ids.next() + "\",\"item\":\"" + item
                    + "\",\"quantity\":{\"value\":\"1\",\"unit\":\"" + unit + "\"},\"cost\":" + money() + "}");
        }
        return "{\"id\":\"" + Ids.next() + "\",\"date\":\"" + day + "\",\"supplier\":\"Large\",\"location\":\""
                + value("select id::text from location order by id limit 1") + "\",\"lines\":["
                + String.join(",", lines) + "]}";
    }

    private static String payment(String customer, LocalDate day) {
        return "{\"id\":\"" + Ids.next() + "\",\"customer\":\"" + customer + "\",\"date\":\"" + day + "\",\"amount\":"
                + money() + ",\"method\":\"CASH\",\"reference\":\"Large\",\"allocations\":[],\"keepAsCredit\":true}";
    }

    private static String money() {
        return "{\"amount\":\"" + LARGEST + "\",\"currency\":\"USD\"}";
    }

    private static String value(String sql, Object... parameters) {
        return Visitor.value(server, sql, parameters);
    }

    private static HttpResponse<String> post(String path, String body) {
        return owner.json("POST", path, body);
    }

    private static void taken(HttpResponse<String> answer) {
        assertEquals(201, answer.statusCode(), answer.body());
    }
}
