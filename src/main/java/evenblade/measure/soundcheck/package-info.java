/** Judges whether a take can be trusted: level, clipping, hum, automatic gain, low cut, channels, mark. */
package evenblade.measure.soundcheck;
