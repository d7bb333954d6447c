package eaveside.web.settings;

import eaveside.web.Page;

/**
 * A password or token in the only answer that ever shows it.
 *
 * @param  what  the key of the text that says what it is
 * @param  whose the name to sign in with, or what a token is for
 * @param  back  where the reader goes on to
 */
public record SecretPage(String what, String whose, String secret, String back) implements Page {
    @Override
    public String template() {
        return "settings/secret.jte";
    }

    /** Never the secret. */
    @Override
    public String toString() {
        return what + " of " + whose;
    }
}
