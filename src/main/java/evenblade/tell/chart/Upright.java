package evenblade.tell.chart;

import java.awt.Graphics2D;
import java.awt.geom.AffineTransform;
import java.awt.image.BufferedImage;

/**
 * How a camera was held, and the picture turned accordingly. Cameras write the turn beside the picture
 * instead of turning it: tag 0x0112 of the first directory of an Exif block (Exif 2.3, 4.6.4; TIFF 6.0,
 * from memory).
 */
final class Upright {
    private static final int APP1 = 0xFFE1; // Exif 2.3: the segment it stands in
    private static final int START_OF_SCAN = 0xFFDA; // ITU-T T.81
    private static final int TAG = 0x0112; // Exif 2.3: orientation
    private static final int ENTRY_BYTES = 12; // TIFF 6.0
    private static final int UPRIGHT = 1; // Exif 2.3: rows from the top, columns from the left

    private Upright() {}

    /** 1 to 8 as in the tag; 1 where the file doesn't say. */
    static int orientation(byte[] file) {
        int at = 2;
        while (at + 4 <= file.length) {
            int marker = big(file, at);
            int length = big(file, at + 2);
            if (marker == START_OF_SCAN || (marker & 0xFF00) != 0xFF00 || length < 2) {
                return UPRIGHT;
            }
            boolean exif = marker == APP1
                    && at + 10 < file.length
                    && file[at + 4] == 'E'
                    && file[at + 5] == 'x'
                    && file[at + 6] == 'i'
                    && file[at + 7] == 'f';
            if (exif) {
                return inExif(file, at + 10, Math.min(file.length, at + 2 + length));
            }
            at += 2 + length;
        }
        return UPRIGHT;
    }

    private static int inExif(byte[] file, int start, int end) {
        if (start + 8 > end) {
            return UPRIGHT;
        }
        boolean bigEndian = file[start] == 'M';
        int directory = start + number(file, start + 4, bigEndian, true);
        if (directory < start || directory + 2 > end) {
            return UPRIGHT;
        }
        int entries = number(file, directory, bigEndian, false);
        for (int i = 0; i < entries; i++) {
            int entry = directory + 2 + i * ENTRY_BYTES;
            if (entry + ENTRY_BYTES > end) {
                return UPRIGHT;
            }
            if (number(file, entry, bigEndian, false) == TAG) {
                int orientation = number(file, entry + 8, bigEndian, false);
                return orientation >= 1 && orientation <= 8 ? orientation : UPRIGHT;
            }
        }
        return UPRIGHT;
    }

    private static int big(byte[] file, int at) {
        return (file[at] & 0xFF) << 8 | file[at + 1] & 0xFF;
    }

    private static int number(byte[] file, int at, boolean bigEndian, boolean four) {
        int value = 0;
        int bytes = four ? 4 : 2;
        for (int i = 0; i < bytes; i++) {
            int place = bigEndian ? bytes - 1 - i : i;
            value |= (file[at + i] & 0xFF) << 8 * place;
        }
        return value;
    }

    /** The picture turned and mirrored so that it stands as it was seen. */
    static BufferedImage turned(BufferedImage image, int orientation) {
        if (orientation == UPRIGHT) {
            return image;
        }
        double w = image.getWidth();
        double h = image.getHeight();
        AffineTransform turn =
                switch (orientation) {
                    case 2 -> new AffineTransform(-1, 0, 0, 1, w, 0);
                    case 3 -> new AffineTransform(-1, 0, 0, -1, w, h);
                    case 4 -> new AffineTransform(1, 0, 0, -1, 0, h);
                    case 5 -> new AffineTransform(0, 1, 1, 0, 0, 0);
                    case 6 -> new AffineTransform(0, 1, -1, 0, h, 0);
                    case 7 -> new AffineTransform(0, -1, -1, 0, h, w);
                    default -> new AffineTransform(0, -1, 1, 0, 0, w);
                };
        boolean swapped = orientation >= 5;
        BufferedImage upright =
                new BufferedImage((int) (swapped ? h : w), (int) (swapped ? w : h), BufferedImage.TYPE_INT_RGB);
        Graphics2D surface = upright.createGraphics();
        try {
            surface.drawImage(image, turn, null);
        } finally {
            surface.dispose();
        }
        return upright;
    }
}
