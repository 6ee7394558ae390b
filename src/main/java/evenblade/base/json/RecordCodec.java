package evenblade.base.json;

import com.fasterxml.jackson.annotation.JsonTypeInfo;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JavaType;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.ObjectReader;
import com.fasterxml.jackson.databind.ObjectWriter;
import com.fasterxml.jackson.databind.deser.std.StdDelegatingDeserializer;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.jsontype.BasicPolymorphicTypeValidator;
import com.fasterxml.jackson.databind.jsontype.PolymorphicTypeValidator;
import com.fasterxml.jackson.databind.module.SimpleModule;
import com.fasterxml.jackson.databind.ser.std.StdDelegatingSerializer;
import com.fasterxml.jackson.databind.type.TypeFactory;
import com.fasterxml.jackson.databind.util.StdConverter;
import com.fasterxml.jackson.datatype.jdk8.Jdk8Module;
import java.io.IOException;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;

/**
 * Writes the program's own records as JSON and reads them back, for results that are kept for a while on one machine.
 * Not for documents that people or other programs write: those are read by {@link JsonDocument}, which names the line of
 * every mistake.
 *
 * <p>Where a component's type is an interface of the program, the value's class is written with it and only classes of
 * the program are made again from it. Bytes that were written for records of another {@link #shape} must not be read.
 *
 * @param <T> the outermost record
 */
public final class RecordCodec<T> {
    private static final String PROGRAM = "evenblade.";

    private final Class<T> type;
    private final ObjectWriter writer;
    private final ObjectReader reader;

    /**
     * How one type that isn't a record is kept.
     *
     * @param type the type, with all below it
     * @param form what stands for it: a record or a text
     * @param written from the one to the other
     * @param read and back
     */
    public record Adapter<A, F>(Class<A> type, Class<F> form, Function<A, F> written, Function<F, ? extends A> read) {}

    /**
     * Prepares to write and read.
     *
     * @param adapters for what is neither a record, an enum, a list, an {@code Optional}, a number nor a text
     */
    public RecordCodec(Class<T> type, List<Adapter<?, ?>> adapters) {
        this.type = type;
        SimpleModule forms = new SimpleModule();
        Set<Class<?>> adapted = new HashSet<>();
        for (Adapter<?, ?> adapter : adapters) {
            add(forms, adapter);
            adapted.add(adapter.type());
        }
        PolymorphicTypeValidator own =
                BasicPolymorphicTypeValidator.builder().allowIfSubType(PROGRAM).build();
        ObjectMapper mapper = JsonMapper.builder()
                .addModule(new Jdk8Module())
                .addModule(forms)
                .enable(DeserializationFeature.FAIL_ON_MISSING_CREATOR_PROPERTIES)
                .enable(DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES)
                .setDefaultTyping(new ClassBesideInterface(own, adapted)
                        .init(JsonTypeInfo.Id.CLASS, null)
                        .inclusion(JsonTypeInfo.As.WRAPPER_ARRAY))
                .build();
        this.writer = mapper.writerFor(type);
        this.reader = mapper.readerFor(type);
    }

    private static <A, F> void add(SimpleModule forms, Adapter<A, F> adapter) {
        forms.addSerializer(adapter.type(), new StdDelegatingSerializer(adapter.type(), new StdConverter<A, F>() {
            @Override
            public F convert(A value) {
                return adapter.written().apply(value);
            }

            @Override
            public JavaType getOutputType(TypeFactory types) {
                return types.constructType(adapter.form());
            }
        }));
        forms.addDeserializer(adapter.type(), new StdDelegatingDeserializer<A>(new StdConverter<F, A>() {
            @Override
            public A convert(F value) {
                return adapter.read().apply(value);
            }

            @Override
            public JavaType getInputType(TypeFactory types) {
                return types.constructType(adapter.form());
            }
        }));
    }

    /** Names the class wherever the type alone doesn't say it. */
    private static final class ClassBesideInterface extends ObjectMapper.DefaultTypeResolverBuilder {
        private static final long serialVersionUID = 1; // never written to a file
        private final transient Set<Class<?>> adapted;

        ClassBesideInterface(PolymorphicTypeValidator allowed, Set<Class<?>> adapted) {
            super(ObjectMapper.DefaultTyping.NON_CONCRETE_AND_ARRAYS, allowed);
            this.adapted = Set.copyOf(adapted);
        }

        @Override
        public boolean useForType(JavaType type) {
            Class<?> raw = type.getRawClass();
            return raw.isInterface() && raw.getName().startsWith(PROGRAM) && !adapted.contains(raw);
        }
    }

    /** The record as UTF-8 text. */
    public byte[] written(T thing) {
        try {
            return writer.writeValueAsBytes(thing);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(type.getSimpleName() + " can't be written", e);
        }
    }

    /** The record again; empty where the bytes don't hold a whole one. */
    public Optional<T> read(byte[] bytes) {
        try {
            return Optional.ofNullable(reader.readValue(bytes));
        } catch (IOException | IllegalArgumentException e) {
            return Optional.empty();
        }
    }

    /**
     * Names and types of all that is written, in a fixed order: differs as soon as a record gains, loses or renames a
     * component, or an enum a constant.
     */
    public String shape() {
        Set<String> lines = new TreeSet<>();
        describe(type, lines, new HashSet<>());
        return String.join("\n", lines);
    }

    private static void describe(Type type, Set<String> lines, Set<Class<?>> seen) {
        if (type instanceof ParameterizedType generic) {
            Arrays.stream(generic.getActualTypeArguments()).forEach(inner -> describe(inner, lines, seen));
        }
        if (!(type instanceof Class<?> plain) || !plain.getName().startsWith(PROGRAM) || !seen.add(plain)) {
            return;
        }
        if (plain.isEnum()) {
            lines.add(plain.getName() + " " + Arrays.toString(plain.getEnumConstants()));
        } else if (plain.isRecord()) {
            for (RecordComponent part : plain.getRecordComponents()) {
                lines.add(plain.getName() + "." + part.getName() + " " + part.getGenericType());
                describe(part.getGenericType(), lines, seen);
            }
        } else if (plain.isSealed()) {
            Arrays.stream(plain.getPermittedSubclasses()).forEach(below -> describe(below, lines, seen));
        }
    }
}
