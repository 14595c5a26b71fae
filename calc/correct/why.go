package correct

import (
	"fmt"

	"brazebooth/calc"
	"brazebooth/calc/advice"
	"brazebooth/tables"
)

// OfHeat reports whether the window judges this cause.
func OfHeat(cause string) bool {
	return heatOf(cause) != 0 || cause == tables.CauseOffLong || cause == tables.CauseOffShort
}

// why explains the change in a sentence.
func (v *posterior) why(top *advice.Likely, c *advice.Correction, m *move) string {
	text := "Likeliest: " + top.Name + ". "
	switch {
	case c.Change.What == "mode":
		return text + "No feed and travel in a hand's reach are likely to be good here: let the arc pause."
	case v.off:
		return text + "The usual step of a hand; nothing is computed for this joint."
	case !OfHeat(top.ID) && c.GoodAfter < c.GoodBefore-100*chanceNoise:
		return text + fmt.Sprintf("This comes before the heat, which is then right in %.0f of 100 by the "+
			"window, now in %.0f.", c.GoodAfter, c.GoodBefore)
	case !OfHeat(top.ID):
		return text + fmt.Sprintf("This is not about heat, which stays as likely right by the window: in %.0f of 100 "+
			"with it, %.0f without.", c.GoodAfter, c.GoodBefore)
	case m.then != nil:
		then := m.then.lever
		return text + fmt.Sprintf("Both times have to move, by the window and what was seen: with this the next bead "+
			"is good in %.0f of 100, with %s at %.3g %s too in %.0f, without either in %.0f.",
			100*m.good, calc.FigureLabel(then.what), then.opt(&m.then.job).V, then.unit, 100*m.together, c.GoodBefore)
	case otherTime(top.ID, c.Change.What):
		text += "That time alone would leave the other one wrong. "
	case m.far != "":
		return text + m.far
	}
	return text + fmt.Sprintf("By the window and what was seen, the next bead is good with this in %.0f of 100, "+
		"without it in %.0f.", c.GoodAfter, c.GoodBefore)
}

// otherTime reports whether the change is to a time other than the one at fault.
func otherTime(cause, what string) bool {
	switch cause {
	case tables.CauseOnLong, tables.CauseOnShort:
		return what != "arc_on"
	case tables.CauseOffLong, tables.CauseOffShort:
		return what != "arc_off" && what != "spot_step"
	}
	return false
}

// noChange says why no setting should change, and what to do instead.
func (v *posterior) noChange(top *advice.Likely, c *advice.Correction) {
	switch {
	case top.ID == tables.CauseFine && !v.off && c.GoodBefore < 50:
		c.Why = fmt.Sprintf("Nothing to change, but by the window the next bead is like it in %.0f of 100 only: "+
			"write the settings down, lay a second one, peel both.", c.GoodBefore)
	case top.ID == tables.CauseFine:
		c.Why = "Nothing to change: keep these settings and write them down."
	case OfHeat(top.ID):
		c.Do = "another wire size, mode or thickness, or " + top.Do
		c.Why = "Likeliest: " + top.Name + ". No single setting has room left for it."
		if !v.off && c.GoodBefore >= 1 {
			c.Why += fmt.Sprintf(" By the window and what was seen, the next bead is good in %.0f of 100 with the "+
				"settings as they are.", c.GoodBefore)
		}
	default:
		c.Do = top.Do
		c.Why = "Likeliest: " + top.Name + "." + v.leave(top, c)
	}
}

// leave says why the settings stay for a cause other than heat.
func (v *posterior) leave(top *advice.Likely, c *advice.Correction) string {
	switch {
	case len(v.treatments(top.ID, &v.last().Job)) > 0:
		return " A setting for it would spoil the heat by the window."
	case v.off:
		return " No setting is at fault: leave them."
	case c.GoodBefore < 50:
		return fmt.Sprintf(" No setting is at fault in that; the heat itself is right in %.0f of 100 only by the "+
			"window: look at it next.", c.GoodBefore)
	}
	return fmt.Sprintf(" No setting is at fault: leave them, by the window they are right in %.0f of 100.",
		c.GoodBefore)
}
