package evenblade.base.fact;

/** One typed thing that a fact rests on: a quantity, a count, a line, a run, a name that a user gave. */
public interface Value {}
