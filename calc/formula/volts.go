package formula

// LoadLine returns the conventional load voltage of a power source at a current, V: base + slope·I up
// to cap (IEC 60974-1: 14 + 0.05·I, 44 V from 600 A). It rates power sources; no arc runs on it.
func LoadLine(amps, base, slope, limit float64) float64 { return min(base+slope*amps, limit) }

// ModeVolts returns the arc's mean voltage in a transfer mode, V: the load line times the mode's factor.
// The figure is what a meter shows while the arc runs, not a knob's position.
func ModeVolts(amps, factor, base, slope, limit float64) float64 {
	return factor * LoadLine(amps, base, slope, limit)
}
