package eaveside.customers.internal;

import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.kernel.Refusal;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Files that are none: each is read or refused, and soon. */
class CustomerFileFuzzTest {
    private static final long SEED = Long.getLong("eaveside.seed", 20_261_128L);
    private static final byte[] WELL = ("customer,country,phone,city\r\n"
                    + "\"Marlowe, Ida\",US,555-0101,Tansyford\r\n"
                    + "'=Sum,US,,\"Old \"\"Town\"\"\"\r\n")
            .getBytes(StandardCharsets.UTF_8);
    private static final byte[] SIGNS = "\",;\t\r\n'=\\\0\u00ff".getBytes(StandardCharsets.ISO_8859_1);

    @Test
    void a_file_is_read_or_refused() {
        SplittableRandom random = new SplittableRandom(SEED);
        int read = 0;
        for (int i = 0; i < 20_000; i++) {
            byte[] file = spoiled(random);
            String at = "file " + i + " of seed " + SEED;
            try {
                CustomerFile.read(file);
                read++;
            } catch (Refusal refusal) {
                assertTrue(!refusal.text().isBlank(), at);
            } catch (RuntimeException e) {
                throw new AssertionError(at, e);
            }
        }
        assertTrue(read > 100, "not all are refused: " + read);
    }

    @Test
    void one_quote_that_is_never_closed_and_a_million_columns_take_no_time() {
        byte[] open = ("name\n\"" + "a\n".repeat(4_000_000)).getBytes(StandardCharsets.UTF_8);
        byte[] wide = ",".repeat(9_000_000).getBytes(StandardCharsets.UTF_8);
        for (byte[] file : new byte[][] {open, wide}) {
            assertTimeoutPreemptively(Duration.ofSeconds(10), () -> {
                try {
                    CustomerFile.read(file);
                } catch (Refusal refusal) {
                    // As it should be.
                }
            });
        }
    }

    private static byte[] spoiled(SplittableRandom random) {
        byte[] file = Arrays.copyOf(WELL, random.nextInt(5) == 0 ? random.nextInt(WELL.length) : WELL.length);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        for (byte b : file) {
            int chance = random.nextInt(60);
            if (chance == 0) {
                out.write(random.nextInt(256));
            } else if (chance == 1) {
                out.write(SIGNS[random.nextInt(SIGNS.length)]);
                out.write(b);
            } else if (chance > 2) {
                out.write(b);
            }
        }
        return out.toByteArray();
    }
}
