package formula

import "brazebooth/tables"

// LoadLine returns the conventional load voltage of a power source at a current, V: 14 + 0.05·I, 44 V from 600 A, by
// IEC 60974-1. It rates power sources; no arc runs on it.
func LoadLine(amps float64) float64 {
	return min(tables.LoadLineBase.V+tables.LoadLineSlope.V*amps, tables.LoadLineCap.V)
}
