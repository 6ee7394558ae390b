package evenblade.chart;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Iterator;
import java.util.Optional;
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
    private static final float QUALITY = 0.75f;
    private static final float LEAST_QUALITY = 0.35f;
    private static final float QUALITY_STEP = 0.2f;

    private PhotoScaler() {}

    /**
     * The photo as JPEG, upright as far as its file says how it was held.
     *
     * @param longestPx longest side at most
     * @param mostBytes wanted at most; the quality is lowered for it down to a limit, then the size
     * @return empty where the file holds no picture that can be read here
     */
    public static Optional<byte[]> jpeg(Path file, int longestPx, int mostBytes) {
        try {
            Optional<BufferedImage> read = read(file, longestPx);
            if (read.isEmpty()) {
                return Optional.empty();
            }
            BufferedImage image = scaled(read.get(), longestPx);
            float quality = QUALITY;
            byte[] bytes = written(image, quality);
            while (bytes.length > mostBytes && quality > LEAST_QUALITY) {
                quality -= QUALITY_STEP;
                bytes = written(image, quality);
            }
            if (bytes.length > mostBytes) {
                bytes = written(scaled(image, longestPx * 2 / 3), LEAST_QUALITY);
            }
            return Optional.of(bytes);
        } catch (IOException | RuntimeException e) {
            // A damaged picture makes its reader throw what it likes; the caller says that it can't be shown.
            return Optional.empty();
        }
    }

    /** Reads only every so many pixels where the picture is far larger than needed. */
    private static Optional<BufferedImage> read(Path file, int longestPx) throws IOException {
        byte[] bytes = Files.readAllBytes(file);
        try (ImageInputStream in = ImageIO.createImageInputStream(new ByteArrayInputStream(bytes))) {
            Iterator<ImageReader> readers = ImageIO.getImageReaders(in);
            if (!readers.hasNext()) {
                return Optional.empty();
            }
            ImageReader reader = readers.next();
            try {
                reader.setInput(in, true, true);
                ImageReadParam param = reader.getDefaultReadParam();
                int step = Math.max(1, Math.max(reader.getWidth(0), reader.getHeight(0)) / (2 * longestPx));
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
        BufferedImage small = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
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
