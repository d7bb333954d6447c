package eaveside.kernel;

import com.fasterxml.uuid.Generators;
import com.fasterxml.uuid.impl.TimeBasedEpochGenerator;
import java.util.UUID;

/** New identities: UUID version 7 (RFC 9562), which sort by the time they were made and so keep indexes compact. */
public final class Ids {
    private static final TimeBasedEpochGenerator GENERATOR = Generators.timeBasedEpochGenerator();

    private Ids() {}

    public static UUID next() {
        return GENERATOR.generate();
    }

    /** The id of a thing that another one brings along: always the same for the same name (UUID version 5, RFC 9562). */
    public static UUID derived(UUID from, String name) {
        return Generators.nameBasedGenerator(from).generate(name);
    }

    /** The id that a text says; refuses anything that is not a UUID as "not found", since no such thing exists here. */
    public static UUID parse(String text) {
        try {
            UUID id = UUID.fromString(text);
            if (id.toString().equalsIgnoreCase(text)) {
                return id;
            }
        } catch (IllegalArgumentException e) {
            // falls through to the one refusal below
        }
        throw new KernelRefusal.NotAnId(text.length() > 40 ? text.substring(0, 40) + "…" : text);
    }
}
