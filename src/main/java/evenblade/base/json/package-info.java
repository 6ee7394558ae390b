/** Reads and writes JSON documents; every complaint names its line. */
package evenblade.base.json;
