package evenblade.base.fact;

/** Says which kind of fact something is; every enum that does is a list of all facts of its room. */
public interface Code extends Worded {}
