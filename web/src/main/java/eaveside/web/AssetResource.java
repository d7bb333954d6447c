package eaveside.web;

import eaveside.web.security.Open;
import eaveside.web.security.WebRefusal;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/** Our own style sheets, scripts and pictures; their address carries their version, so that a browser may keep them. */
@Path("/assets")
@ApplicationScoped
@Open
public class AssetResource {
    private static final Map<String, String> TYPES = Map.of(
            "css", "text/css;charset=UTF-8",
            "js", "text/javascript;charset=UTF-8",
            "svg", "image/svg+xml",
            "webmanifest", "application/manifest+json");

    private final Map<String, byte[]> kept = new ConcurrentHashMap<>();

    @GET
    @Path("{version}/{file}")
    public Response file(@PathParam("version") String version, @PathParam("file") String file) {
        String type = TYPES.get(file.substring(file.lastIndexOf('.') + 1));
        if (type == null || !file.matches("[a-z0-9.-]+")) {
            throw new WebRefusal.NoSuchPage();
        }
        boolean current = version.equals(Assets.version());
        return Response.ok(kept.computeIfAbsent(file, AssetResource::read))
                .type(type)
                .header(HttpHeaders.CACHE_CONTROL, current ? "public, max-age=31536000, immutable" : "no-cache")
                .build();
    }

    static byte[] read(String file) {
        try (InputStream in = AssetResource.class.getResourceAsStream("/assets/" + file)) {
            if (in == null) {
                throw new WebRefusal.NoSuchPage();
            }
            return in.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
