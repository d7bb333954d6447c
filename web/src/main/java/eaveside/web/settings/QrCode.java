package eaveside.web.settings;

import com.google.zxing.BarcodeFormat;
import com.google.zxing.EncodeHintType;
import com.google.zxing.WriterException;
import com.google.zxing.common.BitMatrix;
import com.google.zxing.qrcode.QRCodeWriter;
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel;
import java.util.Map;

/**
 * A QR code as a path of squares of one by one.
 *
 * @param  size of each side, the quiet zone included
 */
public record QrCode(int size, String path) {
    /** In squares, as ISO/IEC 18004 asks for. */
    private static final int QUIET_ZONE = 4;

    public static QrCode of(String text) {
        try {
            BitMatrix squares = new QRCodeWriter()
                    .encode(
                            text,
                            BarcodeFormat.QR_CODE,
                            0,
                            0,
                            Map.of(
                                    EncodeHintType.MARGIN,
                                    QUIET_ZONE,
                                    EncodeHintType.ERROR_CORRECTION,
                                    ErrorCorrectionLevel.M));
            StringBuilder path = new StringBuilder();
            for (int y = 0; y < squares.getHeight(); y++) {
                for (int x = 0; x < squares.getWidth(); x++) {
                    if (squares.get(x, y)) {
                        path.append('M').append(x).append(' ').append(y).append("h1v1h-1z");
                    }
                }
            }
            return new QrCode(squares.getWidth(), path.toString());
        } catch (WriterException e) {
            throw new IllegalArgumentException(e);
        }
    }
}
