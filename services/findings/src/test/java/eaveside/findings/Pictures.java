package eaveside.findings;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.zip.CRC32;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.MemoryCacheImageOutputStream;

/** Picture files made for the tests. */
public final class Pictures {
    private Pictures() {}

    /** A picture whose quarters are red, green (top), blue and yellow (bottom), so that its turning can be seen. */
    public static BufferedImage quarters(int width, int height) {
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        Graphics2D pen = image.createGraphics();
        Color[] colors = {Color.RED, Color.GREEN, Color.BLUE, Color.YELLOW};
        for (int i = 0; i < 4; i++) {
            pen.setColor(colors[i]);
            pen.fillRect(i % 2 * width / 2, i / 2 * height / 2, (width + 1) / 2, (height + 1) / 2);
        }
        pen.dispose();
        return image;
    }

    public static byte[] jpeg(int width, int height) {
        return encoded(quarters(width, height), "jpeg");
    }

    public static byte[] png(int width, int height) {
        return encoded(quarters(width, height), "png");
    }

    public static byte[] encoded(BufferedImage image, String format) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try {
            if (!ImageIO.write(image, format, bytes)) {
                throw new IllegalArgumentException(format);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return bytes.toByteArray();
    }

    public static byte[] progressiveJpeg(int width, int height) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
        try (var output = new MemoryCacheImageOutputStream(bytes)) {
            ImageWriteParam parameters = writer.getDefaultWriteParam();
            parameters.setProgressiveMode(ImageWriteParam.MODE_DEFAULT);
            writer.setOutput(output);
            writer.write(null, new IIOImage(quarters(width, height), null, null), parameters);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } finally {
            writer.dispose();
        }
        return bytes.toByteArray();
    }

    public static BufferedImage decoded(byte[] file) {
        try {
            return ImageIO.read(new ByteArrayInputStream(file));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The JPEG with an Exif block that says how the camera was held and who made it. */
    public static byte[] withExif(byte[] jpeg, int orientation) {
        ByteBuffer tiff = ByteBuffer.allocate(100);
        tiff.put(ascii("Exif\0\0MM\0*")).putInt(8).putShort((short) 2);
        tiff.putShort((short) 0x010F).putShort((short) 2).putInt(16).putInt(38); // Make, at offset 38
        tiff.putShort((short) 0x0112).putShort((short) 3).putInt(1); // Orientation
        tiff.putShort((short) orientation).putShort((short) 0).putInt(0);
        tiff.put(ascii("Secret phone 42\0"));
        ByteBuffer file = ByteBuffer.allocate(jpeg.length + 4 + tiff.position());
        file.put(jpeg, 0, 2).putShort((short) 0xFFE1).putShort((short) (2 + tiff.position()));
        file.put(tiff.array(), 0, tiff.position()).put(jpeg, 2, jpeg.length - 2);
        return file.array();
    }

    /** The JPEG with another size written into its frame header. */
    public static byte[] claiming(byte[] jpeg, int width, int height) {
        byte[] file = jpeg.clone();
        for (int i = 2; ; i += 2 + (Byte.toUnsignedInt(file[i + 2]) << 8) + Byte.toUnsignedInt(file[i + 3])) {
            if (file[i + 1] == (byte) 0xC0) {
                ByteBuffer.wrap(file).putShort(i + 5, (short) height).putShort(i + 7, (short) width);
                return file;
            }
        }
    }

    /** A PNG of a few hundred bytes that claims that many pixels. */
    public static byte[] pngClaiming(int width, int height) {
        ByteBuffer header = ByteBuffer.allocate(13).putInt(width).putInt(height);
        header.put(new byte[] {8, 2, 0, 0, 0});
        ByteArrayOutputStream file = new ByteArrayOutputStream();
        file.writeBytes(new byte[] {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1a, '\n'});
        file.writeBytes(chunk("IHDR", header.array()));
        file.writeBytes(chunk("IDAT", new byte[200]));
        file.writeBytes(chunk("IEND", new byte[0]));
        return file.toByteArray();
    }

    private static byte[] chunk(String type, byte[] content) {
        CRC32 checksum = new CRC32();
        checksum.update(ascii(type));
        checksum.update(content);
        ByteBuffer chunk = ByteBuffer.allocate(12 + content.length);
        chunk.putInt(content.length).put(ascii(type)).put(content).putInt((int) checksum.getValue());
        return chunk.array();
    }

    public static byte[] ascii(String text) {
        return text.getBytes(StandardCharsets.ISO_8859_1);
    }
}
