package evenblade.face.app;

import evenblade.judge.balance.BalanceAnswer;
import evenblade.judge.balance.Balancing;
import java.nio.file.Path;

/** The correction that a file of typed readings calls for. */
public final class BalanceTyped {
    private BalanceTyped() {}

    /**
     * Reads and answers.
     *
     * @throws evenblade.base.problem.BadInput with the line, where something in the file can't be used
     */
    public static BalanceAnswer answer(Path file) {
        return Balancing.answer(BalanceReadings.read(file));
    }
}
