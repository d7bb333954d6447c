package eaveside.access.internal;

import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class AppKeyTest {
    /** RFC 3986, 2.1: a blank in an address is %20. Apps show the company as it stands there. */
    @Test
    void an_app_shows_the_company_as_it_is_called() {
        String uri = AppCodes.key("GEZDGNBVGY3TQOJQGEZDGNBVGY3TQOJQ", "edda", "Two Words + One")
                .uri();
        assertTrue(uri.startsWith("otpauth://totp/Two%20Words%20%2B%20One:edda?"), uri);
        assertTrue(uri.contains("issuer=Two%20Words%20%2B%20One"), uri);
    }
}
