package calc

import (
	"fmt"

	"brazebooth/tables"
)

// ofHeat reports whether a cause is one that the window speaks of.
func ofHeat(cause string) bool {
	switch cause {
	case tables.CauseCold, tables.CauseHot, tables.CauseMelts, tables.CauseOnLong, tables.CauseOnShort, tables.CauseOffLong, tables.CauseOffShort:
		return true
	}
	return false
}

// why tells the change in a sentence.
func (v *view) why(top *Likely, c *Correction) string {
	text := "Likeliest: " + top.Name + ". "
	switch {
	case c.Change.What == "mode":
		return text + "No feed and travel in a hand's reach are likely to be good here: let the arc pause."
	case v.off:
		return text + "The usual step of a hand; nothing is computed for this joint."
	case !ofHeat(top.ID):
		return text + fmt.Sprintf("This is not about heat: by the window that is right in %.0f of 100 with it, %.0f without.", c.GoodAfter, c.GoodBefore)
	case c.GoodAfter < 5:
		return text + "By the window and what was seen this is the first of several steps the same way."
	}
	return text + fmt.Sprintf("By the window and what was seen, the next bead is good with this in %.0f of 100, without it in %.0f.", c.GoodAfter, c.GoodBefore)
}

// noChange says why no setting is to be changed.
func (v *view) noChange(top *Likely, c *Correction) string {
	switch {
	case top.ID == tables.CauseFine && !v.off && c.GoodBefore < 50:
		return fmt.Sprintf("Nothing to change, but by the window the next bead is like it in %.0f of 100 only: write the settings down, lay a second one, peel both.", c.GoodBefore)
	case top.ID == tables.CauseFine:
		return "Nothing to change: keep these settings and write them down."
	case ofHeat(top.ID):
		return "Likeliest: " + top.Name + ". No single setting has room left for it: another wire size, mode or thickness, or " + top.Do + "."
	}
	if top.ID == tables.CauseVoltsLow || top.ID == tables.CauseVoltsHi || top.ID == tables.CauseVapour {
		return "Likeliest: " + top.Name + ". A change for it would spoil the heat by the window: " + top.Do + " first."
	}
	return "Likeliest: " + top.Name + ". No setting is at fault: " + top.Do + "."
}
