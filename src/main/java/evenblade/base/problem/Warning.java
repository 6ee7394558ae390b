package evenblade.base.problem;

import java.util.Objects;

/**
 * Something a reader of a result has to know about it, carried along with the result.
 *
 * @param code a stable name in kebab-case, for programs
 * @param message one sentence for people, with the numbers it rests on
 */
public record Warning(String code, String message) {
    public Warning {
        Objects.requireNonNull(message);
        if (!code.matches("[a-z0-9]+(-[a-z0-9]+)*")) {
            throw new IllegalArgumentException("warning code '" + code + "' is not kebab-case");
        }
    }
}
