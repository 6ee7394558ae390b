/**
 * A rig that makes ground runs with known truth, for judging the program from outside.
 *
 * <p><b>Its author has not read the program:</b> neither its code nor its tests nor its own maker of practice runs. Only the
 * trade's physics, the file contract and published check values were used, and no class here uses a class of the program.
 * Keep it so: whoever changes this package should not take over an assumption from the code that it judges.
 *
 * <p>All of it is invented; no machine, place or maker is meant. Every draw of chance hangs on an explicit seed.
 *
 * <p><b>Units.</b> Times in s, speeds in rpm or Hz (in the name), lengths in m, mass in kg, force in N, accelerations in
 * m/s² peak, sound as share of full scale. Shares are of 1. Phases are of the cosine, x = A·cos(2π·order·turns + phase),
 * turns counted from the mark of the line's own shaft; a mark's front edge is at whole turns. Axes of a machine: forward
 * along the propeller shaft, right, up.
 *
 * <p><b>Use.</b> {@code GroundRun run = Rig.random(7).make();} then {@code run.writeWav(path)},
 * {@code run.writeCsv(path)}, {@code run.writeInstallation(path)}, {@code run.writeTruth(path)}, {@code run.truth()}.
 * Value 1 in a WAV file is the channel's full scale ({@code Sensor.fullScale()}).
 *
 * <p><b>What it leaves out.</b> Bending of engine or propeller, air-borne sound's travel and echoes, gyroscopic coupling of
 * the propeller, twisting vibration of the drive train, real recorders' anti-alias filters.
 */
package evenblade.rig;
