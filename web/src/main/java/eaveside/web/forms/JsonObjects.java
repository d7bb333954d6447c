package eaveside.web.forms;

import jakarta.inject.Singleton;
import jakarta.json.JsonObject;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.ext.MessageBodyReader;
import jakarta.ws.rs.ext.Provider;
import java.io.IOException;
import java.io.InputStream;
import java.lang.annotation.Annotation;
import java.lang.reflect.Type;

/**
 * Gives resources a body as it is where they say so, read as carefully as one that becomes a record: the platform's own reader
 * looks for the end of a body past it, and keeps a thread for ever.
 */
@Provider
@Singleton
@Consumes(MediaType.APPLICATION_JSON)
public class JsonObjects implements MessageBodyReader<JsonObject> {
    @Override
    public boolean isReadable(Class<?> type, Type genericType, Annotation[] annotations, MediaType mediaType) {
        return type == JsonObject.class;
    }

    @Override
    public JsonObject readFrom(
            Class<JsonObject> type,
            Type genericType,
            Annotation[] annotations,
            MediaType mediaType,
            MultivaluedMap<String, String> headers,
            InputStream body)
            throws IOException {
        return JsonBodies.parsed(body);
    }
}
