package eaveside.web.security;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.web.testing.Server;
import java.io.IOException;
import java.net.http.HttpClient;
import java.net.http.HttpResponse;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Every door once more, by an owner who has to set up a second factor first: that asks for a server of its own. */
@Tag("long")
class DutyDoorsHttpIT {
    private static Server server;

    @BeforeAll
    static void start() {
        server = Server.whereOwnersNeedTwo();
    }

    @AfterAll
    static void stop() {
        server.stop();
    }

    @Test
    void owners_set_up_a_second_factor_before_anything_else() throws IOException {
        HttpClient owner = server.signedIn(Server.OWNER, Server.OWNER_PASSWORD);
        List<String> wrong = new ArrayList<>();
        int asked = 0;
        for (Door door : Door.all()) {
            if (DoorsHttpIT.LEFT_OUT.contains(door.path())) {
                continue;
            }
            HttpResponse<String> answer = server.send(
                    owner,
                    DoorsHttpIT.request(server, door.method(), DoorsHttpIT.addressOf(door), door.takes())
                            .build());
            asked++;
            String flaw = DoorsHttpIT.flaw(door, DoorsHttpIT.Who.WITHOUT_A_SECOND_FACTOR, answer);
            if (!flaw.isEmpty()) {
                wrong.add(door.line().strip() + ": " + answer.statusCode() + ", " + flaw);
            }
        }
        assertEquals(List.of(), wrong);
        assertTrue(asked > 250, "asked " + asked);
        assertTrue(
                server.get(owner, "worklist")
                        .headers()
                        .firstValue("Location")
                        .orElse("")
                        .startsWith("/account?to="),
                "it is still owed");
    }
}
