package eaveside.web;

import java.util.List;
import java.util.zip.CRC32;

/** Addresses of our static files: their contents' checksum is part of the address. */
public final class Assets {
    private static final List<String> VERSIONED =
            List.of("eaveside.css", "eaveside.js", "htmx.min.js", "sheet-kept.js", "sheet-form.js", "job-sheet.js");
    private static final String VERSION = checksum();

    private Assets() {}

    /** The address of a file, for templates. */
    public static String url(String file) {
        return "/assets/" + VERSION + "/" + file;
    }

    static String version() {
        return VERSION;
    }

    private static String checksum() {
        CRC32 crc = new CRC32();
        VERSIONED.forEach(file -> crc.update(AssetResource.read(file)));
        return Long.toHexString(crc.getValue());
    }
}
