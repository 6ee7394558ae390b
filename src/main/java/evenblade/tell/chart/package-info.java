/** One class per picture, from result to image. */
package evenblade.tell.chart;
