// Package effort counts what an answer takes and shares the processors between all who ask.
//
// An answer that searches must end, and it must be the same on every machine and under any load. So its work is counted
// and not timed: a search stops when its Account holds Most units, wherever it runs. An idle core takes 54 ns a unit with
// steel, so that Most is 1.6 s. Windows of usual jobs take one to eight million units; those of a thin sheet on a plate
// up to thirty.
//
// Rows of windows, remedies and timed arcs each run in one of a few places, as many as there are processors, so that a
// hundred viewers do not slow each other's keys. An Account also knows who waits: Over tells a computation that its
// caller has left.
package effort
