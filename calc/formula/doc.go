// Package formula holds the formulas of physics and of the trade: numbers in, numbers out. Every formula states
// its units, its range and its source; outside that range it returns an error that wraps ErrRange.
package formula
