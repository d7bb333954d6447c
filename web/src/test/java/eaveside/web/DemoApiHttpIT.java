package eaveside.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.web.security.Addresses;
import eaveside.web.testing.Described;
import eaveside.web.testing.LooksAtDemo;
import eaveside.web.testing.Server;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** The description of the interface for scripts is true of months of a company's business. */
@LooksAtDemo
class DemoApiHttpIT {
    @Test
    void everything_that_the_demo_company_can_read_is_as_described() throws SQLException {
        Described described = Described.ofServer();
        Server demo = Server.demo();
        HttpClient edda = demo.signedIn("edda", demo.passwordOf("edda"));
        Map<String, List<String>> addresses =
                Addresses.under("/api/", demo.database().asOwner());
        List<String> wrong = new ArrayList<>();
        int read = 0;
        for (var template : addresses.entrySet()) {
            for (String address : template.getValue()) {
                HttpResponse<String> answer = demo.send(
                        edda,
                        HttpRequest.newBuilder(demo.at(address.substring(1)))
                                .header("Accept", "application/json")
                                .build());
                assertEquals(200, answer.statusCode(), address + ": " + answer.body());
                wrong.addAll(described.check("GET", address, 200, null, answer.body()));
                read++;
            }
        }
        assertEquals(List.of(), wrong);
        assertTrue(read > 40, read + " addresses");
    }
}
