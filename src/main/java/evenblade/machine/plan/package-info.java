/** What a ground run will show: where every order lies, what can't be separated or seen, and the run card. */
package evenblade.machine.plan;
