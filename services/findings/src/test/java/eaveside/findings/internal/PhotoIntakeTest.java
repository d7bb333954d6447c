package eaveside.findings.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.findings.FindingRefusal;
import eaveside.findings.Photo;
import eaveside.findings.Pictures;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.zip.CRC32;
import java.util.zip.DeflaterOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class PhotoIntakeTest {
    /** The letters of the quarters, row by row, as {@link Pictures#quarters} paints them: RGBY. */
    private static String quarters(byte[] file) {
        BufferedImage image = Pictures.decoded(file);
        StringBuilder seen = new StringBuilder();
        for (int i = 0; i < 4; i++) {
            int x = image.getWidth() * (1 + 2 * (i % 2)) / 4;
            int y = image.getHeight() * (1 + 2 * (i / 2)) / 4;
            int color = image.getRGB(x, y);
            boolean red = (color >> 16 & 0xFF) > 128;
            boolean green = (color >> 8 & 0xFF) > 128;
            seen.append(red ? green ? 'Y' : 'R' : green ? 'G' : 'B');
        }
        return seen.toString();
    }

    /** What the eight values of the tag mean: Exif 2.32, tag 274 (from memory). */
    @ParameterizedTest
    @CsvSource({
        "1, RGBY, 60, 40",
        "2, GRYB, 60, 40",
        "3, YBGR, 60, 40",
        "4, BYRG, 60, 40",
        "5, RBGY, 40, 60",
        "6, BRYG, 40, 60",
        "7, YGBR, 40, 60",
        "8, GYRB, 40, 60",
        "9, RGBY, 60, 40"
    })
    void turns_the_picture_upright(int tag, String expected, int width, int height) {
        PhotoIntake.Taken taken = PhotoIntake.take(Pictures.withExif(Pictures.jpeg(60, 40), tag));
        assertEquals(expected, quarters(taken.full().jpeg()));
        assertEquals(expected, quarters(taken.thumbnail().jpeg()));
        assertEquals(width, taken.full().width());
        assertEquals(height, taken.full().height());
        assertEquals(width, Pictures.decoded(taken.full().jpeg()).getWidth());
    }

    @Test
    void strips_the_metadata() {
        byte[] file = Pictures.withExif(Pictures.jpeg(60, 40), 6);
        assertTrue(new String(file, StandardCharsets.ISO_8859_1).contains("Secret phone"));
        PhotoIntake.Taken taken = PhotoIntake.take(file);
        for (byte[] kept : List.of(taken.full().jpeg(), taken.thumbnail().jpeg())) {
            String text = new String(kept, StandardCharsets.ISO_8859_1);
            assertFalse(text.contains("Secret phone"));
            assertFalse(text.contains("Exif"));
        }
    }

    @ParameterizedTest
    @CsvSource({
        "3000, 1500, 1600, 800, 320, 160",
        "1500, 3000, 800, 1600, 160, 320",
        "5000, 4000, 1600, 1280, 320, 256",
        "1600, 9, 1600, 9, 320, 1",
        "50, 30, 50, 30, 50, 30",
        "1, 1, 1, 1, 1, 1"
    })
    void reduces_to_two_sizes_and_never_enlarges(int w, int h, int fullW, int fullH, int thumbW, int thumbH) {
        for (byte[] file : List.of(Pictures.jpeg(w, h), Pictures.png(w, h))) {
            PhotoIntake.Taken taken = PhotoIntake.take(file);
            assertEquals(
                    List.of(fullW, fullH, thumbW, thumbH),
                    List.of(
                            taken.full().width(),
                            taken.full().height(),
                            taken.thumbnail().width(),
                            taken.thumbnail().height()));
        }
    }

    @Test
    void takes_gray_and_transparent_pictures() {
        BufferedImage clear = new BufferedImage(20, 20, BufferedImage.TYPE_INT_ARGB);
        PhotoIntake.Taken taken = PhotoIntake.take(Pictures.encoded(clear, "png"));
        assertEquals(0xFFFFFFFF, Pictures.decoded(taken.full().jpeg()).getRGB(10, 10), "clear becomes white");
        for (int type :
                new int[] {BufferedImage.TYPE_BYTE_GRAY, BufferedImage.TYPE_BYTE_INDEXED, BufferedImage.TYPE_BYTE_BINARY
                }) {
            assertEquals(
                    20,
                    PhotoIntake.take(Pictures.encoded(new BufferedImage(20, 20, type), "png"))
                            .full()
                            .width());
        }
    }

    @Test
    void takes_a_progressive_jpeg() {
        PhotoIntake.Taken taken = PhotoIntake.take(Pictures.progressiveJpeg(200, 100));
        assertEquals("RGBY", quarters(taken.full().jpeg()));
    }

    @Test
    void names_a_jpeg_in_the_colors_of_print() {
        byte[] file = Pictures.jpeg(8, 8);
        int frame = new String(file, StandardCharsets.ISO_8859_1).indexOf("\u00ff\u00c0");
        file[frame + 9] = 4;
        assertTrue(assertThrows(FindingRefusal.UnsupportedPicture.class, () -> PhotoIntake.take(file))
                .text()
                .contains("CMYK"));
    }

    @Test
    void refuses_more_pixels_than_it_takes_by_the_header_alone() {
        for (byte[] bomb : List.of(
                Pictures.claiming(Pictures.jpeg(8, 8), 60_000, 60_000),
                Pictures.pngClaiming(100_000, 100_000),
                Pictures.pngClaiming(Integer.MAX_VALUE, 1),
                Pictures.pngClaiming(-1, -1),
                Pictures.pngClaiming(20_001, 1))) {
            assertThrows(FindingRefusal.TooManyPixels.class, () -> PhotoIntake.take(bomb));
        }
        assertTrue(assertThrows(
                        FindingRefusal.TooManyPixels.class, () -> PhotoIntake.take(Pictures.pngClaiming(8001, 5000)))
                .text()
                .contains("8001 × 5000"));
        // Within the limit it goes on to the decoder, which finds that there are none.
        assertThrows(FindingRefusal.DamagedPicture.class, () -> PhotoIntake.take(Pictures.pngClaiming(8000, 5000)));
    }

    @Test
    void decodes_the_largest_picture_that_it_takes() {
        BufferedImage large = new BufferedImage(8000, 5000, BufferedImage.TYPE_BYTE_GRAY);
        PhotoIntake.Taken taken = PhotoIntake.take(Pictures.encoded(large, "png"));
        assertEquals(1600, taken.full().width());
        assertEquals(1000, taken.full().height());
    }

    /** Texts and profiles in a picture unfold to a thousand times their size; they are passed over as they lie there. */
    @Test
    void unfolds_nothing_but_the_picture() throws IOException {
        byte[] png = Pictures.png(20, 10);
        ByteArrayOutputStream zeros = new ByteArrayOutputStream();
        try (var deflater = new DeflaterOutputStream(zeros)) {
            byte[] block = new byte[1 << 20];
            for (int i = 0; i < 600; i++) {
                deflater.write(block);
            }
        }
        for (String type : List.of("zTXt", "iTXt", "iCCP", "tEXt", "eXIf")) {
            ByteArrayOutputStream data = new ByteArrayOutputStream();
            data.write(type.equals("iTXt") ? new byte[] {'a', 0, 1, 0, 0, 0} : new byte[] {'a', 0, 0});
            data.write(zeros.toByteArray());
            assertEquals(
                    20,
                    PhotoIntake.take(withChunk(png, type, data.toByteArray()))
                            .full()
                            .width(),
                    type);
        }
    }

    /** The chunk right after the head, whose end is at 33. */
    private static byte[] withChunk(byte[] png, String type, byte[] data) {
        CRC32 sum = new CRC32();
        sum.update(type.getBytes(StandardCharsets.US_ASCII));
        sum.update(data);
        return ByteBuffer.allocate(png.length + data.length + 12)
                .put(png, 0, 33)
                .putInt(data.length)
                .put(type.getBytes(StandardCharsets.US_ASCII))
                .put(data)
                .putInt((int) sum.getValue())
                .put(png, 33, png.length - 33)
                .array();
    }

    @Test
    void refuses_a_file_that_is_too_large() {
        byte[] file = Arrays.copyOf(Pictures.jpeg(8, 8), Photo.MOST_BYTES + 1);
        assertThrows(FindingRefusal.PhotoTooLarge.class, () -> PhotoIntake.take(file));
        assertEquals(
                8,
                PhotoIntake.take(Arrays.copyOf(file, Photo.MOST_BYTES)).full().width(),
                "what follows the end of the picture does not matter");
    }

    @ParameterizedTest
    @CsvSource({
        "'\0\0\0\u0018ftypheic\0\0\0\0mif1heic', a HEIC picture",
        "'\0\0\0\u0018ftypmif1\0\0\0\0mif1heic', a HEIC picture",
        "'\0\0\0\u001cftypavif\0\0\0\0avifmif1miaf', an AVIF picture",
        "'\0\0\0\u0018ftypisom\0\0\0\0isommp42', a video",
        "'RIFF\u0010\0\0\0WEBPVP8 ', a WebP picture",
        "GIF89a, a GIF picture",
        "'%PDF-1.7 named photo.jpg', a PDF document",
        "'II*\0', a TIFF picture",
        "BM6, a BMP picture",
        "8BPS, a layered picture",
        "'PK\u0003\u0004', an archive",
        "'<?xml version=\"1.0\"?><svg xmlns=\"http://www.w3.org/2000/svg\"/>', an SVG drawing",
        "'<!DOCTYPE html><script>1</script>', a page of text",
        "'', empty",
        "abc, of a type not known here"
    })
    void names_what_it_does_not_take(String content, String named) {
        FindingRefusal refusal =
                assertThrows(FindingRefusal.UnsupportedPicture.class, () -> PhotoIntake.take(Pictures.ascii(content)));
        assertTrue(refusal.text().contains(named), refusal.text());
        assertEquals("finding.unsupported-picture", refusal.code());
        assertEquals(422, refusal.type().status());
    }

    @Test
    void refuses_pictures_that_break_off_anywhere() {
        for (byte[] whole : List.of(Pictures.jpeg(64, 64), Pictures.png(64, 64))) {
            for (int length = 9; length < whole.length; length += 7) {
                byte[] cut = Arrays.copyOf(whole, length);
                assertThrows(FindingRefusal.DamagedPicture.class, () -> PhotoIntake.take(cut), "cut at " + length);
            }
        }
    }

    @Test
    void refuses_a_jpeg_of_endless_passes() {
        byte[] jpeg = Pictures.jpeg(16, 16);
        List<Byte> bytes = new ArrayList<>();
        for (int i = 0; i < jpeg.length - 2; i++) {
            bytes.add(jpeg[i]);
        }
        for (int i = 0; i < 100; i++) {
            bytes.addAll(List.of((byte) 0xFF, (byte) 0xDA, (byte) 0, (byte) 2));
        }
        bytes.addAll(List.of((byte) 0xFF, (byte) 0xD9));
        byte[] file = new byte[bytes.size()];
        for (int i = 0; i < file.length; i++) {
            file[i] = bytes.get(i);
        }
        assertTrue(assertThrows(FindingRefusal.DamagedPicture.class, () -> PhotoIntake.take(file))
                .text()
                .contains("100 passes"));
    }

    @Test
    void refuses_a_picture_that_is_smaller_than_its_header_says() {
        assertThrows(
                FindingRefusal.DamagedPicture.class,
                () -> PhotoIntake.take(Pictures.claiming(Pictures.jpeg(8, 8), 0, 8)));
    }

    @ParameterizedTest
    @ValueSource(longs = {20261125, 7, 424242})
    void never_answers_a_broken_file_with_anything_but_a_refusal(long seed) {
        Random random = new Random(seed);
        for (byte[] whole : List.of(Pictures.withExif(Pictures.jpeg(40, 30), 6), Pictures.png(40, 30))) {
            for (int i = 0; i < 300; i++) {
                byte[] broken = whole.clone();
                for (int hits = 0; hits < 1 + random.nextInt(4); hits++) {
                    broken[random.nextInt(broken.length)] = (byte) random.nextInt(256);
                }
                try {
                    PhotoIntake.take(broken);
                } catch (FindingRefusal refusal) {
                    assertFalse(refusal.text().isBlank());
                } catch (RuntimeException | Error e) {
                    throw new AssertionError("seed " + seed + ", case " + i, e);
                }
            }
        }
    }
}
