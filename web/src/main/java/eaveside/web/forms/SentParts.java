package eaveside.web.forms;

import eaveside.web.security.WebRefusal;
import jakarta.ws.rs.core.EntityPart;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The parts of a form with files. What no browser sends is refused, however the reader of the parts takes it. */
public final class SentParts {
    private final List<EntityPart> parts;

    public SentParts(List<EntityPart> parts) {
        this.parts = parts;
    }

    /** The content of the last part of that name; null where there is none. */
    public byte @Nullable [] bytes(String name) {
        byte[] found = null;
        for (EntityPart part : parts) {
            if (name.equals(part.getName())) {
                found = content(part);
            }
        }
        return found;
    }

    public @Nullable String text(String name) {
        byte[] found = bytes(name);
        return found == null ? null : new String(found, StandardCharsets.UTF_8);
    }

    private static byte[] content(EntityPart part) {
        try (InputStream in = part.getContent()) {
            if (in == null) {
                throw new IOException("no content");
            }
            return in.readAllBytes();
        } catch (IOException | RuntimeException e) {
            throw new WebRefusal.Unreadable("A part of the form cannot be read");
        }
    }
}
