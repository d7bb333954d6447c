package eaveside.web.forms;

import eaveside.web.security.Viewer;
import eaveside.web.security.WebRefusal;
import jakarta.inject.Inject;
import jakarta.inject.Singleton;
import jakarta.json.Json;
import jakarta.json.JsonObject;
import jakarta.json.JsonReader;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.UriInfo;
import jakarta.ws.rs.ext.MessageBodyReader;
import jakarta.ws.rs.ext.Provider;
import java.io.IOException;
import java.io.InputStream;
import java.lang.annotation.Annotation;
import java.lang.reflect.Type;

/**
 * Reads the bodies of scripts straight into the commands of the use cases: whatever resource declares a record of a module
 * as its parameter gets it made, or the script is told everything that is wrong with what it sent.
 */
@Provider
@Singleton
@Consumes(MediaType.APPLICATION_JSON)
public class JsonBodies implements MessageBodyReader<Record> {
    @Inject
    Viewer viewer;

    @Context
    UriInfo uri;

    @Context
    HttpServletRequest request;

    @Override
    public boolean isReadable(Class<?> type, Type genericType, Annotation[] annotations, MediaType mediaType) {
        return type.isRecord() && !type.getName().startsWith("eaveside.web.");
    }

    @Override
    public Record readFrom(
            Class<Record> type,
            Type genericType,
            Annotation[] annotations,
            MediaType mediaType,
            MultivaluedMap<String, String> headers,
            InputStream body)
            throws IOException {
        JsonObject sent = parsed(body);
        Named.keep(request, sent);
        return JsonReading.read(type, sent, Given.of(Shape.of(type), uri, viewer));
    }

    private static JsonObject parsed(InputStream body) throws IOException {
        byte[] bytes = body.readAllBytes();
        if (bytes.length == 0) {
            throw new WebRefusal.Unreadable("'body' is missing");
        }
        try (JsonReader reader = Json.createReader(new java.io.ByteArrayInputStream(bytes))) {
            return reader.readObject();
        } catch (RuntimeException e) { // the parser throws more than its own where objects lie too deep in one another
            throw new WebRefusal.Unreadable("The body is not a JSON object");
        }
    }
}
