package eaveside.web.forms;

import eaveside.web.security.Viewer;
import eaveside.web.security.WebRefusal;
import jakarta.inject.Inject;
import jakarta.inject.Singleton;
import jakarta.json.Json;
import jakarta.json.JsonConfig;
import jakarta.json.JsonObject;
import jakarta.json.JsonReader;
import jakarta.json.JsonReaderFactory;
import jakarta.json.stream.JsonParser;
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
import java.io.StringReader;
import java.lang.annotation.Annotation;
import java.lang.reflect.Type;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.Map;

/**
 * Reads the bodies of scripts straight into the commands of the use cases: whatever resource declares a record of a module
 * as its parameter gets it made, or the script is told everything that is wrong with what it sent.
 */
@Provider
@Singleton
@Consumes(MediaType.APPLICATION_JSON)
public class JsonBodies implements MessageBodyReader<Record> {
    /** What is said twice is not said: nobody knows which is meant. */
    private static final JsonReaderFactory READERS =
            Json.createReaderFactory(Map.of(JsonConfig.KEY_STRATEGY, JsonConfig.KeyStrategy.NONE));

    /** Of any number; amounts and quantities are texts. */
    private static final int MOST_DIGITS = 40;

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

    /**
     * One object and nothing after it, without a name said twice; numbers of more digits than anything here has are refused
     * before they are reckoned with.
     */
    static JsonObject parsed(InputStream body) throws IOException {
        byte[] bytes = body.readAllBytes();
        if (bytes.length == 0) {
            throw new WebRefusal.Unreadable("'body' is missing");
        }
        String text = text(bytes);
        if (hasLongNumber(text)) {
            throw new WebRefusal.Unreadable("The body has a number of more than " + MOST_DIGITS + " digits");
        }
        try (JsonParser parser = Json.createParser(new StringReader(text));
                JsonReader reader = READERS.createReader(new StringReader(text))) {
            while (parser.hasNext()) { // throws where something comes after the object, which the reader does not see
                parser.next();
            }
            return reader.readObject();
        } catch (RuntimeException e) { // the parser throws more than its own where objects lie too deep in one another
            throw new WebRefusal.Unreadable("The body is not a JSON object");
        }
    }

    /** Whether more digits follow each other than any number has, outside of texts. */
    private static boolean hasLongNumber(String json) {
        boolean inText = false;
        int digits = 0;
        for (int i = 0; i < json.length(); i++) {
            char c = json.charAt(i);
            if (inText && c == '\\') {
                i++;
            } else if (c == '"') {
                inText = !inText;
            }
            if (!inText && c >= '0' && c <= '9') {
                digits++;
            } else if (c != '.') {
                digits = 0;
            }
            if (digits > MOST_DIGITS) {
                return true;
            }
        }
        return false;
    }

    /** JSON that travels is UTF-8 (RFC 8259, 8.1); what is not would be stored as something else than was sent. */
    private static String text(byte[] bytes) {
        try {
            return StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(bytes))
                    .toString()
                    .replaceFirst("^\ufeff", ""); // a byte order mark, which a parser may ignore
        } catch (CharacterCodingException e) {
            throw new WebRefusal.Unreadable("The body is not UTF-8");
        }
    }
}
