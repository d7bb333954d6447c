package eaveside.web;

import java.text.MessageFormat;
import java.util.Locale;
import java.util.MissingResourceException;
import java.util.ResourceBundle;

/** The texts that people read, one bundle for each area under {@code texts/}. */
public final class Texts {
    private Texts() {}

    /** The message of {@code area.key}, its arguments filled in; the key itself where the text is missing. */
    public static String of(Locale locale, String key, Object... arguments) {
        int dot = key.indexOf('.');
        try {
            String pattern = ResourceBundle.getBundle("texts/" + key.substring(0, dot), locale)
                    .getString(key.substring(dot + 1));
            if (pattern.indexOf('{') < 0) {
                return pattern; // most texts: a format is parsed anew each time
            }
            // Single quotes are plain text in our bundles: only braces are special.
            return new MessageFormat(pattern.replace("'", "''"), locale).format(arguments);
        } catch (MissingResourceException | StringIndexOutOfBoundsException e) {
            return key;
        }
    }
}
