package eaveside.findings.internal;

import eaveside.findings.FindingRefusal;
import eaveside.findings.Photo;
import eaveside.findings.Picture;
import eaveside.kernel.Decision;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.AffineTransform;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.concurrent.Semaphore;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.MemoryCacheImageInputStream;
import javax.imageio.stream.MemoryCacheImageOutputStream;

/** Makes of a file that somebody sent the two upright pictures that are kept, or refuses it. */
@Decision
final class PhotoIntake {
    static final int FULL_SIDE = 1600;
    static final int THUMBNAIL_SIDE = 320;

    /** Decoded pictures are large: several at a time could fill a small server's memory. */
    private static final Semaphore DECODERS = new Semaphore(1, true);

    private PhotoIntake() {}

    /** The two sizes. */
    record Taken(Picture full, Picture thumbnail) {}

    static Taken take(byte[] file) {
        if (file.length > Photo.MOST_BYTES) {
            throw new FindingRefusal.PhotoTooLarge(file.length, Photo.MOST_BYTES);
        }
        PictureHeader header = PictureHeader.of(file);
        if (header.width() * header.height() > Photo.MOST_PIXELS
                || Math.max(header.width(), header.height()) > Photo.MOST_PIXELS_ASIDE) {
            throw new FindingRefusal.TooManyPixels(
                    header.width(), header.height(), Photo.MOST_PIXELS, Photo.MOST_PIXELS_ASIDE);
        }
        DECODERS.acquireUninterruptibly();
        try {
            byte[] picture = header.type() == FileType.PNG ? PngChunks.ofThePicture(file) : file;
            BufferedImage full = upright(scaled(decode(picture, header), FULL_SIDE), Orientation.of(picture));
            return new Taken(encode(full), encode(scaled(full, THUMBNAIL_SIDE)));
        } finally {
            DECODERS.release();
        }
    }

    /** Decodes only as many rows and columns as the scaling after it can use. */
    private static BufferedImage decode(byte[] file, PictureHeader header) {
        ImageReader reader =
                ImageIO.getImageReadersByFormatName(header.type().name()).next();
        try (var input = new MemoryCacheImageInputStream(new ByteArrayInputStream(file))) {
            reader.setInput(input, true, true);
            if (reader.getWidth(0) != header.width() || reader.getHeight(0) != header.height()) {
                throw new FindingRefusal.DamagedPicture("its headers contradict one another");
            }
            int step = (int) Math.max(1, Math.max(header.width(), header.height()) / (2L * FULL_SIDE));
            ImageReadParam parameters = reader.getDefaultReadParam();
            parameters.setSourceSubsampling(step, step, 0, 0);
            return reader.read(0, parameters);
        } catch (IOException | RuntimeException e) {
            // The decoders throw whatever a malformed file drives them into.
            throw e instanceof FindingRefusal refusal
                    ? refusal
                    : new FindingRefusal.DamagedPicture("its content is not what its header says");
        } finally {
            reader.dispose();
        }
    }

    /** In plain RGB on white, its longest side at most that many pixels; halves step by step, so that nothing flickers. */
    private static BufferedImage scaled(BufferedImage image, int side) {
        int longest = Math.max(image.getWidth(), image.getHeight());
        int target = Math.min(side, longest);
        int width = Math.max(1, (int) ((long) image.getWidth() * target / longest));
        int height = Math.max(1, (int) ((long) image.getHeight() * target / longest));
        BufferedImage current = image;
        while (current.getWidth() >= 2 * width && current.getHeight() >= 2 * height) {
            current = drawn(current, current.getWidth() / 2, current.getHeight() / 2);
        }
        return drawn(current, width, height);
    }

    private static BufferedImage drawn(BufferedImage image, int width, int height) {
        BufferedImage canvas = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        Graphics2D pen = canvas.createGraphics();
        pen.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
        pen.drawImage(image, 0, 0, width, height, Color.WHITE, null);
        pen.dispose();
        return canvas;
    }

    private static BufferedImage upright(BufferedImage image, Orientation orientation) {
        int width = image.getWidth();
        int height = image.getHeight();
        AffineTransform turn = orientation.upright(width, height);
        if (turn.isIdentity()) {
            return image;
        }
        boolean aside = orientation.turnsAside();
        BufferedImage canvas =
                new BufferedImage(aside ? height : width, aside ? width : height, BufferedImage.TYPE_INT_RGB);
        Graphics2D pen = canvas.createGraphics();
        pen.drawImage(image, turn, null);
        pen.dispose();
        return canvas;
    }

    /** Encoding anew from bare pixels is what strips the metadata. */
    private static Picture encode(BufferedImage image) {
        ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (var output = new MemoryCacheImageOutputStream(bytes)) {
            ImageWriteParam parameters = writer.getDefaultWriteParam();
            parameters.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
            parameters.setCompressionQuality(0.85f);
            writer.setOutput(output);
            writer.write(null, new IIOImage(image, null, null), parameters);
        } catch (IOException e) {
            throw new UncheckedIOException("memory cannot fail to be written", e);
        } finally {
            writer.dispose();
        }
        return new Picture(bytes.toByteArray(), image.getWidth(), image.getHeight());
    }
}
