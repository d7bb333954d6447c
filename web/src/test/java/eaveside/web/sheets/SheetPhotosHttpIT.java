package eaveside.web.sheets;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.web.testing.Server;
import eaveside.web.testing.Visitor;
import eaveside.web.visits.CrewAtWork;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.charset.StandardCharsets;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.Test;

/** Photos of a visit over HTTP, on the real server. */
class SheetPhotosHttpIT {
    private final CrewAtWork at = CrewAtWork.shared();
    private final Visitor technician = at.technician();
    private final PhoneSheet phone = new PhoneSheet();

    @Test
    void photos_go_up_one_at_atime_and_only_the_crew_and_the_office_see_them() throws IOException, SQLException {
        String visit = at.visit();
        String id = CrewAtWork.id();
        String path = "sheets/" + visit + "/photos/" + id;
        for (int i = 0; i < 2; i++) {
            var stored = phone.send(path, "image/png", PhoneSheet.photo());
            assertEquals(200, stored.statusCode(), stored.body());
        }
        assertEquals(1, at.site().audited("photo.store", "DONE", id), "sent twice, stored and told once");
        byte[] pdf = "%PDF-1.7 no picture".getBytes(StandardCharsets.US_ASCII);
        var refused = phone.send("sheets/" + visit + "/photos/" + CrewAtWork.id(), "image/jpeg", pdf);
        assertEquals(422, refused.statusCode());
        assertTrue(refused.body().contains("PDF"), refused.body());
        var request = HttpRequest.newBuilder(Server.shared().at(path))
                .header("Sec-Fetch-Site", "same-origin")
                .expectContinue(true)
                .POST(BodyPublishers.ofByteArray(new byte[20_000_000]))
                .build();
        assertEquals(413, Server.shared().send(phone.http(), request).statusCode());

        for (Visitor reader : new Visitor[] {technician, at.office()}) {
            var thumbnail = reader.get("photos/" + id + "/thumbnail");
            assertEquals(200, thumbnail.statusCode());
            assertEquals(
                    "image/jpeg", thumbnail.headers().firstValue("content-type").orElse(""));
        }
        assertEquals(403, Visitor.technician().get("photos/" + id).statusCode());
        assertEquals(1, at.site().audited("access.get", "REFUSED", "/photos/" + id));
        assertEquals(404, technician.get("photos/" + CrewAtWork.id()).statusCode());

        // The sheet offers what is stored; ticked, it belongs to the finding.
        assertEquals(
                2,
                Visitor.page(technician.get("sheets/" + visit))
                        .select("input[type=checkbox][value=" + id + "]")
                        .size());
        Map<String, String> form = phone.filled(visit);
        form.put("finding-0-type", "RUST");
        form.put("finding-0-severity", "NOTE");
        form.put("finding-0-photo", id);
        assertEquals(303, technician.post("sheets/" + visit, form).statusCode());
        assertEquals(
                1,
                Visitor.page(at.office().get("visits/" + visit))
                        .select("img[src=/photos/" + id + "/thumbnail]")
                        .size());
    }

    @Test
    void the_same_photo_from_several_pages_at_once_is_kept_once() throws Exception {
        String visit = at.visit();
        String id = CrewAtWork.id();
        byte[] photo = PhoneSheet.photo();
        Callable<Integer> one = () -> phone.send("sheets/" + visit + "/photos/" + id, "image/png", photo)
                .statusCode();
        List<Integer> statuses = new ArrayList<>();
        try (var pages = Executors.newFixedThreadPool(6)) {
            for (Future<Integer> status : pages.invokeAll(Collections.nCopies(6, one))) {
                statuses.add(status.get());
            }
        }
        assertEquals(Collections.nCopies(6, 200), statuses);
        assertEquals("1", Visitor.value("select count(*)::text from photo where visit_id = ?::uuid", visit));
        assertEquals(1, at.site().audited("photo.store", "DONE", id));
    }

    @Test
    void the_plain_form_sends_aphoto_too() throws IOException {
        String visit = at.visit();
        var body = new ByteArrayOutputStream();
        body.write(("--b0undary\r\nContent-Disposition: form-data; name=\"photo\"; filename=\"a.png\"\r\n"
                        + "Content-Type: image/png\r\n\r\n")
                .getBytes(StandardCharsets.US_ASCII));
        body.write(PhoneSheet.photo());
        body.write("\r\n--b0undary--\r\n".getBytes(StandardCharsets.US_ASCII));
        Server server = Server.shared();

        var sent = server.send(
                phone.http(),
                HttpRequest.newBuilder(server.at("sheets/" + visit + "/photos"))
                        .header("Content-Type", "multipart/form-data; boundary=b0undary")
                        .header("Accept", "text/html")
                        .header("Sec-Fetch-Site", "same-origin")
                        .POST(BodyPublishers.ofByteArray(body.toByteArray()))
                        .build());

        assertEquals("/sheets/" + visit + "?done=sheets.photo-stored", Visitor.location(sent), sent.body());
        assertEquals("1", Visitor.value("select count(*)::text from photo where visit_id = ?::uuid", visit));
    }

    @Test
    void photos_that_nobody_ticked_show_on_the_visit() throws IOException {
        String visit = at.visit();
        String photo = CrewAtWork.id();
        assertEquals(
                200,
                phone.send("sheets/" + visit + "/photos/" + photo, "image/png", PhoneSheet.photo())
                        .statusCode());
        assertEquals(1, pictures(visit, photo), "before it is signed off");
        assertEquals(
                303, technician.post("sheets/" + visit, phone.filled(visit)).statusCode());
        assertEquals(1, pictures(visit, photo), "and afterwards");
    }

    private int pictures(String visit, String photo) {
        return Visitor.page(at.office().get("visits/" + visit))
                .select("img[src=/photos/" + photo + "/thumbnail]")
                .size();
    }
}
