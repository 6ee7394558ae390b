/** What was found, before anybody puts it into words: a code and the typed values it rests on. */
package evenblade.base.fact;
