package advice

import (
	"brazebooth/calc"
	"encoding/json"
)

// Likely is a cause with its probability among all causes considered, %.
type Likely struct {
	ID         string  `json:"id"`
	Name       string  `json:"name"`
	Likelihood float64 `json:"likelihood"`
	Do         string  `json:"do"`
	Known      string  `json:"known"`
	Source     string  `json:"source"`

	Prior float64 `json:"-"` // probability before the bead was seen
}

// Change is the one setting to change for the next test bead. What is stickout, volts, wire_feed, travel,
// arc_on, arc_off, spot_step, preheat or mode; for mode, FromMode and ToMode hold words and the numbers are
// unused.
type Change struct {
	What             string
	From, To         float64
	FromMode, ToMode string
	Unit             string
}

// MarshalJSON writes from and to as numbers, or as ids where a mode changes.
func (c Change) MarshalJSON() ([]byte, error) {
	from, to := any(c.From), any(c.To)
	if c.What == "mode" {
		from, to = c.FromMode, c.ToMode
	}
	return json.Marshal(struct {
		What string `json:"what"`
		From any    `json:"from"`
		To   any    `json:"to"`
		Unit string `json:"unit"`
	}{c.What, from, to, c.Unit})
}

// Correction is the advice that follows from the look of a test bead.
type Correction struct {
	Causes []Likely `json:"causes"`
	Change *Change  `json:"change,omitzero"` // nil if no setting is at fault or has room left
	Do     string   `json:"do,omitempty"`    // what to do instead of a setting; "" if all is well
	Why    string   `json:"why"`
	// GoodBefore and GoodAfter are the probabilities, %, that the next bead is good without and with the
	// change, given the computed window and everything seen so far. 0 where no window is computed, and after a
	// change of mode.
	GoodBefore float64  `json:"chance_before,omitzero"`
	GoodAfter  float64  `json:"chance_after,omitzero"`
	Next       calc.Job `json:"-"` // the job with the change, for the next try
}
