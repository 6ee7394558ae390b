package evenblade.input.intake;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** A run of numbers whose length isn't known beforehand, kept in pieces so that growing copies nothing. */
final class GrowingNumbers {
    private static final int PIECE = 1 << 14; // 128 KiB: few pieces, little room left empty

    private final List<double[]> full = new ArrayList<>();
    private double[] piece = new double[256];
    private int used;

    void add(double value) {
        if (used == piece.length) {
            if (piece.length < PIECE) {
                piece = Arrays.copyOf(piece, 4 * piece.length);
            } else {
                full.add(piece);
                piece = new double[PIECE];
                used = 0;
            }
        }
        piece[used++] = value;
    }

    int size() {
        return full.size() * PIECE + used;
    }

    double at(int index) {
        int inPiece = index - full.size() * PIECE;
        return inPiece >= 0 ? piece[inPiece] : full.get(index / PIECE)[index % PIECE];
    }

    /** Takes the last one back; there must be one. */
    void removeLast() {
        if (used == 0) {
            piece = full.remove(full.size() - 1);
            used = PIECE;
        }
        used--;
    }

    void clear() {
        full.clear();
        piece = new double[256];
        used = 0;
    }

    double[] toArray() {
        double[] all = new double[size()];
        for (int i = 0; i < full.size(); i++) {
            System.arraycopy(full.get(i), 0, all, i * PIECE, PIECE);
        }
        System.arraycopy(piece, 0, all, full.size() * PIECE, used);
        return all;
    }
}
