package book

// Pulled is a test piece of the shop that was pulled until it broke. It is stored as a reading without amps, so that an
// older program, which does not know such pieces, learns nothing from it.
type Pulled struct {
	For    string  `json:"for" cut:"200"`    // its joint, filler and members, by calc.PulledKey
	Length float64 `json:"length"`           // of the seam, mm
	Throat float64 `json:"throat,omitempty"` // mm, if it was measured
	Force  float64 `json:"force"`            // kN at which it broke
	Broke  string  `json:"broke" cut:"20"`   // sheet bronze bond
}
