package calc

import (
	"fmt"

	"brazebooth/calc/learned"
)

// PulledOf is what pulled pieces taught a card's job; false where none did, or only pieces of another joint.
func PulledOf(c *Card) (learned.Pulled, bool) {
	u := &c.Used
	if !u.Pulled.Set || u.PulledFor != PulledKey(c) {
		return learned.Pulled{}, false
	}
	return learned.Pulled{For: u.PulledFor, Count: int(u.Pulled.V), Mean: u.PulledMean.V,
		Sigma: u.PulledSigma.V}, true
}

// PulledKeyOf is PulledKey of a job. Errors as Solve.
func PulledKeyOf(j Job) (string, error) {
	var card Card
	err := resolve(j, &card)
	return PulledKey(&card), err
}

// PulledKey names what pieces must have in common: joint, filler, each member's metal and thickness to a tenth of a
// millimetre, the gap, if any, to a tenth, and what lies behind a butt. A closed joint teaches nothing of an open one.
func PulledKey(c *Card) string {
	key := c.Used.Joint + " " + c.Used.Filler
	for _, m := range c.Setup.Joined() {
		key += fmt.Sprintf(" %s %.1f", m.Metal.ID, m.Core)
	}
	if c.Used.Gap.V >= 0.05 {
		key += fmt.Sprintf(" gap %.1f", c.Used.Gap.V)
	}
	if b := c.Used.Backing; b != "" && b != "none" {
		key += " " + b
	}
	return key
}
