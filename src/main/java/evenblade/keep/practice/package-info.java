/** Invents a run or a job with known truth, marked as invented. */
package evenblade.keep.practice;
