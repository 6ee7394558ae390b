import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.lang.classfile.ClassFile;
import java.lang.classfile.ClassFileVersion;
import java.lang.classfile.ClassHierarchyResolver;
import java.lang.classfile.ClassModel;
import java.lang.classfile.MethodModel;
import java.lang.classfile.MethodTransform;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collections;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import java.util.zip.ZipOutputStream;

/**
 * Copies a jar; class files of before Java 6 get the frames and the version number of Java 17. Their code
 * stays. Without frames the virtual machine can't keep them in its cache: it loaded 246 classes of the
 * library that reads the command line anew at each start, which took half of the time of `--help`.
 *
 * <p>Arguments: the jar, the copy.
 */
final class Frames {
    /** The first version whose class files may carry frames: Java 6. */
    private static final int FIRST_WITH_FRAMES = ClassFile.JAVA_6_VERSION;

    private Frames() {}

    public static void main(String[] args) throws IOException {
        int changed = 0;
        try (ZipFile jar = new ZipFile(args[0]);
                ZipOutputStream copy = new ZipOutputStream(Files.newOutputStream(Path.of(args[1])))) {
            ClassFile writer = ClassFile.of(
                    ClassFile.StackMapsOption.GENERATE_STACK_MAPS,
                    ClassFile.ClassHierarchyResolverOption.of(parents(jar)));
            for (ZipEntry entry : Collections.list(jar.entries())) {
                byte[] bytes;
                try (InputStream in = jar.getInputStream(entry)) {
                    bytes = in.readAllBytes();
                }
                if (entry.getName().endsWith(".class") && version(bytes) < FIRST_WITH_FRAMES) {
                    bytes = withFrames(writer, bytes);
                    changed++;
                }
                ZipEntry same = new ZipEntry(entry.getName());
                same.setTimeLocal(entry.getTimeLocal());
                copy.putNextEntry(same);
                copy.write(bytes);
                copy.closeEntry();
            }
        }
        System.out.println("frames put into " + changed + " old class files");
    }

    private static ClassHierarchyResolver parents(ZipFile jar) {
        return ClassHierarchyResolver.ofResourceParsing(type -> {
                    String name = type.descriptorString();
                    ZipEntry entry = jar.getEntry(name.substring(1, name.length() - 1) + ".class");
                    try {
                        return entry == null ? null : jar.getInputStream(entry);
                    } catch (IOException e) {
                        throw new UncheckedIOException(e);
                    }
                })
                .orElse(ClassHierarchyResolver.defaultResolver());
    }

    /** Bytes 6 and 7 of a class file. */
    private static int version(byte[] bytes) {
        return (bytes[6] & 0xff) << 8 | bytes[7] & 0xff;
    }

    private static byte[] withFrames(ClassFile writer, byte[] bytes) {
        ClassModel old = writer.parse(bytes);
        return writer.build(old.thisClass().asSymbol(), made -> {
            made.withVersion(ClassFile.JAVA_17_VERSION, 0);
            old.forEach(part -> {
                if (part instanceof MethodModel method) {
                    made.transformMethod(method, MethodTransform.transformingCode((code, each) -> code.with(each)));
                } else if (!(part instanceof ClassFileVersion)) {
                    made.with(part);
                }
            });
        });
    }
}
