/**
 * Puts facts into words and answers into one order of headings, sentences, tables and pictures, which every face shows its
 * own way.
 */
package evenblade.tell.document;
