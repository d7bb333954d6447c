package eaveside.catalog;

import eaveside.kernel.Decision;
import eaveside.kernel.Texts;
import java.util.regex.Pattern;

/** Short codes that people type and read: capitals, digits and hyphens. */
@Decision
final class Codes {
    private static final Pattern CODE = Pattern.compile("[A-Z0-9]([A-Z0-9-]{0,18}[A-Z0-9])?");

    private Codes() {}

    static String checked(String field, String text) {
        String code = Texts.required(field, text, 20);
        if (!CODE.matcher(code).matches()) {
            throw new CatalogRefusal.BadCode(field, code);
        }
        return code;
    }
}
