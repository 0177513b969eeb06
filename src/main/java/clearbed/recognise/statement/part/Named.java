package clearbed.recognise.statement.part;

import clearbed.recognise.statement.limit.Limits;

/**
 * What a stretch of a part names that may limit a value; offsets are of the part.
 *
 * @param complement true for all that was not named: "elsewhere", "the other tile"
 */
record Named(int start, int end, Limits limits, boolean complement) {}
