// Package formula holds what physics and trade say in numbers: numbers in, numbers out. Every formula states its
// units, where it holds and its source; outside that range it returns an error that wraps ErrRange.
package formula
