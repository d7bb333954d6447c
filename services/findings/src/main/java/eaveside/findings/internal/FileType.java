package eaveside.findings.internal;

import com.drew.imaging.FileTypeDetector;
import eaveside.kernel.Decision;
import java.io.BufferedInputStream;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
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
        if (head.startsWith("\u0089PNG\r\n\u001a\n")) {
            return PNG; // also where it breaks off behind its signature
        }
        if (head.startsWith("ftypavi", 4)) {
            return AVIF; // the detector takes it for a video
        }
        if (head.startsWith("%PDF")) {
            return PDF; // the detector knows no versions but the oldest
        }
        return switch (detected(file)) {
            case Jpeg -> JPEG;
            case Heif -> HEIC;
            case WebP -> WEBP;
            case Gif -> GIF;
            case Tiff, Arw, Crw, Cr2, Nef, Orf, Raf, Rw2, Crx -> TIFF;
            case Bmp -> BMP;
            case Psd -> PHOTOSHOP;
            case Zip -> ARCHIVE;
            case QuickTime, Mp4, Avi, Asf, Flv, Vob, Mxf, Riff -> VIDEO;
            default -> markup(head.toLowerCase(Locale.ROOT));
        };
    }

    private static com.drew.imaging.FileType detected(byte[] file) {
        try {
            // The detector looks at the first bytes only where there are enough for the longest signature.
            byte[] head = Arrays.copyOf(file, 64);
            return FileTypeDetector.detectFileType(new BufferedInputStream(new ByteArrayInputStream(head)));
        } catch (IOException e) {
            throw new UncheckedIOException("memory cannot fail to be read", e);
        }
    }

    private static FileType markup(String head) {
        if (head.contains("<svg")) {
            return SVG;
        }
        return head.stripLeading().startsWith("<") || head.contains("<html") ? MARKUP : UNKNOWN;
    }
}
