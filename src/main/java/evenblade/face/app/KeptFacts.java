package evenblade.face.app;

import evenblade.base.fact.Amount;
import evenblade.base.fact.Code;
import evenblade.base.fact.Count;
import evenblade.base.fact.Estimated;
import evenblade.base.fact.Fact;
import evenblade.base.fact.Listed;
import evenblade.base.fact.Measure;
import evenblade.base.fact.Moment;
import evenblade.base.fact.Quoted;
import evenblade.base.fact.SignalValue;
import evenblade.base.fact.Subject;
import evenblade.base.fact.Value;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.base.units.SignalUnit;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.time.Instant;

/** Facts as they are kept: the name of each one's kind in front of it. */
final class KeptFacts {
    private KeptFacts() {}

    static void warning(DataOutputStream out, Warning warning) throws IOException {
        KeptFields.text(out, warning.code().name());
        subject(out, warning.subject());
        KeptFields.list(out, warning.values(), KeptFacts::value);
    }

    static Warning warning(DataInputStream in) throws IOException {
        return new Warning(
                WarningCode.valueOf(KeptFields.text(in)), subject(in), KeptFields.list(in, KeptFacts::value));
    }

    private static void subject(DataOutputStream out, Subject subject) throws IOException {
        KeptFields.text(out, subject.getClass().getSimpleName());
        if (subject instanceof Subject.Whole whole) {
            KeptFields.text(out, whole.name());
        } else if (subject instanceof Subject.Channel channel) {
            KeptFields.text(out, channel.name());
        } else if (subject instanceof Subject.Dwell dwell) {
            out.writeDouble(dwell.engineRpm());
        } else if (subject instanceof Subject.FileLine line) {
            out.writeLong(line.number());
        } else if (subject instanceof Subject.Entry entry) {
            KeptFields.text(out, entry.id());
        } else if (subject instanceof Subject.StoredFile file) {
            KeptFields.text(out, file.path());
        } else {
            KeptFields.text(out, ((Subject.OtherFile) subject).path());
        }
    }

    private static Subject subject(DataInputStream in) throws IOException {
        String kind = KeptFields.text(in);
        return switch (kind) {
            case "Whole" -> Subject.Whole.valueOf(KeptFields.text(in));
            case "Channel" -> new Subject.Channel(KeptFields.text(in));
            case "Dwell" -> new Subject.Dwell(in.readDouble());
            case "FileLine" -> new Subject.FileLine(in.readLong());
            case "Entry" -> new Subject.Entry(KeptFields.text(in));
            case "StoredFile" -> new Subject.StoredFile(KeptFields.text(in));
            case "OtherFile" -> new Subject.OtherFile(KeptFields.text(in));
            default -> throw new IOException("a subject '" + kind + "'");
        };
    }

    static void value(DataOutputStream out, Value value) throws IOException {
        KeptFields.text(out, value.getClass().getSimpleName());
        if (value instanceof Amount amount) {
            out.writeDouble(amount.value());
            KeptFields.text(out, amount.measure().name());
        } else if (value instanceof Estimated estimated) {
            out.writeDouble(estimated.value());
            out.writeDouble(estimated.low());
            out.writeDouble(estimated.high());
            KeptFields.text(out, estimated.measure().name());
        } else if (value instanceof Count count) {
            out.writeLong(count.number());
        } else if (value instanceof Quoted quoted) {
            KeptFields.text(out, quoted.text());
        } else if (value instanceof Moment moment) {
            KeptFields.text(out, moment.instant().toString());
        } else if (value instanceof SignalValue signal) {
            out.writeDouble(signal.value());
            KeptFields.text(out, signal.unit().name());
        } else if (value instanceof Listed listed) {
            KeptFields.list(out, listed.items(), KeptFacts::value);
        } else {
            Fact fact = (Fact) value;
            KeptFields.text(out, ((Enum<?>) fact.code()).getDeclaringClass().getName());
            KeptFields.text(out, fact.code().name());
            KeptFields.list(out, fact.values(), KeptFacts::value);
        }
    }

    static Value value(DataInputStream in) throws IOException {
        String kind = KeptFields.text(in);
        return switch (kind) {
            case "Amount" -> new Amount(in.readDouble(), Measure.valueOf(KeptFields.text(in)));
            case "Estimated" -> new Estimated(
                    in.readDouble(), in.readDouble(), in.readDouble(), Measure.valueOf(KeptFields.text(in)));
            case "Count" -> new Count(in.readLong());
            case "Quoted" -> new Quoted(KeptFields.text(in));
            case "Moment" -> new Moment(Instant.parse(KeptFields.text(in)));
            case "SignalValue" -> new SignalValue(in.readDouble(), SignalUnit.valueOf(KeptFields.text(in)));
            case "Listed" -> new Listed(KeptFields.list(in, KeptFacts::value));
            case "Fact" -> fact(in);
            default -> throw new IOException("a value '" + kind + "'");
        };
    }

    private static Fact fact(DataInputStream in) throws IOException {
        String list = KeptFields.text(in);
        String name = KeptFields.text(in);
        try {
            for (Object code : Class.forName(list).asSubclass(Code.class).getEnumConstants()) {
                if (((Code) code).name().equals(name)) {
                    return new Fact((Code) code, KeptFields.list(in, KeptFacts::value));
                }
            }
        } catch (ClassNotFoundException | ClassCastException e) {
            throw new IOException(e);
        }
        throw new IOException("a fact '" + name + "'");
    }
}
