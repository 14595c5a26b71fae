// Package effort counts what an answer takes and shares the processors between all who ask.
//
// An answer that searches must end, and it must be the same on every machine and under any load. So its work is counted
// and not timed: a search stops when its Account holds Most units, wherever it runs. An idle core takes 40 to 55 ns a
// unit with steel, so that Most is 1.2 to 1.6 s. Windows of usual jobs take one to eight million units; those of a thin
// sheet on a plate up to thirty. A cross-section that comes from a cache counts as if it had been solved, so that an
// answer does not depend on what was asked before.
package effort
