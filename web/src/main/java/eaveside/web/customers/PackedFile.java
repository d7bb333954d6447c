package eaveside.web.customers;

import eaveside.web.security.WebRefusal;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Base64;
import java.util.zip.GZIPInputStream;
import java.util.zip.GZIPOutputStream;

/** A file that a page carries from its dry run to its import, so that the server need not keep it: gzip in Base64. */
final class PackedFile {
    /** More than the import reads, and all that is ever unpacked: a few bytes can pack a great many. */
    private static final int MOST_BYTES = 10_000_001;

    private PackedFile() {}

    static String pack(byte[] file) {
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        try (GZIPOutputStream gzip = new GZIPOutputStream(packed)) {
            gzip.write(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return Base64.getUrlEncoder().withoutPadding().encodeToString(packed.toByteArray());
    }

    /** Refuses as malformed what was not packed here. */
    static byte[] unpack(String packed) {
        try (GZIPInputStream gzip = new GZIPInputStream(
                new ByteArrayInputStream(Base64.getUrlDecoder().decode(packed)))) {
            return gzip.readNBytes(MOST_BYTES);
        } catch (IOException | IllegalArgumentException e) {
            throw new WebRefusal.Unreadable("The file did not come from the dry run of this page");
        }
    }
}
