package evenblade.tell.report;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import org.apache.fontbox.FontBoxFont;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.font.CIDFontMapping;
import org.apache.pdfbox.pdmodel.font.FontMapper;
import org.apache.pdfbox.pdmodel.font.FontMapping;
import org.apache.pdfbox.pdmodel.font.PDCIDSystemInfo;
import org.apache.pdfbox.pdmodel.font.PDFontDescriptor;

/**
 * The fonts of the program in the place of the system's. The library would read every font of the system and leave a list
 * of them in the user's home. None is called a makeshift: the library would complain of it, and nothing is printed with it.
 */
final class OwnFonts implements FontMapper {
    static final String REGULAR = "DejaVuSansCondensed.ttf";
    static final String BOLD = "DejaVuSansCondensed-Bold.ttf";

    private final TrueTypeFont regular = read(REGULAR);

    static TrueTypeFont read(String name) {
        try (InputStream in = OwnFonts.class.getResourceAsStream(name)) {
            return new TTFParser().parse(new RandomAccessReadBuffer(in));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Override
    public FontMapping<TrueTypeFont> getTrueTypeFont(String name, PDFontDescriptor descriptor) {
        return new FontMapping<>(regular, false);
    }

    @Override
    public FontMapping<FontBoxFont> getFontBoxFont(String name, PDFontDescriptor descriptor) {
        return new FontMapping<>(regular, false);
    }

    @Override
    public CIDFontMapping getCIDFont(String name, PDFontDescriptor descriptor, PDCIDSystemInfo system) {
        return new CIDFontMapping(null, regular, false);
    }
}
