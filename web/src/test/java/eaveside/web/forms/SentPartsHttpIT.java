package eaveside.web.forms;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.web.testing.Server;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Forms with files whose parts no browser would send. */
class SentPartsHttpIT {
    private static final Server SERVER = Server.shared();

    @Test
    void a_part_that_cannot_be_read_is_refused() {
        HttpClient owner = SERVER.signedIn(Server.OWNER, Server.OWNER_PASSWORD);
        String file = "Content-Disposition: form-data; name=\"file\"; filename=\"a.csv\"\r\n";
        for (String head : List.of(
                "",
                "nocolon\r\n",
                "Content-Disposition:\r\n",
                "Content-Disposition: form-data\r\n",
                "Content-Disposition: ;;;=\r\n",
                "Content-Disposition: form-data; name=\"file\"; creation-date=\"x\"\r\n",
                file + "Content-Transfer-Encoding: nope\r\n",
                file + "Content-Type: ///\r\n",
                file + "Content-Type: */*\r\n",
                file + "Content-Type: text/csv; charset=nope\r\n")) {
            var answer = sent(owner, "--b\r\n" + head + "\r\na,b\r\n--b--\r\n");
            assertTrue(
                    answer.statusCode() == 400 || answer.statusCode() == 422,
                    () -> head + " -> " + answer.statusCode());
        }
        assertEquals(422, sent(owner, "--b\r\n" + file + "\r\na,b\r\n--b--\r\n").statusCode());
    }

    private static HttpResponse<String> sent(HttpClient client, String body) {
        return SERVER.send(
                client,
                HttpRequest.newBuilder(SERVER.at("customers/import"))
                        .header("Accept", "text/html")
                        .header("Sec-Fetch-Site", "same-origin")
                        .header("Content-Type", "multipart/form-data; boundary=b")
                        .POST(HttpRequest.BodyPublishers.ofString(body))
                        .build());
    }
}
