package eaveside.web;

import eaveside.web.security.WebRefusal;
import jakarta.annotation.security.PermitAll;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Arrays;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.zip.GZIPOutputStream;
import org.jspecify.annotations.Nullable;

/** Our own style sheets, scripts and pictures; their address carries their version, so that a browser may keep them. */
@Path("/assets")
@ApplicationScoped
@PermitAll
public class AssetResource {
    private static final Map<String, String> TYPES = Map.of(
            "css", "text/css;charset=UTF-8",
            "js", "text/javascript;charset=UTF-8",
            "svg", "image/svg+xml",
            "webmanifest", "application/manifest+json");

    /** A file as it is, and compressed for browsers that take it so: phones on a roof have little signal. */
    private record Kept(byte[] plain, byte[] compressed) {
        static Kept of(byte[] plain) {
            var out = new ByteArrayOutputStream();
            try (var zip = new GZIPOutputStream(out)) {
                zip.write(plain);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
            return new Kept(plain, out.toByteArray());
        }
    }

    private final Map<String, Kept> kept = new ConcurrentHashMap<>();

    @Context
    HttpHeaders asked;

    @GET
    @Path("{version}/{file}")
    public Response file(@PathParam("version") String version, @PathParam("file") String file) {
        String type = TYPES.get(file.substring(file.lastIndexOf('.') + 1));
        if (type == null || !file.matches("[a-z0-9.-]+")) {
            throw new WebRefusal.NoSuchPage();
        }
        boolean current = version.equals(Assets.version());
        Kept content = kept.computeIfAbsent(file, name -> Kept.of(read(name)));
        boolean compressed = takesCompressed(asked.getHeaderString(HttpHeaders.ACCEPT_ENCODING));
        return Response.ok(compressed ? content.compressed() : content.plain())
                .type(type)
                .header(HttpHeaders.CONTENT_ENCODING, compressed ? "gzip" : null)
                .header(HttpHeaders.VARY, HttpHeaders.ACCEPT_ENCODING)
                .header(HttpHeaders.CACHE_CONTROL, current ? "public, max-age=31536000, immutable" : "no-cache")
                .build();
    }

    private static boolean takesCompressed(@Nullable String encodings) {
        return encodings != null
                && Arrays.stream(encodings.split(","))
                        .map(String::strip)
                        .anyMatch(encoding -> encoding.matches("gzip(;\\s*+q=(1(\\.0{0,3})?|0\\.(?!0+$)[0-9]{1,3}))?"));
    }

    /** A file of ours as it is. */
    public static byte[] read(String file) {
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
