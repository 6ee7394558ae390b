/** Speed and orders while the engine runs: the analysis of a recording in small, over a window that slides along. */
package evenblade.measure.live;
