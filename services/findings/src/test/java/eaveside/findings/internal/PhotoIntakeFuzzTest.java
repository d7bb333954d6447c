package eaveside.findings.internal;

import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.findings.Pictures;
import eaveside.kernel.Refusal;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Pictures that are none: each is taken or refused. */
class PhotoIntakeFuzzTest {
    private static final long SEED = Long.getLong("eaveside.seed", 20_261_128L);

    @Test
    void a_picture_is_taken_or_refused() {
        SplittableRandom random = new SplittableRandom(SEED);
        List<byte[]> well = List.of(
                Pictures.png(60, 40),
                Pictures.jpeg(60, 40),
                Pictures.progressiveJpeg(60, 40),
                Pictures.withExif(Pictures.jpeg(60, 40), 6));
        int taken = 0;
        for (int i = 0; i < 3_000; i++) {
            byte[] file = spoiled(well.get(i % well.size()), random);
            String at = "picture " + i + " of seed " + SEED;
            try {
                PhotoIntake.take(file);
                taken++;
            } catch (Refusal refusal) {
                assertTrue(!refusal.text().isBlank(), at);
            } catch (RuntimeException | Error e) {
                throw new AssertionError(at, e);
            }
        }
        assertTrue(taken > 20, "not all are refused: " + taken);
    }

    private static byte[] spoiled(byte[] well, SplittableRandom random) {
        byte[] file = Arrays.copyOf(well, random.nextInt(6) == 0 ? random.nextInt(well.length) : well.length);
        for (int i = random.nextInt(1, 12); i > 0 && file.length > 0; i--) {
            file[random.nextInt(3) == 0 ? random.nextInt(Math.min(64, file.length)) : random.nextInt(file.length)] =
                    (byte) (random.nextInt(4) == 0 ? 0xff : random.nextInt(256));
        }
        return file;
    }
}
