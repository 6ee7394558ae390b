/** What was found, before anybody puts it into words: a code and the typed values it rests on; the warnings that travel with a result. */
package evenblade.base.fact;
