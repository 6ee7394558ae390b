package evenblade.face.cli;

import evenblade.base.json.JsonFields;
import evenblade.base.json.JsonWriter;
import evenblade.input.capture.InputDevice;
import evenblade.input.capture.SoundDevices;
import java.io.PrintWriter;
import java.util.List;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** {@code evenblade devices}: the inputs that {@code record} can use. */
final class DevicesCommand implements Command {
    @Override
    public void describe(CommandSpec spec) {
        spec.usageMessage().description("List the microphones and line inputs with their rates and channels.");
        spec.addOption(Options.json());
    }

    @Override
    public int run(ParseResult words, PrintWriter out) {
        List<InputDevice> devices = SoundDevices.list();
        if (Options.said(words, "--json")) {
            out.print(JsonWriter.write(new JsonFields()
                    .put("devices", devices.stream().map(DevicesCommand::json).toList())));
            return ExitStatus.DONE;
        }
        if (devices.isEmpty()) {
            out.println("No microphone or line input. Is it plugged in and open to this user?");
        }
        for (InputDevice device : devices) {
            out.println(device.name());
            if (!device.description().isEmpty()) {
                LineWrapper.lines("  ", "  ", device.description()).forEach(out::println);
            }
            out.println("  channels   " + numbers(device.channelCounts()));
            LineWrapper.lines("  rates      ", "             ", numbers(device.ratesHz()) + " Hz")
                    .forEach(out::println);
            out.println("  samples    " + numbers(device.sampleBits()) + " bit");
        }
        return ExitStatus.DONE;
    }

    private static JsonFields json(InputDevice device) {
        return new JsonFields()
                .put("name", device.name())
                .put("description", device.description())
                .put("ratesHz", device.ratesHz())
                .put("channels", device.channelCounts())
                .put("bits", device.sampleBits());
    }

    private static String numbers(List<Integer> numbers) {
        return String.join(", ", numbers.stream().map(String::valueOf).toList());
    }
}
