package eaveside.findings.internal;

import eaveside.findings.FindingRefusal;
import eaveside.kernel.Decision;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;

/**
 * What a JPEG or PNG file says of itself, found by walking its segments or chunks to their end without decoding a
 * pixel: so a picture too large to hold, or one cut off in transfer, is refused before it costs anything.
 */
@Decision
record PictureHeader(FileType type, long width, long height) {
    /** A progressive JPEG has about ten scans; each costs a pass over all pixels. */
    private static final int MOST_SCANS = 100;

    /** Refuses what is neither JPEG nor PNG, and what breaks off before its end. */
    static PictureHeader of(byte[] file) {
        FileType type = FileType.of(file);
        return switch (type) {
            case JPEG -> new JpegWalk(file).walk();
            case PNG -> ofPng(file);
            default -> throw new FindingRefusal.UnsupportedPicture(type.description());
        };
    }

    private static PictureHeader ofPng(byte[] file) {
        ByteBuffer rest = ByteBuffer.wrap(file).position(8);
        long width = 0;
        long height = 0;
        while (rest.remaining() >= 12) {
            long length = Integer.toUnsignedLong(rest.getInt());
            String type = StandardCharsets.ISO_8859_1.decode(slice(rest, 4)).toString();
            if (length + 4 > rest.remaining()) {
                throw cutOff();
            }
            ByteBuffer content = slice(rest, (int) length);
            slice(rest, 4); // the checksum
            if (width == 0 && (!type.equals("IHDR") || length != 13)) {
                throw new FindingRefusal.DamagedPicture("its header is missing");
            }
            switch (type) {
                case "IHDR" -> {
                    width = Integer.toUnsignedLong(content.getInt());
                    height = Integer.toUnsignedLong(content.getInt());
                    if (width == 0 || height == 0) {
                        throw new FindingRefusal.DamagedPicture("its header says that it has no pixels");
                    }
                }
                case "IEND" -> {
                    return new PictureHeader(FileType.PNG, width, height);
                }
                default -> {
                    // says nothing that is needed here
                }
            }
        }
        throw cutOff();
    }

    private static ByteBuffer slice(ByteBuffer from, int length) {
        ByteBuffer slice = from.slice(from.position(), length);
        from.position(from.position() + length);
        return slice;
    }

    private static FindingRefusal.DamagedPicture cutOff() {
        return new FindingRefusal.DamagedPicture("it ends too early, as if it had been cut off on the way");
    }

    /** Walks the marker segments (ISO/IEC 10918-1, annex B). */
    private static final class JpegWalk {
        private final ByteBuffer rest;
        private int width;
        private int height;
        private int scans;

        JpegWalk(byte[] file) {
            rest = ByteBuffer.wrap(file).position(2);
        }

        PictureHeader walk() {
            for (int marker = nextMarker(); marker != 0xD9; marker = nextMarker()) {
                boolean alone = marker == 0x01 || (marker >= 0xD0 && marker <= 0xD8);
                if (!alone) {
                    segment(marker, content());
                }
            }
            if (width == 0 || scans == 0) {
                throw new FindingRefusal.DamagedPicture("it has no pixels");
            }
            return new PictureHeader(FileType.JPEG, width, height);
        }

        private void segment(int marker, ByteBuffer content) {
            boolean frame = marker >= 0xC0 && marker <= 0xCF && marker != 0xC4 && marker != 0xC8 && marker != 0xCC;
            if (frame) {
                frame(content);
            } else if (marker == 0xDA && ++scans > MOST_SCANS) {
                throw new FindingRefusal.DamagedPicture("it is drawn in more than " + MOST_SCANS + " passes");
            }
        }

        private void frame(ByteBuffer content) {
            if (width != 0 || content.remaining() < 6) {
                throw new FindingRefusal.DamagedPicture("its header is wrong");
            }
            content.get();
            height = Short.toUnsignedInt(content.getShort());
            width = Short.toUnsignedInt(content.getShort());
            if (width == 0 || height == 0) {
                throw new FindingRefusal.DamagedPicture("its header says that it has no pixels");
            }
            if (content.get() == 4) {
                throw new FindingRefusal.UnsupportedPicture("a JPEG in the four colors of print (CMYK)");
            }
        }

        /** Skips entropy-coded data, in which 0xFF is followed by 0x00 or a restart marker. */
        private int nextMarker() {
            while (rest.remaining() >= 2) {
                if (rest.get() == (byte) 0xFF) {
                    int marker = Byte.toUnsignedInt(rest.get(rest.position()));
                    if (marker != 0xFF && marker != 0) {
                        rest.get();
                        return marker;
                    }
                }
            }
            throw cutOff();
        }

        private ByteBuffer content() {
            if (rest.remaining() < 2) {
                throw cutOff();
            }
            int length = Short.toUnsignedInt(rest.getShort()) - 2;
            if (length < 0 || length > rest.remaining()) {
                throw cutOff();
            }
            return slice(rest, length);
        }
    }
}
