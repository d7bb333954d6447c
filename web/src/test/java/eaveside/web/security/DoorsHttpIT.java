package eaveside.web.security;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.access.Duty;
import eaveside.web.testing.Server;
import eaveside.web.testing.Visitor;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/**
 * Everything that can be asked of the application, by everybody who could ask. Both come from the application itself; a new
 * address is decided on in {@code doors.txt}, or this fails.
 */
class DoorsHttpIT {
    private static final Path DECIDED = Path.of("src/test/resources/doors.txt");
    private static final Server SERVER = Server.shared();

    /** What a door does to whoever stands before it is shown elsewhere: this one would end what the others need. */
    static final Set<String> LEFT_OUT = Set.of("/sign-out");

    enum Who {
        NOBODY("", null),
        SIGNED_OUT("", null),
        TECHNICIAN("TECHNICIAN", null),
        OFFICE("OFFICE", null),
        OWNER("OWNER", null),
        WITH_A_GIVEN_PASSWORD("OWNER", Duty.NEW_PASSWORD),
        WITHOUT_A_SECOND_FACTOR("OWNER", Duty.SET_UP_SECOND_FACTOR),
        HALF_SIGNED_IN("OWNER", Duty.SECOND_FACTOR),
        SCRIPT_THAT_READS("OWNER", null),
        SCRIPT_THAT_WRITES("OWNER", null),
        SCRIPT_THAT_ADMINISTERS("OWNER", null);

        private final String role;
        private final @Nullable Duty owes;

        Who(String role, @Nullable Duty owes) {
            this.role = role;
            this.owes = owes;
        }

        boolean isScript() {
            return name().startsWith("SCRIPT");
        }

        boolean reaches(Door door) {
            return switch (this) {
                case SCRIPT_THAT_ADMINISTERS -> !door.isForPeople();
                case SCRIPT_THAT_READS -> !door.isForPeople() && door.method().equals("GET") && !door.administers();
                case SCRIPT_THAT_WRITES -> !door.isForPeople() && !door.administers();
                default -> true;
            };
        }
    }

    private static final Map<Who, HttpClient> CLIENTS = new EnumMap<>(Who.class);
    private static final Map<Who, String> TOKENS = new EnumMap<>(Who.class);

    @BeforeAll
    static void everybody() throws SQLException {
        CLIENTS.put(Who.NOBODY, SERVER.stranger());
        CLIENTS.put(Who.TECHNICIAN, hired("door.technician", "TECHNICIAN"));
        CLIENTS.put(Who.OFFICE, hired("door.office", "OFFICE"));
        CLIENTS.put(Who.OWNER, hired("door.owner", "OWNER"));
        String given = given("door.given", "OWNER");
        CLIENTS.put(Who.WITH_A_GIVEN_PASSWORD, SERVER.signedIn("door.given", given));
        String half = given("door.half", "OWNER");
        SERVER.choosing("door.half", half);
        execute("insert into authenticator_app (user_id, secret, confirmed_at) "
                + "select id, 'GEZDGNBVGY3TQOJQGEZDGNBVGY3TQOJQ', now() from app_user where username = 'door.half'");
        CLIENTS.put(Who.HALF_SIGNED_IN, SERVER.signedIn("door.half", Server.chosen(half)));
        HttpClient gone = hired("door.gone", "OWNER");
        assertEquals(
                303,
                send(gone, request(SERVER, "POST", "/sign-out", "application/x-www-form-urlencoded"))
                        .statusCode());
        CLIENTS.put(Who.SIGNED_OUT, gone);
        String user = Visitor.value("select id from app_user where username = 'door.owner'");
        for (Who who : List.of(Who.SCRIPT_THAT_READS, Who.SCRIPT_THAT_WRITES, Who.SCRIPT_THAT_ADMINISTERS)) {
            String scope = who.name().replace("SCRIPT_THAT_", "").replaceAll("S$", "");
            var form = Visitor.owner().form("settings/users/" + user, "/settings/users/" + user + "/tokens");
            form.putAll(Map.of("label", "Doors " + scope, "scope", scope, "password", Server.OWNER_PASSWORD));
            CLIENTS.put(who, SERVER.stranger());
            TOKENS.put(who, Visitor.secret(Visitor.owner().post("settings/users/" + user + "/tokens", form)));
        }
    }

    /** Others look at what happens to the last owner. */
    @AfterAll
    static void leave() throws SQLException {
        execute("update app_user set active = false where username like 'door.%'");
    }

    private static String given(String username, String role) {
        return Visitor.owner().add("Before the " + username, username, role);
    }

    private static HttpClient hired(String username, String role) {
        return SERVER.choosing(username, given(username, role));
    }

    private static void execute(String sql) throws SQLException {
        try (var connection = SERVER.database().asOwner().getConnection();
                var statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }

    @Test
    void somebody_has_decided_on_every_door() throws IOException {
        String doors = Door.all().stream().map(Door::line).collect(Collectors.joining("\n", "", "\n"));
        if (Boolean.getBoolean("snapshots.write")) {
            Files.writeString(DECIDED, doors);
        }
        assertEquals(
                Files.readString(DECIDED),
                doors,
                "with -Dsnapshots.write=true it is written anew: read the difference");
        assertTrue(Door.all().size() > 250, "all of them are looked at");
    }

    @Test
    void nobody_gets_through_a_door_that_is_not_theirs() {
        List<String> wrong = new ArrayList<>();
        int asked = 0;
        for (Door door : Door.all()) {
            if (LEFT_OUT.contains(door.path())) {
                continue;
            }
            String path = addressOf(door);
            for (Who who : CLIENTS.keySet()) {
                var request = request(SERVER, door.method(), path, door.takes());
                if (who.isScript()) {
                    request.header("Authorization", "Bearer " + TOKENS.get(who));
                }
                var answer = send(CLIENTS.get(who), request);
                asked++;
                String flaw = flaw(door, who, answer);
                if (!flaw.isEmpty()) {
                    wrong.add(who + " " + door.line().strip() + ": " + answer.statusCode() + " "
                            + answer.headers().firstValue("Location").orElse("") + ", " + flaw);
                }
            }
        }
        assertEquals(List.of(), wrong);
        assertTrue(asked > 2_500, "asked " + asked);
    }

    /** What a page of another site makes the browser of an owner send, who is signed in here. */
    @Test
    void nothing_that_another_site_sends_gets_through_any_door() {
        List<String> wrong = new ArrayList<>();
        int asked = 0;
        for (Door door : Door.all()) {
            if (door.method().equals("GET")) {
                continue;
            }
            for (Map.Entry<String, String> from : List.of(
                    Map.entry("Sec-Fetch-Site", "cross-site"),
                    Map.entry("Sec-Fetch-Site", "same-site"),
                    Map.entry("Origin", "https://other.example.com"),
                    Map.entry("Origin", "null"),
                    Map.entry("X-Nothing-About", "where it is from"))) {
                for (String type : new TreeSet<>(Set.of(door.takes(), "text/plain"))) {
                    var answer = send(
                            CLIENTS.get(Who.OWNER),
                            of(SERVER, door.method(), addressOf(door), type).header(from.getKey(), from.getValue()));
                    asked++;
                    boolean refused = answer.statusCode() == 403
                            || type.equals("text/plain") && List.of(400, 415).contains(answer.statusCode());
                    if (!refused
                            || !answer.headers()
                                    .allValues("X-Content-Type-Options")
                                    .equals(List.of("nosniff"))
                            || !answer.headers().allValues("Referrer-Policy").equals(List.of("same-origin"))
                            || !answer.headers()
                                    .firstValue("Content-Security-Policy")
                                    .orElse("")
                                    .contains("frame-ancestors 'none'")) {
                        wrong.add(door.line().strip() + " " + from + " " + type + ": " + answer.statusCode());
                    }
                }
            }
        }
        assertEquals(List.of(), wrong);
        assertTrue(asked > 900, "asked " + asked);
    }

    /** Nothing here reads XML, so that none of what its readers are known for can come in. */
    @Test
    void no_door_reads_xml() {
        String xml = "<?xml version=\"1.0\"?><!DOCTYPE x [<!ENTITY a \"aaaa\"><!ENTITY b \"&a;&a;&a;\">"
                + "<!ENTITY c SYSTEM \"file:///etc/hostname\">]><x>&b;&c;</x>";
        List<String> wrong = new ArrayList<>();
        int asked = 0;
        for (Door door : Door.all()) {
            if (door.takes().isEmpty() || !List.of("POST", "PUT").contains(door.method())) {
                continue;
            }
            for (String type : List.of("application/xml", "text/xml", "image/svg+xml")) {
                var answer = send(
                        CLIENTS.get(Who.OWNER),
                        HttpRequest.newBuilder(URI.create(
                                        SERVER.base() + addressOf(door).substring(1)))
                                .header("Accept", "application/json, */*")
                                .header("Sec-Fetch-Site", "same-origin")
                                .header("Content-Type", type)
                                .method(door.method(), HttpRequest.BodyPublishers.ofString(xml)));
                asked++;
                if (!List.of(400, 404, 415, 422).contains(answer.statusCode())) {
                    wrong.add(door.line().strip() + " " + type + ": " + answer.statusCode());
                }
            }
        }
        assertEquals(List.of(), wrong);
        assertTrue(asked > 300, "asked " + asked);
    }

    static String addressOf(Door door) {
        return door.path()
                .replaceAll("\\{(date|month)\\}", "2026-01")
                .replace("{code}", "6100")
                .replaceAll("\\{\\w+\\}", UUID.randomUUID().toString());
    }

    static String flaw(Door door, Who who, HttpResponse<String> answer) {
        int status = answer.statusCode();
        String location = answer.headers().firstValue("Location").orElse("");
        boolean page = door.method().equals("GET") && !door.path().startsWith("/api/");
        if (status >= 500) {
            return "no input gives that";
        }
        if (door.isOpen()) {
            return "";
        }
        if (who.role.isEmpty()) {
            return page
                    ? status == 303 && location.startsWith("/sign-in?to=") ? "" : "should sign in first"
                    : status == 401 ? "" : "should be 401";
        }
        if (who.owes != null) {
            if (door.before().contains(who.owes)) {
                return status == 401 || status == 403 ? "should come in to do what is owed" : "";
            }
            String place = who.owes == Duty.SECOND_FACTOR ? "/sign-in/second" : "/account";
            return !door.path().startsWith("/api/")
                    ? status == 303 && location.startsWith(place + "?to=") ? "" : "should do first what is owed"
                    : status == 403 ? "" : "should be 403";
        }
        boolean books = door.sees().equals("BOOKS") && who == Who.OFFICE;
        if (!door.roles().contains(who.role) || !who.reaches(door) || books) {
            return status == 403 ? "" : "should be 403";
        }
        return status == 401 || status == 403 || location.startsWith("/sign-in?") ? "should come in" : "";
    }

    static HttpRequest.Builder request(Server server, String method, String path, String takes) {
        return of(server, method, path, takes).header("Sec-Fetch-Site", "same-origin");
    }

    private static HttpRequest.Builder of(Server server, String method, String path, String takes) {
        boolean reads = method.equals("GET") || method.equals("DELETE");
        String type = takes.equals("multipart/form-data")
                ? takes + "; boundary=b0undary"
                : takes.replace("*/*", "application/octet-stream");
        String body = takes.equals("application/json") ? "{}" : takes.startsWith("multipart") ? "--b0undary--\r\n" : "";
        var request = HttpRequest.newBuilder(URI.create(server.base() + path.substring(1)))
                .header("Accept", path.startsWith("/api/") ? "application/json" : "text/html,*/*;q=0.8")
                .method(
                        method,
                        reads ? HttpRequest.BodyPublishers.noBody() : HttpRequest.BodyPublishers.ofString(body));
        return reads || type.isEmpty() ? request : request.header("Content-Type", type);
    }

    private static HttpResponse<String> send(HttpClient client, HttpRequest.Builder request) {
        return SERVER.send(client, request.build());
    }
}
