package evenblade.tell.chart;

import java.awt.Color;

/**
 * Ways of seeing colours: full strength of each weakness after Machado, Oliveira and Fernandes 2009
 * (IEEE Trans. Vis. Comput. Graph. 15(6):1291), on linear light; matrices from memory, each row sums to 1.
 */
enum Sight {
    USUAL(1, 0, 0, 0, 1, 0, 0, 0, 1),
    WITHOUT_RED(0.152286, 1.052583, -0.204868, 0.114503, 0.786281, 0.099216, -0.003882, -0.048116, 1.051998),
    WITHOUT_GREEN(0.367322, 0.860646, -0.227968, 0.280085, 0.672501, 0.047413, -0.011820, 0.042940, 0.968881),
    WITHOUT_BLUE(1.255528, -0.076749, -0.178779, -0.078411, 0.930809, 0.147602, 0.004733, 0.691367, 0.303900);

    private final double[] matrix;

    Sight(double... matrix) {
        this.matrix = matrix;
    }

    /** Linear red, green and blue of the colour as seen. */
    double[] of(Color colour) {
        double[] in = Lab.linear(colour);
        double[] out = new double[3];
        for (int row = 0; row < 3; row++) {
            for (int column = 0; column < 3; column++) {
                out[row] += matrix[3 * row + column] * in[column];
            }
            out[row] = Math.min(1, Math.max(0, out[row]));
        }
        return out;
    }
}
