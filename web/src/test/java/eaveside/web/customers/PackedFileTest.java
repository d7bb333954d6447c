package eaveside.web.customers;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.web.security.WebRefusal;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PackedFileTest {
    @Test
    void a_file_comes_back_as_it_was() {
        byte[] file = "name\nÄlmsford & Sons\n".getBytes(StandardCharsets.UTF_8);
        assertArrayEquals(file, PackedFile.unpack(PackedFile.pack(file)));
    }

    /** A few bytes can pack a great many. */
    @Test
    void no_more_is_unpacked_than_an_import_reads() {
        String packed = PackedFile.pack(new byte[200_000_000]);
        assertTrue(packed.length() < 300_000, packed.length() + " characters");
        assertEquals(10_000_001, PackedFile.unpack(packed).length);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "x", "!", "H4sI", "H4sIAAAAAAAA_w", "bm8gZ3ppcA"})
    void what_was_not_packed_here_is_refused(String packed) {
        assertThrows(WebRefusal.Unreadable.class, () -> PackedFile.unpack(packed));
    }
}
