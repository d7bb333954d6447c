package eaveside.web.api;

import eaveside.web.api.World.Caller;
import java.util.Map;

/** Who signs in, and what the office may read. */
final class People {
    private static final String USERS = "api/users";

    private People() {}

    private static String user(String id, String username, String name, String role) {
        return """
                {"id": "<%s>", "username": "%s", "name": "%s", "role": "%s", "password": "%s"}
                """.formatted(id, username, name, role, World.PASSWORD);
    }

    /** Also adds those who send everything else. */
    static Map<String, String> users(World world) {
        Area area = new Area(world, "users", Caller.OWNER);
        area.part("adding");
        String office = user("office", "snap.office", "Snap Office", "OFFICE");
        area.post("a user", USERS, office).expect(201).again();
        world.signIn(Caller.OFFICE, "snap.office");
        area.post("a technician", USERS, user("technician", "snap.tech", "Snap Technician", "TECHNICIAN"))
                .expect(201);
        world.signIn(Caller.TECHNICIAN, "snap.tech");
        area.post("another technician", USERS, user("other", "snap.other", "Snap Other", "TECHNICIAN"))
                .expect(201);
        world.signIn(Caller.OTHER_TECHNICIAN, "snap.other");
        area.post("somebody who will go", USERS, user("leaver", "snap.leaver", "Snap Leaver", "TECHNICIAN"))
                .expect(201);
        area.post("the id is another's", USERS, office.replace("Snap Office", "Snap Oven"));
        area.post("the username is taken", USERS, office.replace("<office>", "<unused user>"));
        area.post("not a username", USERS, office.replace("snap.office", "not a username"));
        area.post("a weak password", USERS, office.replace(World.PASSWORD, "short"));
        area.post("no such role", USERS, office.replace("OFFICE", "JANITOR"));
        area.post("no name", USERS, "{\"id\": \"<unused user>\", \"username\": \"snap.unused\"}");
        area.post("an id that is none", USERS, office.replace("<office>", "seven"));

        area.part("changing");
        String leaver = USERS + "/<leaver>";
        String change =
                "{\"username\": \"snap.leaver\", \"name\": \"Snap Goer\", \"role\": \"OFFICE\", \"version\": 1}";
        area.put("another name and role", leaver, change).expect(200).again();
        area.put("a stale version", leaver, change.replace("Goer", "Stayer"));
        area.put("no version", leaver, change.replace(", \"version\": 1", "").replace("Goer", "Stayer"));
        area.put("a blank name", leaver, change.replace("Snap Goer", " "));
        area.put("another id than in the address", leaver, change.replace("{", "{\"id\": \"<office>\", "));
        area.put("no such user", USERS + "/<unused user>", change);
        area.post("deactivated", leaver + "/deactivation").expect(200).again();
        area.post("no such user is deactivated", USERS + "/<unused user>/deactivation");
        area.put("reactivated", leaver, change.replace("\"version\": 1", "\"active\": true, \"version\": 3"));

        area.part("reading");
        area.get("everybody", USERS).expect(200);
        area.get("a user", leaver).expect(200);
        area.get("no such user", USERS + "/<unused user>");
        area.get("an id that is none", USERS + "/seven");

        area.part("office-rights");
        String rights = USERS + "/office-rights";
        area.get("at first", rights).expect(200);
        area.put("not said", rights, "{}");
        area.put("neither true nor false", rights, "{\"readsBooks\": \"perhaps\"}");
        area.as(Caller.OFFICE).get("the books are closed to the office", "api/books/accounts");
        area.put("the office reads the books", rights, "{\"readsBooks\": true}")
                .expect(200)
                .again();
        return area.parts();
    }
}
