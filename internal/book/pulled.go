package book

// Pulled is a test piece of the shop's own that was pulled until it broke. It is kept as a reading: a program that
// knows no such pieces learns nothing from one, since it has no amps.
type Pulled struct {
	For    string  `json:"for" cut:"200"`    // its joint, filler and members, by calc.PulledKey
	Length float64 `json:"length"`           // of the seam, mm
	Throat float64 `json:"throat,omitempty"` // mm, where it was measured
	Force  float64 `json:"force"`            // kN at which it broke
	Broke  string  `json:"broke" cut:"20"`   // sheet bronze bond
}
