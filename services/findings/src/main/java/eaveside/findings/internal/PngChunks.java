package eaveside.findings.internal;

import eaveside.kernel.Decision;
import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Set;

/**
 * What makes the picture in a PNG file (W3C, Portable Network Graphics Specification, Third Edition, 2025, sections 5 and 11): the rest, texts
 * and profiles, may unfold to hundreds of times its size and is of no use here.
 */
@Decision
final class PngChunks {
    private static final Set<String> OF_THE_PICTURE = Set.of("IHDR", "PLTE", "tRNS", "gAMA", "sRGB", "IDAT", "IEND");
    private static final int SIGNATURE = 8;
    private static final int FRAME = 12; // length, type and checksum

    private PngChunks() {}

    /** The file without the other chunks; from where it breaks off or contradicts itself it is left as it is, for the decoder to refuse. */
    static byte[] ofThePicture(byte[] file) {
        ByteArrayOutputStream kept = new ByteArrayOutputStream(file.length);
        kept.write(file, 0, Math.min(SIGNATURE, file.length));
        int at = SIGNATURE;
        while (at + FRAME <= file.length) {
            ByteBuffer head = ByteBuffer.wrap(file, at, FRAME);
            long length = Integer.toUnsignedLong(head.getInt());
            if (length > file.length - at - FRAME) {
                break;
            }
            int whole = (int) length + FRAME;
            if (OF_THE_PICTURE.contains(new String(file, at + 4, 4, StandardCharsets.ISO_8859_1))) {
                kept.write(file, at, whole);
            }
            at += whole;
        }
        return kept.toByteArray();
    }
}
