package eaveside.findings.internal;

import eaveside.kernel.Decision;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Locale;

/** What a file is by its first bytes, never by its name: the pictures taken, and the rest by a name for its refusal. */
@Decision
enum FileType {
    JPEG("a JPEG picture"),
    PNG("a PNG picture"),
    HEIC("a HEIC picture"),
    AVIF("an AVIF picture"),
    VIDEO("a video"),
    WEBP("a WebP picture"),
    GIF("a GIF picture"),
    TIFF("a TIFF picture or a camera's raw file"),
    BMP("a BMP picture"),
    JPEG_XL("a JPEG XL picture"),
    JPEG_2000("a JPEG 2000 picture"),
    PHOTOSHOP("a layered picture (PSD)"),
    SVG("an SVG drawing"),
    PDF("a PDF document"),
    ARCHIVE("an archive or office document (ZIP)"),
    MARKUP("a page of text (HTML or XML)"),
    EMPTY("empty"),
    UNKNOWN("of a type not known here");

    private final String description;

    FileType(String description) {
        this.description = description;
    }

    String description() {
        return description;
    }

    static FileType of(byte[] file) {
        if (file.length == 0) {
            return EMPTY;
        }
        // One character per byte, so that signatures can be written down as text.
        String head = new String(file, 0, Math.min(file.length, 512), StandardCharsets.ISO_8859_1);
        if (head.startsWith("\u00ff\u00d8\u00ff")) {
            return JPEG;
        }
        if (head.startsWith("\u0089PNG\r\n\u001a\n")) {
            return PNG;
        }
        if (head.startsWith("ftyp", 4)) {
            return brand(head);
        }
        if (head.startsWith("RIFF") && head.startsWith("WEBP", 8)) {
            return WEBP;
        }
        if (head.startsWith("\u00ff\n") || head.startsWith("JXL ", 4)) {
            return JPEG_XL;
        }
        if (head.startsWith("jP  ", 4) || head.startsWith("\u00ff\u004f\u00ff\u0051")) {
            return JPEG_2000;
        }
        for (Signature signature : Signature.values()) {
            if (head.startsWith(signature.text)) {
                return signature.type;
            }
        }
        return markup(head.toLowerCase(Locale.ROOT));
    }

    /** ISO base media files say in their major and compatible brands what they hold (ISO/IEC 14496-12, 23008-12). */
    private static FileType brand(String head) {
        int end = Math.min(head.length(), Math.max(12, head.charAt(2) * 256 + head.charAt(3)));
        String brands = head.substring(8, end);
        if (brands.contains("avif") || brands.contains("avis")) {
            return AVIF;
        }
        boolean heif = Arrays.asList("heic", "heix", "hevc", "hevx", "heim", "heis", "mif1", "msf1").stream()
                .anyMatch(brands::contains);
        return heif ? HEIC : VIDEO;
    }

    private static FileType markup(String head) {
        if (head.contains("<svg")) {
            return SVG;
        }
        return head.stripLeading().startsWith("<") || head.contains("<html") ? MARKUP : UNKNOWN;
    }

    private enum Signature {
        GIF("GIF8", FileType.GIF),
        TIFF_LITTLE_ENDIAN("II*\u0000", FileType.TIFF),
        TIFF_BIG_ENDIAN("MM\u0000*", FileType.TIFF),
        BMP("BM", FileType.BMP),
        PHOTOSHOP("8BPS", FileType.PHOTOSHOP),
        PDF("%PDF", FileType.PDF),
        ARCHIVE("PK\u0003\u0004", FileType.ARCHIVE),
        MATROSKA("\u001aE\u00df\u00a3", FileType.VIDEO);

        private final String text;
        private final FileType type;

        Signature(String text, FileType type) {
            this.text = text;
            this.type = type;
        }
    }
}
