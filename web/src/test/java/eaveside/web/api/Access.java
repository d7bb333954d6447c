package eaveside.web.api;

import eaveside.access.Role;
import eaveside.web.api.Operations.Operation;
import eaveside.web.api.World.Caller;
import eaveside.web.testing.Server;
import java.net.URI;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.util.LinkedHashMap;
import java.util.Map;
import org.jsoup.Jsoup;

/** What every operation answers to those who may not ask it, and to bodies that it cannot read. */
final class Access {
    private final World world;
    private final StringBuilder text = new StringBuilder();

    private Access(World world) {
        this.world = world;
    }

    /** Goes through all operations, with ids that are nobody's, one part for each word that their addresses begin with. */
    static Map<String, String> all(World world) {
        Map<String, Access> byWord = new LinkedHashMap<>();
        for (Operation operation : Operations.all()) {
            byWord.computeIfAbsent(operation.template().split("/")[2], word -> new Access(world))
                    .ask(operation);
        }
        Map<String, String> parts = new LinkedHashMap<>();
        parts.put("access", doors(world));
        byWord.forEach((word, access) -> parts.put("access-" + word, access.text.toString()));
        return parts;
    }

    private void ask(Operation operation) {
        String path = operation
                .template()
                .substring(1)
                .replace("{month}", "2190-01")
                .replace("{date}", "1999-01-01")
                .replace("settings/taxes/{code}", "settings/taxes/SNAP-NOBODY")
                .replace("accounts/{code}", "accounts/9999")
                .replace("{code}", "SNAP_NOBODY")
                .replaceAll("\\{[^}]*}", "<nothing at all>");
        Caller may = operation.roles().contains(Role.OFFICE) ? Caller.OFFICE : Caller.OWNER;
        text.append("### ")
                .append(operation.name())
                .append("  ")
                .append(operation.roles())
                .append('\n');
        ask("nobody", Caller.NOBODY, operation, path, "{}");
        if (!operation.roles().contains(Role.TECHNICIAN)) {
            ask("technician", Caller.TECHNICIAN, operation, path, "{}");
        }
        if (!operation.roles().contains(Role.OFFICE)) {
            ask("office", Caller.OFFICE, operation, path, "{}");
        }
        if (operation.takes()) {
            for (String body : new String[] {"", "{}", "{\"id\""}) {
                ask("body " + (body.isEmpty() ? "absent" : body), may, operation, path, body);
            }
        } else if (!operation.method().equals("GET")) {
            ask("not there", may, operation, path, "");
        }
        text.append('\n');
    }

    private void ask(String title, Caller caller, Operation operation, String path, String body) {
        boolean bare = operation.method().equals("GET") || !operation.takes();
        String type = bare ? "" : operation.template().endsWith("/import") ? "text/csv" : "application/json";
        answered(title, world.send(caller, operation.method(), world.filled(path), type, bare ? "" : body));
    }

    private void answered(String title, HttpResponse<String> answer) {
        String type = answer.headers().firstValue("content-type").orElse("").replaceFirst("^application/", "");
        text.append(String.format("%-13s ", title)).append((answer.statusCode() + " " + type).strip());
        answer.headers()
                .firstValue("location")
                .ifPresent(to -> text.append("  to ").append(URI.create(to).getPath()));
        if (!answer.body().isEmpty()) {
            text.append("  ").append(world.named(answer.body()));
        }
        text.append('\n');
    }

    /** Tokens, and what is no operation at all. */
    private static String doors(World world) {
        Access access = new Access(world);
        String person = world.filled("<office>");
        String token = Jsoup.parse(world.form(
                                Caller.OWNER,
                                "settings/users/" + person + "/tokens",
                                "label=Snapshots&scope=WRITE&days=1&password="
                                        + Server.OWNER_PASSWORD.replace(' ', '+'))
                        .body())
                .select("#secret")
                .text();
        String customers = "api/customers?q=Snap%20Nobody";
        access.answered(
                "a token",
                world.send(access.request(customers)
                        .header("Authorization", "Bearer " + token)
                        .build()));
        access.answered(
                "a change",
                world.send(access.request("api/invoices/preview")
                        .header("Authorization", "Bearer " + token)
                        .header("Content-Type", "application/json")
                        .POST(BodyPublishers.ofString("{}"))
                        .build()));
        access.answered(
                "not a token",
                world.send(access.request(customers)
                        .header("Authorization", "Bearer nothing")
                        .build()));
        access.answered(
                "a password",
                world.send(access.request(customers)
                        .header("Authorization", "Basic c25hcA==")
                        .build()));
        access.answered("nobody", world.send(access.request(customers).build()));
        access.answered(
                "a page wanted",
                world.send(HttpRequest.newBuilder(world.server().at(customers))
                        .header("Accept", "text/html")
                        .build()));
        access.answered("no address", world.send(Caller.OFFICE, "GET", "api/no-such-thing", "", ""));
        access.answered("nothing below", world.send(Caller.OFFICE, "GET", "api", "", ""));
        access.answered("no method", world.send(Caller.OFFICE, "DELETE", "api/customers", "", ""));
        for (String body : new String[] {"[]", "null", "seven", "\"seven\""}) {
            access.answered(
                    "body " + body, world.send(Caller.OFFICE, "POST", "api/payments", "application/json", body));
        }
        access.answered("another type", world.send(Caller.OFFICE, "POST", "api/payments", "text/plain", "{}"));
        access.answered("from nowhere", world.change(Caller.OFFICE, "api/invoices/preview", null));
        access.answered("elsewhere", world.change(Caller.OFFICE, "api/invoices/preview", "https://elsewhere.example"));
        return access.text.toString();
    }

    private HttpRequest.Builder request(String path) {
        return HttpRequest.newBuilder(world.server().at(path)).header("Accept", "application/json");
    }
}
