import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.AffineTransform;
import java.awt.geom.Arc2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import javax.imageio.ImageIO;

/**
 * Draws the icon: three blades in their disc, seen from ahead; two tips run on the ring, the third runs
 * outside it, with a mark where it passes.
 *
 * <p>Arguments: the file to write and one or more sizes in pixels. One size and .png: a picture. More sizes
 * and .ico (Windows) or .icns (macOS): all sizes in one file, each as PNG.
 */
final class Icon {
    private static final Color GROUND = new Color(0x16, 0x2b, 0x3a);
    private static final Color RING = new Color(0x6f, 0x93, 0xa8);
    private static final Color BLADE = new Color(0xf2, 0xf5, 0xf0);
    private static final Color UNEVEN = new Color(0xf0, 0xa0, 0x30);

    private Icon() {}

    public static void main(String[] args) throws IOException {
        System.setProperty("java.awt.headless", "true");
        Path file = Path.of(args[0]);
        List<Integer> sizes = List.of(args).stream().skip(1).map(Integer::valueOf).toList();
        String name = file.toString();
        Files.write(file, name.endsWith(".ico") ? ico(sizes) : name.endsWith(".icns") ? icns(sizes) : png(sizes.get(0)));
    }

    /** All lengths in parts of the half width. */
    private static byte[] png(int size) throws IOException {
        BufferedImage image = new BufferedImage(size, size, BufferedImage.TYPE_INT_ARGB);
        Graphics2D g = image.createGraphics();
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
        g.translate(size / 2.0, size / 2.0);
        g.scale(size / 2.0, size / 2.0);
        g.setColor(GROUND);
        g.fill(new Ellipse2D.Double(-0.98, -0.98, 1.96, 1.96));
        g.setColor(RING);
        g.setStroke(new BasicStroke(0.045f));
        g.draw(new Ellipse2D.Double(-0.72, -0.72, 1.44, 1.44));
        blade(g, 120, 0.72, BLADE);
        blade(g, 240, 0.72, BLADE);
        blade(g, 0, 0.84, UNEVEN);
        g.setColor(UNEVEN);
        g.setStroke(new BasicStroke(0.06f, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
        g.draw(new Arc2D.Double(-0.84, -0.84, 1.68, 1.68, 70, 40, Arc2D.OPEN));
        g.setColor(BLADE);
        g.fill(new Ellipse2D.Double(-0.15, -0.15, 0.3, 0.3));
        g.setColor(GROUND);
        g.fill(new Ellipse2D.Double(-0.05, -0.05, 0.1, 0.1));
        g.dispose();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        ImageIO.write(image, "png", bytes);
        return bytes.toByteArray();
    }

    private static void blade(Graphics2D g, double degrees, double tip, Color colour) {
        Path2D shape = new Path2D.Double();
        shape.moveTo(-0.06, 0);
        shape.curveTo(-0.2, -0.3 * tip, -0.16, -0.8 * tip, -0.02, -tip);
        shape.curveTo(0.1, -0.95 * tip, 0.12, -0.4 * tip, 0.06, 0);
        shape.closePath();
        g.setColor(colour);
        g.fill(AffineTransform.getRotateInstance(Math.toRadians(degrees)).createTransformedShape(shape));
    }

    /** A directory of pictures, little-endian: 6 bytes of heading, 16 for each picture, then the pictures. */
    private static byte[] ico(List<Integer> sizes) throws IOException {
        ByteArrayOutputStream heading = new ByteArrayOutputStream();
        ByteArrayOutputStream pictures = new ByteArrayOutputStream();
        little(heading, 2, 0);
        little(heading, 2, 1);
        little(heading, 2, sizes.size());
        for (int size : sizes) {
            byte[] png = png(size);
            little(heading, 1, size == 256 ? 0 : size);
            little(heading, 1, size == 256 ? 0 : size);
            little(heading, 2, 0);
            little(heading, 2, 1);
            little(heading, 2, 32);
            little(heading, 4, png.length);
            little(heading, 4, 6 + 16 * sizes.size() + pictures.size());
            pictures.writeBytes(png);
        }
        heading.writeBytes(pictures.toByteArray());
        return heading.toByteArray();
    }

    private static void little(ByteArrayOutputStream out, int bytes, int value) {
        for (int i = 0; i < bytes; i++) {
            out.write(value >> 8 * i);
        }
    }

    /** Pieces of a name of four letters, a length with these 8 bytes, and a picture; big-endian. */
    private static byte[] icns(List<Integer> sizes) throws IOException {
        ByteArrayOutputStream pieces = new ByteArrayOutputStream();
        for (int size : sizes) {
            byte[] png = png(size);
            DataOutputStream piece = new DataOutputStream(pieces);
            piece.writeBytes(switch (size) {
                case 128 -> "ic07";
                case 256 -> "ic08";
                case 512 -> "ic09";
                case 1024 -> "ic10";
                default -> throw new IllegalArgumentException("no piece for " + size + " pixels");
            });
            piece.writeInt(png.length + 8);
            piece.write(png);
        }
        ByteArrayOutputStream all = new ByteArrayOutputStream();
        DataOutputStream out = new DataOutputStream(all);
        out.writeBytes("icns");
        out.writeInt(pieces.size() + 8);
        out.write(pieces.toByteArray());
        return all.toByteArray();
    }
}
