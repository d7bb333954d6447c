package eaveside.findings;

import eaveside.kernel.Decision;

/** A picture as it is kept and sent: an upright baseline JPEG in sRGB without metadata. */
@Decision
public final class Picture {
    /** The media type of every picture. */
    public static final String MEDIA_TYPE = "image/jpeg";

    private final byte[] jpeg;
    private final int width;
    private final int height;

    public Picture(byte[] jpeg, int width, int height) {
        this.jpeg = jpeg.clone();
        this.width = width;
        this.height = height;
    }

    public byte[] jpeg() {
        return jpeg.clone();
    }

    public int width() {
        return width;
    }

    public int height() {
        return height;
    }
}
