/** Correction weights from trial runs, scale or bench, split over allowed places, with what will remain. */
package evenblade.judge.balance;
