package eaveside.access.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AccessPublishedExamplesTest {
    /**
     * Source: Biryukov, Dinu and Khovratovich, the Argon2 reference implementation (repository P-H-C/phc-winner-argon2,
     * release of 2019), src/test.c, its test of Argon2id version 19: password "password", salt "somesalt", two passes over
     * 64 MiB, one lane.
     */
    @Test
    void the_hash_of_the_reference_implementation() {
        String published = "$argon2id$v=19$m=65536,t=2,p=1$c29tZXNhbHQ$CTFhFdXPJO1aFaMaO6Mm5c8y7cJHAph8ArZWb2GRPPc";
        PasswordHasher hasher = new PasswordHasher();
        assertTrue(hasher.matches("password".toCharArray(), published));
        assertFalse(hasher.matches("passwore".toCharArray(), published));
    }

    /**
     * Source: D. S. Wilkerson, A Proposal for Proquints: Identifiers that are Readable, Spellable, and Pronounceable
     * (2009), arXiv:0901.4016: addresses and their words.
     */
    @Test
    void the_words_of_the_proposal() {
        assertEquals("lusab-babad", Proquint.of(127 << 8, 1));
        assertEquals("gutih-tugad", Proquint.of(63 << 8 | 84, 220 << 8 | 193));
        assertEquals("mudof-sakat", Proquint.of(140 << 8 | 98, 193 << 8 | 141));
        assertEquals("budov-kuras", Proquint.of(12 << 8 | 110, 110 << 8 | 204));
    }

    /**
     * Source: M'Raihi, Machani, Pei and Rydell, TOTP: Time-Based One-Time Password Algorithm, RFC 6238 (2011), appendix B: the
     * column of SHA-1, of whose eight digits the last six are those of a code of six; its secret in base 32.
     */
    @ParameterizedTest
    @CsvSource({
        "59, 287082",
        "1111111109, 081804",
        "1111111111, 050471",
        "1234567890, 005924",
        "2000000000, 279037",
        "20000000000, 353130",
    })
    void codes_of_authenticator_apps(long second, String code) {
        assertEquals(code, AppCodes.code("GEZDGNBVGY3TQOJQGEZDGNBVGY3TQOJQ", Instant.ofEpochSecond(second)));
    }
}
