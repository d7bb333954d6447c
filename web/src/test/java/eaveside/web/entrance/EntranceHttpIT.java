package eaveside.web.entrance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.web.testing.RawHttp;
import eaveside.web.testing.Server;
import eaveside.web.testing.Visitor;
import jakarta.json.Json;
import jakarta.json.JsonObject;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What the program says to requests that are none, and to those that take their time. */
class EntranceHttpIT {
    /** RFC 9112: one Host (3.2), one length (6.3); RFC 3986: what an address is made of. */
    private static final List<String> IN_TWO_WAYS = List.of(
            "GET /sign-in HTTP/1.1\r\nHost: a\r\nHost: b\r\n\r\n",
            "GET /sign-in HTTP/1.1\r\n\r\n",
            "GET /sign-in HTTP/1.1\r\nHost: a b\r\n\r\n",
            "GET /sign-in HTTP/1.1\r\nHost: [\r\n\r\n",
            "GET /sign-in HTTP/1.1\r\nHost: :\r\n\r\n",
            "GET /sign-in HTTP/1.1\r\nHost: a:b:c\r\n\r\n",
            "GET /sign-in HTTP/1.1\r\nHost: a:99999999\r\n\r\n",
            "POST /sign-in HTTP/1.1\r\nHost: a\r\nContent-Length: 5\r\nTransfer-Encoding: chunked\r\n\r\n0\r\n\r\n",
            "POST /sign-in HTTP/1.1\r\nHost: a\r\nTransfer-Encoding: chunked\r\nContent-Length: 5\r\n\r\n0\r\n\r\n",
            "POST /sign-in HTTP/1.1\r\nHost: a\r\nTransfer-Encoding: gzip, chunked\r\n\r\n0\r\n\r\n",
            "POST /sign-in HTTP/1.1\r\nHost: a\r\nTransfer-Encoding: chunked\r\nTransfer-Encoding: x\r\n\r\n0\r\n\r\n",
            "POST /sign-in HTTP/1.1\r\nHost: a\r\nContent-Length: 3\r\nContent-Length: 4\r\n\r\nabc",
            "POST /sign-in HTTP/1.1\r\nHost: a\r\nContent-Length: -1\r\n\r\n",
            "POST /sign-in HTTP/1.1\r\nHost: a\r\nContent-Length: +3\r\n\r\nabc",
            "POST /sign-in HTTP/1.1\r\nHost: a\r\nContent-Length: 3\r\nContent-Length: 3\r\n\r\nabc",
            "POST /sign-in HTTP/1.1\r\nHost: a\r\nContent-Length : 3\r\n\r\nabc",
            "POST /sign-in HTTP/1.1\r\nHost: a\r\nTransfer-Encoding:\r\n chunked\r\nContent-Length: 5\r\n\r\n0\r\n\r\n",
            "POST /sign-in HTTP/1.1\nHost: a\nContent-Length: 5\nTransfer-Encoding:\n\tchunked\n\n0\n\n",
            "GET /sign-in HTTP/1.1\r\nHost: a\r\nHost:\r\n b\r\n\r\n",
            "POST /sign-in HTTP/1.1\r\nHost: a\r\nContent-Length: 1\r\n 2\r\n\r\na",
            "POST /sign-in HTTP/1.1\r\nHost: a\r\r\nContent-Length: 5\r\nTransfer-Encoding: chunked\r\n\r\n0\r\n\r\n",
            "GET /sign-in HTTP/1.1\r\nHost: a\r\r\nHost: b\r\n\r\n",
            "GET /sign-in HTTP/1.1\r\nHost: a\r\nX: b\rHost: c\r\n\r\n",
            "\r\n\r\nGET /sign-in HTTP/1.1\r\nHost: a\r\nX: b\r\n c\r\n\r\n",
            "POST /sign-in HTTP/1.1\r\nHost: a\r\nTransfer-Encoding:\r\n chunked  \r\n\r\n0\r\n\r\n",
            "POST /sign-in HTTP/1.0\r\nHost: a\r\nTransfer-Encoding: chunked\r\n\r\n0\r\n\r\n",
            "POST /sign-in HTTP/1.1\r\nHost: a\r\nTransfer-Encoding: CHUNKED\r\n\r\n0\r\n\r\n",
            "POST /sign-in HTTP/1.1\rContent-Length: 5\nHost: a\r\n\r\nhello",
            "GET\t/sign-in\tHTTP/1.1\r\nHost: a\r\n\r\n",
            "GET http://b/sign-in HTTP/1.1\r\nHost: a\r\n\r\n",
            "GET http:///sign-in HTTP/1.1\r\nHost: a\r\n\r\n",
            "GET http://a:zz/sign-in HTTP/1.1\r\nHost: a\r\n\r\n",
            "GET http://a:zz/sign-in HTTP/1.1\r\nHost: a:zz\r\n\r\n",
            "GET http://a:\u00ff/sign-in HTTP/1.1\r\nHost: a\r\n\r\n",
            "GET http/../x://a/sign-in HTTP/1.1\r\nHost: a\r\n\r\n",
            "GET /sign-in HTTP/1.1\r\nHost: a\r\nX-Nul: a\0b\r\n\r\n",
            "GET /a:b HTTP/1.1\r\nHost: a\r\n\r\n",
            "GET /customers/x:y HTTP/1.1\r\nHost: a\r\n\r\n",
            "GET /worklist;eaveside=1 HTTP/1.1\r\nHost: a\r\n\r\n",
            "GET /worklist%3beaveside=1 HTTP/1.1\r\nHost: a\r\n\r\n",
            "GET /%zz HTTP/1.1\r\nHost: a\r\n\r\n",
            "GET /%2 HTTP/1.1\r\nHost: a\r\n\r\n",
            "GET /%73ign-in HTTP/1.1\r\nHost: a\r\n\r\n",
            "GET /api/%4Anvoices HTTP/1.1\r\nHost: a\r\n\r\n",
            "GET /photos/%30 HTTP/1.1\r\nHost: a\r\n\r\n",
            "GET /%7a HTTP/1.1\r\nHost: a\r\n\r\n",
            "GET /sign%2Din HTTP/1.1\r\nHost: a\r\n\r\n",
            "GET /a%2eb HTTP/1.1\r\nHost: a\r\n\r\n",
            "GET /a%5fb HTTP/1.1\r\nHost: a\r\n\r\n",
            "GET /a%7Eb HTTP/1.1\r\nHost: a\r\n\r\n",
            "GET //sign-in HTTP/1.1\r\nHost: a\r\n\r\n",
            "GET /api//invoices HTTP/1.1\r\nHost: a\r\n\r\n",
            "GET /./sign-in HTTP/1.1\r\nHost: a\r\n\r\n",
            "GET /api/../sign-in HTTP/1.1\r\nHost: a\r\n\r\n",
            "GET /api/.. HTTP/1.1\r\nHost: a\r\n\r\n",
            "GET /%00 HTTP/1.1\r\nHost: a\r\n\r\n",
            "GET /%c0%ae%c0%ae/ HTTP/1.1\r\nHost: a\r\n\r\n",
            "GET /a%2fb HTTP/1.1\r\nHost: a\r\n\r\n",
            "GET /a\\b HTTP/1.1\r\nHost: a\r\n\r\n",
            "GET /{x} HTTP/1.1\r\nHost: a\r\n\r\n",
            "GET /?q={x} HTTP/1.1\r\nHost: a\r\n\r\n",
            "GET /?q=%zz HTTP/1.1\r\nHost: a\r\n\r\n",
            "GET /\"x HTTP/1.1\r\nHost: a\r\n\r\n",
            "GET /\u00ff HTTP/1.1\r\nHost: a\r\n\r\n",
            "GET /sign-in HTTP/2.0\r\nHost: a\r\n\r\n",
            "POST /sign-in HTTP/1.1\r\nHost: a\r\nContent-Type: */*\r\nContent-Length: 1\r\n\r\na",
            "POST /sign-in HTTP/1.1\r\nHost: a\r\nContent-Type: a/b\r\nContent-Type: c/d\r\nContent-Length: 1\r\n\r\na",
            "POST /sign-in HTTP/1.1\r\nHost: a\r\nContent-Type: a/b,c/json\r\nContent-Length: 1\r\n\r\na",
            "GET /sign-in HTTP/1.1\r\nHost: a\r\nExpect: banana\r\n\r\n",
            "POST /sign-in HTTP/1.1\r\nHost: a\r\nExpect: 100-continue, x\r\nContent-Length: 1\r\n\r\na",
            "POST /sign-in HTTP/1.1\r\nHost: a\r\nContent-Type:\r\nContent-Length: 1\r\n\r\na",
            "POST /sign-in HTTP/1.1\r\nHost: a\r\nContent-Type: a/b; charset=nonsense\r\nContent-Length: 1\r\n\r\na",
            "POST /sign-in HTTP/1.1\r\nHost: a\r\nContent-Type: a/b; charset = \"utf-16\"; c=d\r\nContent-Length: 1\r\n\r\na",
            "POST /sign-in HTTP/1.1\r\nHost: a\r\nContent-Type: a/b; charset=utf-8; charset=utf-16\r\nContent-Length: 1\r\n\r\na",
            "POST /sign-in HTTP/1.1\r\nHost: a\r\nContent-Type: a/b; charset=\r\nContent-Length: 1\r\n\r\na",
            "POST /sign-in HTTP/1.1\r\nHost: a\r\nContent-Type: a/b;x=charset=utf-16\r\nContent-Length: 1\r\n\r\na",
            "POST /sign-in HTTP/1.1\r\nHost: a\r\nContent-Type: a/b;x=\"charset=utf-16\"\r\nContent-Length: 1\r\n\r\na",
            "TRACE / HTTP/1.1\r\nHost: a\r\n\r\n",
            "CONNECT a:80 HTTP/1.1\r\nHost: a\r\n\r\n",
            "PATCH / HTTP/1.1\r\nHost: a\r\nContent-Length: 0\r\n\r\n",
            "GOAT / HTTP/1.1\r\nHost: a\r\n\r\n",
            "OPTIONS * HTTP/1.1\r\nHost: a\r\n\r\n",
            "PRI * HTTP/2.0\r\n\r\nSM\r\n\r\n",
            "nothing at all\r\n\r\n");

    private static final URI SERVER = Server.shared().base();

    @Test
    void refusesARequestThatCanBeReadInTwoWays() {
        List<RawHttp> all = IN_TWO_WAYS.stream()
                .map(request -> RawHttp.to(SERVER).send(request))
                .toList();
        for (int i = 0; i < all.size(); i++) {
            String request = IN_TWO_WAYS.get(i);
            String answer = all.get(i).answer(Duration.ofSeconds(10));
            assertTrue(
                    answer.startsWith("HTTP/1.1 400 ") || answer.startsWith("HTTP/1.1 505 "),
                    () -> request + " -> " + answer);
            assertEquals(answer.indexOf("HTTP/1."), answer.lastIndexOf("HTTP/1."), "one answer: " + answer);
            all.get(i).close();
        }
    }

    /** What makes an expression try again and again where it stands as often as a head may hold it. */
    private static final List<String> FIELDS = List.of(
            "Content-Type: a/b;charset=%s\"\"x",
            "Content-Type: a/b;charset%s=x",
            "Content-Type: multipart/form-data;%sboundary=\"x",
            "Content-Type: a;%s;charset=utf-8;charset=x",
            "Accept-Encoding: gzip;%sq=0.1x",
            "Accept: %stext/html;",
            "Cookie: a%s=b",
            "Authorization: Bearer%s x",
            "X-Forwarded-For: 1%s,2",
            "Forwarded: for=%s",
            "User-Agent: (%s",
            "If-None-Match: \"%s",
            "Range: bytes=%s",
            "Origin: http://%s");

    /** None takes a thread for long. */
    @Test
    void readsALongHeadInNoTime() {
        String page = RawHttp.ask(SERVER, "GET /sign-in HTTP/1.1\r\nHost: a\r\nConnection: close\r\n\r\n");
        Matcher asset = Pattern.compile("/assets/\\w+/htmx\\.min\\.js").matcher(page);
        assertTrue(asset.find());
        long begun = System.nanoTime();
        List<RawHttp> all = new ArrayList<>();
        for (int i = 0; i < FIELDS.size(); i++) {
            // As many of each address as may ask at once. That field is about a file, which is packed or not.
            String path = FIELDS.get(i).startsWith("Accept-Encoding") ? asset.group() : "/sign-in";
            for (String filling : List.of(" ", "a", "1", ",", ";", "=\"", "(", "\"", ";a=", "0.1")) {
                String filled = FIELDS.get(i).formatted(filling.repeat(7_000 / filling.length()));
                all.add(RawHttp.from("127.0.1." + (i + 1), SERVER)
                        .send("GET " + path + " HTTP/1.1\r\nHost: a\r\nConnection: close\r\n" + filled + "\r\n\r\n"));
            }
        }
        for (RawHttp one : all) {
            String answer = one.answer(Duration.ofSeconds(20));
            assertTrue(answer.startsWith("HTTP/1.1 "), () -> "no answer: " + answer);
            one.close();
        }
        Duration took = Duration.ofNanos(System.nanoTime() - begun);
        assertTrue(took.toSeconds() < 40, took::toString);
    }

    /** However the network divides it: what is read is what was sent, and nothing that lay there before. */
    @Test
    void readsAHeadThatComesInPartsAsAWhole() throws Exception {
        String whole = "GET /sign-in HTTP/1.1\r\nHost: a\r\nAccept: */*\r\nConnection: close\r\n\r\n";
        for (int i = 1; i < whole.length(); i++) {
            try (var raw = RawHttp.to(SERVER).send(whole.substring(0, i))) {
                Thread.sleep(15); // so that it is read by itself
                String answer = raw.send(whole.substring(i)).answer(Duration.ofSeconds(10));
                assertTrue(answer.startsWith("HTTP/1.1 200 "), "in two at " + i + ": " + answer);
            }
        }
        // Somebody else's heads lie now where these are read.
        List<String> ends = IN_TWO_WAYS.stream()
                .filter(request -> request.contains("Host: a\r\n"))
                .toList();
        List<RawHttp> all = ends.stream()
                .map(request -> RawHttp.to(SERVER).send(request.split("(?<=Host: a\r\n)", 2)[0]))
                .toList();
        Thread.sleep(100);
        for (int i = 0; i < all.size(); i++) {
            all.get(i).send(ends.get(i).split("(?<=Host: a\r\n)", 2)[1]);
        }
        for (int i = 0; i < all.size(); i++) {
            String request = ends.get(i);
            String answer = all.get(i).answer(Duration.ofSeconds(10));
            all.get(i).close();
            assertTrue(
                    answer.startsWith("HTTP/1.1 400 ") || answer.startsWith("HTTP/1.1 505 "),
                    () -> request + " -> " + answer);
            assertEquals(answer.indexOf("HTTP/1."), answer.lastIndexOf("HTTP/1."), "one answer: " + answer);
        }
    }

    /** Whatever it is: nobody who means well sends it before they are answered, and half of it may be somebody else's. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "GET /sign-in HTTP/1.1\r\nHost: a\r\n\r\n",
                "POST /sign-out HTTP/1.1\r\nHost: a\r\r\nContent-Length: 60\r\n",
                "POST /sign-out HTTP/1.1\r\nHost: a\r\nTransfer-Encoding:\r\n chunked  \r\n\r\n5\r\nhello\r\n0\r\n\r\n",
                "POST /sign-out HTTP/1.1\r\nHost: a\r\nX: y\r\n Transfer-Encoding: chunked\r\n\r\nGET / HTTP/1.1\r\n\r\n",
                "G",
                "\r\nx"
            })
    void readsNothingThatComesBehindARequest(String behind) {
        for (String first : List.of(
                "GET /sign-in HTTP/1.1\r\nHost: a\r\n\r\n",
                "GET /sign-in HTTP/1.1\r\nHost: a\r\nContent-Length: 0\r\n\r\n")) {
            String answer = RawHttp.to(SERVER).send(first + behind).answer(Duration.ofSeconds(10));
            assertTrue(answer.startsWith("HTTP/1.1 200 "), answer);
            assertTrue(answer.contains("Connection: close"), answer);
            assertEquals(answer.indexOf("HTTP/1."), answer.lastIndexOf("HTTP/1."), "one answer: " + answer);
        }
    }

    /** RFC 9112, 2.2: some send an empty line behind a body. */
    @Test
    void passesOverEmptyLinesBetweenRequests() {
        String form = "username=x&password=y";
        try (var raw = RawHttp.to(SERVER)) {
            String first = raw.send(
                            "POST /sign-in HTTP/1.1\r\nHost: a\r\nContent-Type: application/x-www-form-urlencoded\r\n"
                                    + "Content-Length: " + form.length() + "\r\n\r\n" + form + "\r\n")
                    .answer(Duration.ofSeconds(2));
            assertTrue(first.startsWith("HTTP/1.1 403 "), first);
            raw.send("\r\n");
            String second = raw.send("\r\nGET /sign-in HTTP/1.1\r\nHost: a\r\nConnection: close\r\n\r\n")
                    .answer(Duration.ofSeconds(10));
            assertTrue(second.startsWith("HTTP/1.1 200 "), second);
        }
    }

    /** RFC 6585, 5. */
    @Test
    void saysThatAHeadIsTooLong() {
        for (String head :
                List.of("GET /sign-in HTTP/1.1\r\nHost: a\r\nX: " + "a".repeat(9_000), "\r\n".repeat(5_000))) {
            String answer = RawHttp.ask(SERVER, head);
            assertTrue(head.isBlank() ? answer.isEmpty() : answer.startsWith("HTTP/1.1 431 "), answer);
        }
        String whole = RawHttp.ask(SERVER, "GET /sign-in HTTP/1.1\r\nHost: a\r\nX: " + "a".repeat(9_000) + "\r\n\r\n");
        assertTrue(whole.startsWith("HTTP/1.1 4"), whole);
    }

    /** What comes in one piece with a request that was refused is not looked at: it may be half of what another reads as its own. */
    @Test
    void obeysNothingBehindWhatItRefused() {
        String behind = "GET /api/users HTTP/1.1\r\nHost: a\r\n\r\n";
        for (String refused : List.of(
                "POST /sign-in HTTP/1.1\r\nHost: a\r\nContent-Length: 5\r\nTransfer-Encoding: chunked\r\n\r\n0\r\n\r\n",
                "GET /sign-in HTTP/1.1\r\nHost: a\r\nHost: b\r\n\r\n",
                "POST /sign-in HTTP/1.1\r\nHost: a\r\nTransfer-Encoding: xchunked\r\n\r\n")) {
            String answer = RawHttp.to(SERVER).send(refused + behind + behind).answer(Duration.ofSeconds(10));
            assertTrue(answer.startsWith("HTTP/1.1 400 "), answer);
            assertEquals(answer.indexOf("HTTP/1."), answer.lastIndexOf("HTTP/1."), "one answer: " + answer);
        }
    }

    @Test
    void makesNoObjectsOfMoreFieldsPartsAndValuesThanAnythingHas() {
        for (String[] body : new String[][] {
            {"application/x-www-form-urlencoded", "a=b&".repeat(25_000)},
            {"application/x-www-form-urlencoded; a=json", "a=b&".repeat(25_000)},
            {"application/json; a=form-urlencoded", "{" + "\"a\":1,".repeat(60_000) + "\"b\":1}"},
            {
                "multipart/form-data; boundary=b",
                "--b\r\nContent-Disposition: form-data; name=\"x\"\r\n\r\n\r\n".repeat(200)
            },
            {
                "multipart/form-data; boundary=b",
                "--b\r\nContent-Disposition: form-data; name=\"x\"\r\n\r\n" + "\r--b\n\n".repeat(200)
            },
            {"multipart/form-data; boundary=b", "--b\r\n" + "a:\n".repeat(100) + "\r\n\r\n--b--\r\n"},
            {"multipart/form-data; boundary=b", "--b\r\n" + "a:\n\r\r".repeat(100) + "\r\n\r\n--b--\r\n"},
            {"multipart/form-data; boundary=b; boundary=c", "--b--\r\n"},
            {"multipart/form-data", "--b--\r\n"},
            {"multipart/form-data" + ";a=".repeat(1_500) + "; boundary=b", "--b--\r\n"},
            {"application/json", "{" + "\"a\":1,".repeat(60_000) + "\"b\":1}"},
            {"application/json", "{\"a\":\"" + "b".repeat(4_000_000) + "\"}"}
        }) {
            String answer = RawHttp.ask(
                    SERVER,
                    "POST /api/customers HTTP/1.1\r\nHost: a\r\nCookie: eaveside=x\r\nConnection: close\r\nContent-Type: "
                            + body[0] + "\r\nContent-Length: " + body[1].length() + "\r\n\r\n" + body[1]);
            assertTrue(answer.startsWith("HTTP/1.1 413 "), body[0] + " -> " + answer);
        }
    }

    @Test
    void takesTheSignsThatEverythingIsIn() {
        for (String charset : List.of("", ";charset=utf-8", "; charset=UTF-8", "; a=b; Charset=\"utf-8\" ; c=d")) {
            String form = "username=signs." + charset.length() + "&password=y";
            String answer = RawHttp.from("127.0.0.77", SERVER)
                    .send("POST /sign-in HTTP/1.1\r\nHost: a\r\nOrigin: http://a\r\nConnection: close\r\nContent-Type: "
                            + "application/x-www-form-urlencoded" + charset + "\r\nContent-Length: " + form.length()
                            + "\r\n\r\n" + form)
                    .answer(Duration.ofSeconds(10));
            assertTrue(answer.startsWith("HTTP/1.1 401 "), charset + " -> " + answer);
        }
    }

    /** By a stranger, without a body and with one: the platform's own reading breaks where no type is told. */
    @Test
    void refusesAFormWhoseTypeIsNotTold() {
        for (String address : List.of("/sign-in", "/sign-in/passkey")) {
            for (String body : List.of("", "username=x&password=y")) {
                String answer = RawHttp.ask(
                        SERVER,
                        "POST " + address
                                + " HTTP/1.1\r\nHost: a\r\nOrigin: http://a\r\nConnection: close\r\nContent-Length: "
                                + body.length() + "\r\n\r\n" + body);
                assertTrue(answer.startsWith("HTTP/1.1 400 "), address + " -> " + answer);
            }
        }
    }

    @Test
    void takesAnAddressInFull() {
        String answer = RawHttp.ask(
                SERVER,
                "GET http://example.com/sign-in?to=/quotes%3Fq=a:b;c HTTP/1.1\r\nHost: example.com\r\nConnection: close\r\n\r\n");
        assertTrue(answer.startsWith("HTTP/1.1 200 "), answer);
    }

    @Test
    void readsALongAddress() {
        String answer = RawHttp.ask(
                SERVER,
                "GET /" + "a".repeat(3_500) + "?q=" + "%C3%A9".repeat(500)
                        + " HTTP/1.1\r\nHost: a\r\nConnection: close\r\n\r\n");
        assertTrue(answer.startsWith("HTTP/1.1 404 "), answer);
    }

    /** RFC 9110, 7.8: an upgrade may be passed over; 9113, 3.1: h2c is obsolete. */
    @Test
    void staysWithTheProtocolItSpeaks() {
        String answer = RawHttp.ask(
                SERVER,
                "GET /sign-in HTTP/1.1\r\nHost: a\r\nConnection: Upgrade, HTTP2-Settings, close\r\nUpgrade: h2c\r\n"
                        + "HTTP2-Settings: AAMAAABkAARAAAAAAAIAAAAA\r\n\r\n");
        assertTrue(answer.startsWith("HTTP/1.1 200 "), answer);
    }

    /** Java's own client offers h2c with every request until it is answered. */
    @Test
    void readsTheBodyOfARequestThatOffersAnotherProtocol() {
        String body = "username=x&password=y";
        try (var raw = RawHttp.to(SERVER)) {
            raw.send(
                    "POST /sign-in HTTP/1.1\r\nHost: a\r\nConnection: Upgrade, HTTP2-Settings\r\nUpgrade: h2c\r\nOrigin: http://a\r\n"
                            + "HTTP2-Settings: AAMAAABkAARAAAAAAAIAAAAA\r\nContent-Type: application/x-www-form-urlencoded\r\n"
                            + "Content-Length: " + body.length() + "\r\n\r\n" + body);
            String answer = raw.answer(Duration.ofSeconds(3));
            assertTrue(answer.startsWith("HTTP/1.1 401 "), answer);
            String next = raw.send("GET /sign-in HTTP/1.1\r\nHost: a\r\nConnection: close\r\n\r\n")
                    .answer(Duration.ofSeconds(10));
            assertTrue(next.startsWith("HTTP/1.1 200 "), next);
        }
    }

    @Test
    void tellsWhoeverAsksThatTheBodyIsWanted() {
        try (var raw = RawHttp.to(SERVER)) {
            raw.send("POST /sign-in HTTP/1.1\r\nHost: a\r\nExpect: 100-continue\r\nConnection: close\r\n"
                    + "Content-Type: application/x-www-form-urlencoded\r\nContent-Length: 10\r\n\r\n");
            assertTrue(raw.answer(Duration.ofSeconds(2)).startsWith("HTTP/1.1 100 "));
            String answer = raw.send("username=x").answer(Duration.ofSeconds(20));
            assertTrue(answer.startsWith("HTTP/1.1 403 "), answer);
        }
    }

    @Test
    void takesNoLargeBodyFromStrangers() {
        String head = "POST /sign-in HTTP/1.1\r\nHost: a\r\nContent-Type: application/x-www-form-urlencoded\r\n";
        String told = RawHttp.ask(SERVER, head + "Content-Length: 16001\r\n\r\n");
        assertTrue(told.startsWith("HTTP/1.1 413 "), told);
        String sent = RawHttp.ask(SERVER, head + "Content-Length: 16001\r\n\r\n" + "a".repeat(16_001));
        assertTrue(sent.startsWith("HTTP/1.1 413 "), sent);
    }

    /** Whose session is gone is told so, rather than that what they send is too large; and as a script where it is one. */
    @Test
    void asksWhoeverSendsMoreThanAStrangerMayToSignInFirst() {
        String head =
                "POST /sheets/x/photos/y HTTP/1.1\r\nHost: a\r\nContent-Type: image/jpeg\r\nContent-Length: 1000000\r\n";
        String script = RawHttp.ask(SERVER, head + "Accept: application/json\r\n\r\n");
        assertTrue(script.startsWith("HTTP/1.1 401 "), script);
        assertTrue(script.contains("application/problem+json"), script);
        assertTrue(script.contains("Referrer-Policy: same-origin"), script);
        String page = RawHttp.ask(SERVER, head + "Accept: text/html\r\n\r\n");
        assertTrue(page.startsWith("HTTP/1.1 401 "), page);
        assertTrue(page.contains("sign in first"), page);
        String known = RawHttp.ask(SERVER, head.replace("1000000", "13000000") + "Cookie: eaveside=x\r\n\r\n");
        assertTrue(known.startsWith("HTTP/1.1 413 "), known);
        String atTheDoor =
                RawHttp.ask(SERVER, head.replace("/sheets/x/photos/y", "/sign-in") + "Cookie: eaveside=x\r\n\r\n");
        assertTrue(atTheDoor.startsWith("HTTP/1.1 413 "), atTheDoor);
    }

    /** RFC 9112, 6.3: a server may answer 411 to a body without a length; 7.1: what is sloppy about its parts is not read at all. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "a\r\nusername=x\r\n0\r\n\r\n",
                "a;x=\n\r\nusername=x\r\n0\r\n\r\n",
                "a\nusername=xrubbish\r\n0\r\n\r\n",
                "\r\n\r\n",
                "0\r\nUpgrade: h2c\r\nExpect: x\r\nHost: b\r\n\r\n",
                ""
            })
    void takesNoBodyWhoseLengthIsNotTold(String parts) {
        String answer = RawHttp.ask(
                SERVER,
                "POST /sign-in HTTP/1.1\r\nHost: a\r\nCookie: eaveside=x\r\nContent-Type: application/x-www-form-urlencoded\r\n"
                        + "Transfer-Encoding: chunked\r\n\r\n" + parts + "GET /sign-in HTTP/1.1\r\nHost: a\r\n\r\n");
        // The server itself ends what does not even look like parts.
        assertTrue(answer.startsWith(parts.startsWith("a\r\n") ? "HTTP/1.1 411 " : "HTTP/1.1 4"), answer);
        assertEquals(answer.startsWith("HTTP/1.1 411 "), answer.contains("Content-Length)"), answer);
        assertEquals(answer.indexOf("HTTP/1."), answer.lastIndexOf("HTTP/1."), "one answer: " + answer);
    }

    @Test
    void takesNoBodyInPartsThatCostMoreThanTheyHold() throws Exception {
        try (var raw = RawHttp.to(SERVER)) {
            raw.send("POST /sign-in HTTP/1.1\r\nHost: a\r\nContent-Type: application/x-www-form-urlencoded\r\n"
                    + "Content-Length: 400\r\n\r\n");
            for (int i = 0; i < 200; i++) {
                Thread.sleep(5); // so that it is read by itself
                raw.send("x");
            }
            String answer = raw.answer(Duration.ofSeconds(5));
            assertTrue(answer.startsWith("HTTP/1.1 413 "), answer);
        }
    }

    /** As many as the server has threads, and some more. */
    @Test
    void servesOthersWhileManySendSlowly() {
        List<RawHttp> slow = new ArrayList<>();
        try {
            for (int i = 0; i < 260; i++) {
                slow.add(RawHttp.to(SERVER)
                        .send("POST /sign-in HTTP/1.1\r\nHost: a\r\nContent-Type: application/x-www-form-urlencoded\r\n"
                                + "Content-Length: 1000\r\n\r\nusername="));
                slow.add(RawHttp.to(SERVER).send("GET /sign-in HTTP/1.1\r\nHost: a\r\nX-Slow: "));
            }
            long begun = System.nanoTime();
            var client = Server.shared().signedIn(Server.OWNER, Server.OWNER_PASSWORD);
            assertEquals(200, Server.shared().get(client, "worklist").statusCode());
            Duration took = Duration.ofNanos(System.nanoTime() - begun);
            assertTrue(took.compareTo(Duration.ofSeconds(8)) < 0, () -> "served after " + took);
        } finally {
            slow.forEach(RawHttp::close);
        }
    }

    /** The first of one network cost a hash of a password each, the rest wait for their guesses, or are too many at once. */
    @Test
    void leavesRoomForThoseWhoAreInWhileAFloodOfStrangersAsks() {
        HttpClient owner = Server.shared().signedIn(Server.OWNER, Server.OWNER_PASSWORD);
        String form = "username=flood000&password=wrong";
        String attempt = "POST /sign-in HTTP/1.1\r\nHost: a\r\nOrigin: http://a\r\nConnection: close\r\n"
                + "Content-Type: application/x-www-form-urlencoded\r\nContent-Length: " + form.length() + "\r\n\r\n"
                + form;
        List<RawHttp> flood = new ArrayList<>();
        try {
            for (int i = 0; i < 300; i++) {
                flood.add(RawHttp.from("127.0.0.87", SERVER).send(attempt.replace("flood000", "flood" + (100 + i))));
                if (i % 30 == 0) {
                    assertEquals(200, Server.shared().get(owner, "worklist").statusCode(), "after " + i);
                }
            }
            List<String> answers = flood.stream()
                    .map(one -> one.answer(Duration.ofSeconds(30)))
                    .toList();
            List<String> away = answers.stream()
                    .filter(answer -> answer.startsWith("HTTP/1.1 503 "))
                    .toList();
            assertTrue(away.stream().allMatch(answer -> answer.contains("\r\nRetry-After: ")), away::toString);
            for (String answer : answers) {
                assertTrue(answer.matches("(?s)HTTP/1.1 (401|429|503) .*"), answer);
            }
        } finally {
            flood.forEach(RawHttp::close);
        }
    }

    /** What waits for them takes the room of others; ConnectionsTest has what becomes of many. */
    @Test
    void endsWhoeverAsksForMoreAndTakesNothing() throws Exception {
        String page = RawHttp.ask(SERVER, "GET /sign-in HTTP/1.1\r\nHost: a\r\nConnection: close\r\n\r\n");
        Matcher script = Pattern.compile("/assets/\\w+/htmx\\.min\\.js").matcher(page);
        assertTrue(script.find(), page);
        String asked = "GET " + script.group() + " HTTP/1.1\r\nHost: a\r\n\r\n";
        String one = RawHttp.ask(SERVER, asked.replace("Host", "Connection: close\r\nHost"));
        assertTrue(one.startsWith("HTTP/1.1 200 ") && one.length() > 40_000, () -> one.substring(0, 200));
        int taken = 0;
        try (var untaken = RawHttp.narrow(SERVER)) {
            while (taken < 1_000) {
                untaken.send(asked);
                Thread.sleep(5); // so that it is read by itself
                taken++;
            }
        } catch (UncheckedIOException e) {
            // It was ended.
        }
        assertTrue(taken > 5 && taken < 1_000, taken + " answers"); // the network itself holds some
    }

    /** A flood of large bodies costs its sender connections, and what is on its way still arrives. */
    @Test
    void takesLargeBodiesOneAfterAnother() {
        String body = "a".repeat(11_900_000);
        List<CompletableFuture<String>> answers = new ArrayList<>();
        try (var senders = Executors.newVirtualThreadPerTaskExecutor()) {
            for (int i = 0; i < 20; i++) {
                answers.add(CompletableFuture.supplyAsync(
                        () -> {
                            try {
                                return RawHttp.ask(
                                        SERVER,
                                        "POST /customers/import HTTP/1.1\r\nHost: a\r\nCookie: eaveside=x\r\nConnection: close\r\n"
                                                + "Content-Type: text/csv\r\nContent-Length: " + body.length()
                                                + "\r\n\r\n"
                                                + body);
                            } catch (java.io.UncheckedIOException e) {
                                return "ended";
                            }
                        },
                        senders));
            }
            var client = Server.shared().signedIn(Server.OWNER, Server.OWNER_PASSWORD);
            assertEquals(200, Server.shared().get(client, "worklist").statusCode());
        }
        List<String> told = answers.stream().map(CompletableFuture::join).toList();
        assertTrue(told.stream().anyMatch(answer -> answer.startsWith("HTTP/1.1 4")), "some arrive");
        assertTrue(told.stream().noneMatch(answer -> answer.startsWith("HTTP/1.1 500")), "none breaks anything");
    }

    @Test
    void endsAHeadThatIsNeverDone() throws InterruptedException {
        try (var dribbling = RawHttp.to(SERVER).send("GET /sign-in HTTP/1.1\r\nHost: a\r\nX-Slow: ")) {
            boolean closed = false;
            for (int i = 0; i < 30 && !closed; i++) {
                closed = dribbling.isClosedWithin(Duration.ofSeconds(1));
                if (!closed) {
                    try {
                        dribbling.send("a");
                    } catch (java.io.UncheckedIOException e) {
                        closed = true;
                    }
                }
            }
            assertTrue(closed, "still open after half a minute");
        }
    }

    /** From this machine they answer without more; the proxy's callers, and whoever else passes something on, need a token. */
    @Test
    void tellsAboutItselfToThisMachineAndToScriptsWithAToken() {
        String path = "settings/users/" + Visitor.value("select id from app_user where username = 'owner.test'");
        var form = Visitor.owner().form(path, "/" + path + "/tokens");
        form.put("label", "Monitoring");
        form.put("password", Server.OWNER_PASSWORD);
        String token = Visitor.secret(Visitor.owner().post(path + "/tokens", form));
        for (String address : List.of("health", "health/ready", "health/live", "metrics", "openapi", "openapi/")) {
            String asked = "GET /" + address + " HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n";
            String led = RawHttp.ask(SERVER, asked.replace("localhost", "led.here.example.com") + "\r\n");
            assertTrue(led.startsWith("HTTP/1.1 401 "), led);
            String here = RawHttp.ask(SERVER, asked + "\r\n");
            assertTrue(here.startsWith("HTTP/1.1 200 ") || here.startsWith("HTTP/1.1 404 "), here);
            assertTrue(here.contains("X-Content-Type-Options: nosniff"), here);
            assertTrue(here.contains("Content-Security-Policy: "), here);
            for (String header :
                    List.of("X-Forwarded-For: 203.0.113.60", "Forwarded: for=203.0.113.60", "Via: 1.1 x")) {
                String passedOn = RawHttp.ask(SERVER, asked + header + "\r\n\r\n");
                assertTrue(passedOn.startsWith("HTTP/1.1 401 "), passedOn);
                assertTrue(passedOn.contains("application/problem+json"), passedOn);
            }
            String wrong = RawHttp.ask(SERVER, asked + "Via: 1.1 x\r\nAuthorization: Bearer eaveside_x\r\n\r\n");
            assertTrue(wrong.startsWith("HTTP/1.1 401 "), wrong);
            String right = RawHttp.ask(SERVER, asked + "Via: 1.1 x\r\nAuthorization: bearer " + token + "\r\n\r\n");
            assertEquals(here.substring(0, 12), right.substring(0, 12), right);
        }
    }

    /** The first once kept a thread of the server for ever; wherever a body is read, it is refused at once. */
    @Test
    @Timeout(value = 2, unit = TimeUnit.MINUTES, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
    void refusesBodiesThatAreNoObjectAtEveryAddressThatTakesJson() {
        int asked = 0;
        for (String address : jsonAddresses()) {
            String[] methodAndPath = address.split(" ");
            for (String body : List.of("{\"x\":[", "[]", "{}{}", "1", "{\"x\":" + "1".repeat(50) + "}")) {
                var answer = Visitor.owner().json(methodAndPath[0], methodAndPath[1], body);
                assertTrue(
                        answer.statusCode() == 400 || answer.statusCode() == 404,
                        address + " " + body + " -> " + answer.statusCode() + answer.body());
                asked++;
            }
        }
        assertTrue(asked > 200, "asked " + asked);
    }

    private static List<String> jsonAddresses() {
        var described = Server.shared()
                .send(
                        Server.shared().stranger(),
                        HttpRequest.newBuilder(Server.shared().at("openapi"))
                                .header("Accept", "application/json")
                                .build());
        List<String> addresses = new ArrayList<>();
        try (var reader = Json.createReader(new StringReader(described.body()))) {
            reader.readObject()
                    .getJsonObject("paths")
                    .forEach((path, methods) -> methods.asJsonObject().forEach((method, told) -> {
                        if (told instanceof JsonObject operation
                                && operation.containsKey("requestBody")
                                && operation
                                        .getJsonObject("requestBody")
                                        .toString()
                                        .contains("application/json")) {
                            addresses.add(method.toUpperCase(Locale.ROOT) + " "
                                    + path.substring(1)
                                            .replaceAll(
                                                    "\\{\\w+\\}",
                                                    UUID.randomUUID().toString()));
                        }
                    }));
        }
        return addresses;
    }

    @Test
    void answersAScriptThatSaysNoContentTypeAsAScript() {
        String answer = RawHttp.ask(
                SERVER,
                "POST /api/invoices/preview HTTP/1.1\r\nHost: a\r\nConnection: close\r\nContent-Type: a\r\nContent-Length: 2\r\n\r\n{}");
        assertTrue(answer.startsWith("HTTP/1.1 400 "), answer);
        assertTrue(answer.contains("application/problem+json"), answer);
    }

    @Test
    void answersOneAfterAnotherOnOneConnection() {
        String request = "GET /sign-in HTTP/1.1\r\nHost: a\r\n";
        try (var raw = RawHttp.to(SERVER)) {
            String first = raw.send(request + "\r\n").answer(Duration.ofSeconds(2));
            assertTrue(first.startsWith("HTTP/1.1 200 "), first);
            assertFalse(first.contains("Connection: close"), first);
            String second = raw.send(request + "Connection: close\r\n\r\n").answer(Duration.ofSeconds(10));
            assertTrue(second.startsWith("HTTP/1.1 200 "), second);
        }
    }
}
