// Package batch answers many jobs from a table: rows in, the same rows with their cards out, in the same order, on all
// cores, with a few rows in memory at a time.
//
// A pool reads, computes on all cores and writes in the rows' order (pool.go). Rows are CSV (grid.go) or JSON lines
// (lines.go). A run that goes on after a stop first holds the earlier output against the input (resume.go). Every
// figure of a card has its columns (figures.go); a test says when one is missing.
package batch
