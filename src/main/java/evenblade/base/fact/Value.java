package evenblade.base.fact;

/** One typed thing that a fact rests on: a quantity, a count, a name that a user gave, another fact. */
public sealed interface Value permits Amount, Count, Estimated, Fact, Listed, Moment, Quoted, SignalValue {}
