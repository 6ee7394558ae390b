/** Whether two runs, or all runs, differ, or why they can't be compared. */
package evenblade.judge.comparison;
