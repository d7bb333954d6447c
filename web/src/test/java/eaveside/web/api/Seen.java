package eaveside.web.api;

import eaveside.web.api.World.Caller;
import java.util.Map;

/** What was seen on site, what was done about it, and the types of it. */
final class Seen {
    private static final String FINDINGS = "api/findings";

    private Seen() {}

    static Map<String, String> findings(World world) {
        Area area = new Area(world, "findings", Caller.OFFICE);
        String path = FINDINGS + "/<visit finding>";
        area.part("reading");
        area.get("one", path).expect(200);
        area.get("of a sheet that was reversed", FINDINGS + "/<wrong visit finding>");
        area.get("none", FINDINGS + "/<unused finding>");
        area.get("open ones", FINDINGS).expect(200);
        area.get("a customer's", FINDINGS + "?customer=<customer>").expect(200);
        area.get("no such customer's", FINDINGS + "?customer=<unused customer>");
        area.get("no such status", FINDINGS + "?status=PENDING");
        area.get("a key that no page gave", FINDINGS + "?after=nonsense");
        actions(area.part("actions"), path);
        types(area.part("types"));
        return area.parts();
    }

    private static void actions(Area area, String path) {
        String unusedPath = FINDINGS + "/<unused finding>";
        String notice =
                "{\"id\": \"<notice>\", \"sentTo\": \"desk@snapbakery.example.com\", \"note\": \"With a picture\"}";
        String unused = notice.replace("<notice>", "<unused action>");
        area.post("a notice", path + "/notice", notice).expect(200).again();
        area.post("the id is another's", path + "/notice", notice.replace("With a", "Without"));
        area.post("to nobody", path + "/notice", unused.replace("desk@snapbakery.example.com", ""));
        area.post("no such finding", unusedPath + "/notice", unused);
        area.post("of a sheet that was reversed", FINDINGS + "/<wrong visit finding>/notice", unused);
        String upsell = "{\"id\": \"<upsell>\", \"note\": \"Offer a wash\"}";
        area.post("an upsell note", path + "/upsell", upsell).expect(200).again();
        area.post("a blank note", path + "/upsell", "{\"id\": \"<unused action>\", \"note\": \"\"}");
        area.post("no such finding is noted", unusedPath + "/upsell", upsell.replace("<upsell>", "<unused action>"));
        String referral = "{\"id\": \"<referral>\", \"trade\": \"roofer\", \"referredTo\": \"Snap & Partners\"}";
        area.post("a referral", path + "/referral", referral).expect(200).again();
        area.post("to no trade", path + "/referral", "{\"id\": \"<unused action>\", \"referredTo\": \"Snap\"}");
        area.post(
                "no such finding is referred",
                unusedPath + "/referral",
                referral.replace("<referral>", "<unused action>"));
        area.post("a quote that came of it", "api/quotes", """
                {"id": "<found quote>", "customer": "<customer>", "site": "<site>", "cameFrom": "<visit finding>",
                 "scope": {"validUntil": "2027-07-16", "lines": [{"id": "<found quote line>", "serviceItem": "<skylight>", "surface": "<skylights>", "quantity": #6 H87#}]}}
                """).expect(201);
        String closing = "{\"id\": \"<finding closing>\", \"reason\": \"Mended\"}";
        area.post("a blank reason", path + "/closing", "{\"id\": \"<unused action>\", \"reason\": \" \"}");
        area.post(
                "no such finding is closed",
                unusedPath + "/closing",
                closing.replace("<finding closing>", "<unused action>"));
        area.post("closed", path + "/closing", closing).expect(200).again();
        area.post("closed already", path + "/notice", unused);
        area.get("closed ones", FINDINGS + "?status=CLOSED").expect(200);
    }

    private static void types(Area area) {
        String path = "api/finding-types/SNAP_WASPS";
        String type =
                "{\"name\": \"Snap wasps\", \"trade\": \"exterminator\", \"caution\": \"Keep away\", \"version\": 0}";
        String changed = type.replace(": 0", ": 1");
        String other = "api/finding-types/SNAP_UNUSED";
        area.put("a type", path, type).expect(200).again();
        area.put("inactive", path, changed.replace("}", ", \"active\": false}"))
                .expect(200)
                .again();
        area.put("a stale version", path, changed.replace("away", "off"));
        area.put("a name that is taken", other, type);
        area.put("not a code", "api/finding-types/snap%20wasps", type.replace("wasps", "bees"));
        area.put("a version of what is not there", other, changed.replace("wasps", "bees"));
        area.put("a blank name", other, type.replace("Snap wasps", " "));
        area.put("no name", other, "{\"trade\": \"exterminator\"}");
        area.get("one", path).expect(200);
        area.get("none", other);
        area.shortened().get("all", "api/finding-types").expect(200);
    }
}
