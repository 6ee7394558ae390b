package evenblade.tell.chart;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Iterator;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.ImageInputStream;
import javax.imageio.stream.MemoryCacheImageOutputStream;

/** Brings a photo down to the size that a page needs. */
public final class PhotoScaler {
    private static final float QUALITY = 0.75f; // loss isn't seen in print
    private static final float LEAST_QUALITY = 0.35f; // below it blocks are seen
    /** Bytes go down about in line with quality, from a share that stays. */
    private static final double STAYING_SHARE = 0.25;
    /** Read so much larger than wanted that bringing it down doesn't show. */
    private static final double READ_LARGER = 1.5;

    /** Several times what a camera's largest photo has. */
    private static final long MOST_BYTES = 60_000_000;
    /** A few kilobytes can hold a picture of any size, which would fill the memory; cameras stay below this. */
    private static final long MOST_PIXELS = 120_000_000;

    /** What cameras and screens write; the others that Java reads are left alone. */
    private static final Set<String> FORMATS = Set.of("jpeg", "png", "gif", "bmp");

    private PhotoScaler() {}

    /**
     * The photo as JPEG, upright as far as its file says how it was held. Only the picture is taken: what the camera
     * wrote beside it (place, time, owner) stays behind.
     *
     * @param longestPx longest side at most
     * @return empty where the file holds no picture that can be read here
     */
    public static Optional<byte[]> jpeg(Path file, int longestPx) {
        try {
            Optional<BufferedImage> read = upright(file, longestPx);
            return read.isEmpty() ? Optional.empty() : Optional.of(written(scaled(read.get(), longestPx), QUALITY));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /**
     * The photo upright, of about the size wanted or smaller.
     *
     * @param longestPx longest side, about
     * @return empty where the file holds no picture that can be read here
     */
    public static Optional<BufferedImage> upright(Path file, int longestPx) {
        try {
            return read(file, longestPx);
        } catch (IOException | RuntimeException | OutOfMemoryError e) {
            // A damaged picture makes its reader throw what it likes, and one made to do harm takes a row or a tile
            // larger
            // than the memory; the caller says that it can't be shown.
            return Optional.empty();
        }
    }

    /**
     * A photo in fewer bytes: first the quality is lowered, down to a limit, then the size.
     *
     * @param jpeg as {@link #jpeg} gives it
     * @param mostBytes wanted at most
     * @return the photo as it was, where it is small enough
     */
    public static byte[] lighter(byte[] jpeg, int mostBytes) {
        if (jpeg.length <= mostBytes) {
            return jpeg;
        }
        try {
            BufferedImage image = ImageIO.read(new ByteArrayInputStream(jpeg));
            double share = (double) mostBytes / jpeg.length;
            double wanted = QUALITY * (share - STAYING_SHARE) / (1 - STAYING_SHARE);
            byte[] bytes = written(image, (float) Math.max(LEAST_QUALITY, wanted));
            if (bytes.length > mostBytes && wanted > LEAST_QUALITY) {
                bytes = written(image, LEAST_QUALITY);
            }
            return bytes.length <= mostBytes
                    ? bytes
                    : written(scaled(image, Math.max(image.getWidth(), image.getHeight()) * 2 / 3), LEAST_QUALITY);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Reads only every so many pixels where the picture is far larger than needed. */
    private static Optional<BufferedImage> read(Path file, int longestPx) throws IOException {
        if (!Files.isRegularFile(file) || Files.size(file) > MOST_BYTES) {
            return Optional.empty();
        }
        byte[] bytes = Files.readAllBytes(file);
        try (ImageInputStream in = ImageIO.createImageInputStream(new ByteArrayInputStream(bytes))) {
            Iterator<ImageReader> readers = ImageIO.getImageReaders(in);
            if (!readers.hasNext()) {
                return Optional.empty();
            }
            ImageReader reader = readers.next();
            try {
                if (!FORMATS.contains(reader.getFormatName().toLowerCase(Locale.ROOT))) {
                    return Optional.empty();
                }
                reader.setInput(in, true, true);
                if ((long) reader.getWidth(0) * reader.getHeight(0) > MOST_PIXELS) {
                    return Optional.empty();
                }
                ImageReadParam param = reader.getDefaultReadParam();
                double larger = Math.max(reader.getWidth(0), reader.getHeight(0)) / (READ_LARGER * longestPx);
                int step = (int) Math.max(1, larger);
                param.setSourceSubsampling(step, step, 0, 0);
                return Optional.of(Upright.turned(reader.read(0, param), Upright.orientation(bytes)));
            } finally {
                reader.dispose();
            }
        }
    }

    private static BufferedImage scaled(BufferedImage image, int longestPx) {
        double scale = Math.min(1, (double) longestPx / Math.max(image.getWidth(), image.getHeight()));
        int width = (int) Math.max(1, Math.round(scale * image.getWidth()));
        int height = (int) Math.max(1, Math.round(scale * image.getHeight()));
        // In the order that the JPEG writer takes fastest.
        BufferedImage small = new BufferedImage(width, height, BufferedImage.TYPE_3BYTE_BGR);
        Graphics2D surface = small.createGraphics();
        try {
            surface.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
            surface.drawImage(image, 0, 0, width, height, Color.WHITE, null);
        } finally {
            surface.dispose();
        }
        return small;
    }

    private static byte[] written(BufferedImage image, float quality) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
        try (MemoryCacheImageOutputStream out = new MemoryCacheImageOutputStream(bytes)) {
            ImageWriteParam param = writer.getDefaultWriteParam();
            param.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
            param.setCompressionQuality(quality);
            writer.setOutput(out);
            writer.write(null, new IIOImage(image, null, null), param);
        } finally {
            writer.dispose();
        }
        return bytes.toByteArray();
    }
}
