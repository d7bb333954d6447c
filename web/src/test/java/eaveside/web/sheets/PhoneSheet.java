package eaveside.web.sheets;

import eaveside.web.testing.Server;
import eaveside.web.testing.Visitor;
import eaveside.web.visits.CrewAtWork;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.stream.Collectors;
import javax.imageio.ImageIO;

/** What a phone of the crew fills in and sends. */
final class PhoneSheet {
    private final CrewAtWork at = CrewAtWork.shared();
    private final Visitor technician = at.technician();
    private final HttpClient phone = at.site().technician();

    HttpClient http() {
        return phone;
    }

    /** The form with everything done as planned and the time told. */
    Map<String, String> filled(String visit) {
        Map<String, String> form = technician.form("sheets/" + visit, "/sheets/" + visit);
        form.put("line-0-done", "48");
        form.put("onSiteMinutes", "120");
        form.put("drivingMinutes", "40");
        form.put("loadingMinutes", "0");
        form.put("distance", "12.5");
        return form;
    }

    String status(String visit) {
        return at.read(visit).getString("status");
    }

    HttpResponse<String> send(String path, String type, byte[] body) {
        Server server = Server.shared();
        return server.send(
                phone,
                HttpRequest.newBuilder(server.at(path))
                        .header("Content-Type", type)
                        .header("Accept", "application/json")
                        .header("Sec-Fetch-Site", "same-origin")
                        .POST(BodyPublishers.ofByteArray(body))
                        .build());
    }

    HttpResponse<String> sendFromPhone(String visit, Map<String, String> form) {
        String body = form.entrySet().stream()
                .map(f -> URLEncoder.encode(f.getKey(), StandardCharsets.UTF_8) + "="
                        + URLEncoder.encode(f.getValue(), StandardCharsets.UTF_8))
                .collect(Collectors.joining("&"));
        return send("sheets/" + visit, "application/x-www-form-urlencoded", body.getBytes(StandardCharsets.UTF_8));
    }

    static byte[] photo() throws IOException {
        var picture = new BufferedImage(400, 300, BufferedImage.TYPE_INT_RGB);
        var out = new ByteArrayOutputStream();
        ImageIO.write(picture, "png", out);
        return out.toByteArray();
    }
}
