package calc

import (
	"fmt"
	"math"
	"strings"

	"brazebooth/calc/hang"
	"brazebooth/calc/limit"
	"brazebooth/tables"
)

// verdict says what the cross-section finds at the setting, and what to change. Where no feed and travel is good,
// another of these is no way out.
func (w *warnings) verdict(sug *suggestion, v *verdict, up *warmUp) {
	const basis = "cross-section model, own computation"
	st, stuck := &v.state, noneGood(sug, v) && sug.kept == ""
	switch v.zone {
	case "cold":
		if !st.bridged {
			ways := w.warmer(stuck, up)
			w.tell("cold", Caution, basis, "Cold: the bead would not wet both members.%s", w.remedy(len(ways) == 0,
				"Try "+either(ways)+"; peel a test bead before you trust one"))
			return
		}
		do := "Slower wets further; so does more wire feed at a faster travel"
		pulsed := w.card.Used.Mode == "pulsed"
		if w.asked.Faster || w.asked.Less { // by another edge
			do, stuck = "Pulsed wets further", stuck || pulsed
		} else if !pulsed {
			do += ", or pulsed"
		}
		w.tell("cold", Caution, basis, "Cold: the toe stands at %.0f°, a cold lap from about %.0f°.%s",
			st.toes.Larger()*180/math.Pi, coldAngle(w.card.Used.Joint)*180/math.Pi, w.remedy(stuck, do))
	case "hot":
		do := w.mending("", goFaster, lessFeed)
		w.tell("hot", Caution, basis, "Hot: the base metal's skin reaches about %.0f °C and starts to melt: that is "+
			"welding.%s", max(st.skin[0], st.skin[1]), w.remedy(stuck || do == "", strings.TrimSuffix(do, ".")))
	case "burn-through":
		ways := []string{"a thinner wire"}
		if !stuck {
			ways = append(w.unopposed(goFaster, lessFeed), ways...)
		}
		if timedReaches(w.card) {
			ways = append(ways, "a timed arc")
		}
		w.tell("burn-through", Caution, basis, "Burn-through: the sheet melts through under the arc.%s",
			w.remedy(false, "Try "+either(ways)))
	case "not-modelled":
		w.tell("not-modelled", Info, basis, "No verdict on wetting and melting: %s. Judge it on a test bead.", v.why)
	}
}

// warmer are the ways to wet cold members, without those that the job already uses, and without preheat where none is
// enough.
func (w *warnings) warmer(stuck bool, up *warmUp) (ways []string) {
	if !stuck {
		ways = w.unopposed(goSlower, moreFeed)
	}
	if w.card.Used.Mode != "pulsed" {
		ways = append(ways, "pulsed")
	}
	switch {
	case Applies("zinc", w.card):
		return append(ways, "to "+StripZinc(w.card))
	case !up.asked || up.needed() && (!math.IsNaN(up.least) || !math.IsNaN(up.less.least)):
		if w.card.Used.Preheat.V > tables.ChillOff.V {
			return append(ways, "a hotter preheat")
		}
		return append(ways, "preheat")
	}
	return ways
}

// inCorner says that a lap is computed as a tee, and why.
func (w *warnings) inCorner(v *verdict) {
	if v.modelled && w.card.Used.Joint == "lap" && Lies(w.card) == "tee" {
		w.tell("lap-as-tee", Info, SectionSource, "Computed as a tee: the upper sheet is higher than one bead, which "+
			"lies in the corner under its upper edge. That edge is followed up to its end: it gets hotter than a "+
			"tee's standing member.")
	}
}

// weldBraze says which edge of the verdict is left out and why, and how the section of an edge joint is computed.
func (w *warnings) weldBraze(v *verdict) {
	if v.modelled && (v.field.melts[0] || v.field.melts[1]) {
		w.say("weld-braze")
		if !w.iron(&v.state) && Applies(string(tables.CastIron), w.card) {
			w.say("weld-braze-iron")
		}
	}
	if v.modelled && w.card.Used.Joint == "edge" {
		w.say("edge-folded")
	}
}

// iron says how hot a casting's skin gets, which the verdict does not count, and reports whether it melts.
func (w *warnings) iron(st *heatState) bool {
	limit := tables.IronPeak
	for i, m := range w.card.Setup.Joined() {
		if m.Metal.Family == tables.CastIron && st.skin[i] >= limit.V {
			w.tell("iron-skin", Caution, limit.Source, "The iron's skin reaches about %.0f °C and melts, which the "+
				"verdict leaves out: from %.0f °C it turns hard and brittle. Lay the coldest bead that still wets; "+
				"draw a file over its edges: where the file skates they are hard.", st.skin[i], limit.V)
			return true
		}
	}
	return false
}

// position says whether the metal stays where it is laid.
func (w *warnings) position(v *verdict) {
	u := &w.card.Used
	if u.Position == defaultPosition {
		return
	}
	w.say(u.Position)
	if v.modelled && v.logs[limit.Stays] < 0 && v.logs.Unjudged(limit.Stays) == "" {
		pool := ""
		if e, ok := v.field.liquid.estimate(&v.state, hang.LongestPool); ok {
			is, most := fmt.Sprintf("%.0f", v.state.pool), fmt.Sprintf("%.0f", e.V)
			if is == most { // one of them is too long for the other, by less than a millimetre
				is, most = fmt.Sprintf("%.2f", v.state.pool), fmt.Sprintf("%.2f", e.V)
			}
			pool = fmt.Sprintf(" Its puddle is about %s mm long; up to about %s mm (%.0f to %.0f) stays.", is, most,
				e.Low, e.High)
		}
		ways := append(w.unopposed(goFaster, lessFeed), "a thinner wire")
		if u.Mode == "pulsed" {
			ways = append(ways, "dip rather than pulsed")
		}
		w.tell("metal-runs", Caution, untested, "In the position %s this bead is more than stays where it is laid.%s "+
			"A smaller bead: %s.", u.Position, pool, either(ways))
	}
}

// justGood warns of a setting that meets every edge but is more likely bad than good, or is nearer to an edge than a
// hand repeats. It says nothing at a preheat that the parts must not have: the verdict is then "outside".
func (w *warnings) justGood(v *verdict) {
	if !v.met() || Softened(w.card) || WarmedZinc(w.card) {
		return
	}
	at, d := limit.Nearest(&v.d)
	switch {
	case v.chance.shown() < tables.MarginalUnder.V:
		w.tell("marginal", Caution, OwnCalc, "Marginal: every edge is met as computed, but the figures are uncertain, "+
			"and only about %.0f in 100 beads would be good. Most often missed: %s. The window (map) tells what makes "+
			"it surer.", v.chance.Good, v.chance.Words())
	case d < tables.HandRepeats.V:
		w.tell("just-good", Caution, tables.HandRepeats.Source, "Only just good: “%s” has %.0f %% of feed or travel "+
			"to spare, less than a hand repeats (about %.0f %%). The window (map) tells what opens a wider zone.",
			at.Edge(),
			d, tables.HandRepeats.V)
	}
}

// root says that a bead bridges an opening and does not fill it: “joint filled” counts metal, wherever it lies.
func (w *warnings) root(v *verdict) {
	f, ok := w.card.Figure("throat")
	t := MinCore(w.card.Setup.Joined())
	if !ok || !v.modelled || w.card.Used.Joint != "butt" || !(w.card.Used.Gap.V > 0) || f.Value > t/2 {
		return
	}
	carries := fmt.Sprintf("like %.2f mm", f.Value)
	if f.Value < 0.05 {
		carries = "next to nothing"
	}
	w.tell("root-unfilled", Caution, SectionSource, "The bead bridges the opening and does not fill it: over the root "+
		"it carries %s of the sheet's %.1f mm. Cut a test piece before it bears load or has to hold water.", carries, t)
}

// untested is the source of every edge of the liquid.
const untested = "forces on liquid bronze, own computation, no test behind it"

// gap says whether the metal bridges a gap, and warns of zinc between two sheets.
func (w *warnings) gap(v *verdict) {
	u := &w.card.Used
	fillet := u.Joint == "lap" || u.Joint == "tee"
	switch {
	case !(u.Gap.V > 0) || u.Mode == "timed":
	case !v.modelled && u.Gap.V > tables.SteadyGap.V:
		w.tell("gap-not-judged", Caution, untested, "An opening of %.1f mm under an arc without pauses is not judged "+
			"here. Try %s.", u.Gap.V, OverOpening(w.card))
	case !v.modelled, v.logs.Unjudged(limit.Bridges) != "":
	case v.logs[limit.Bridges] < 0 && fillet:
		w.tell("gap-not-bridged", Caution, untested, "A gap of %.1f mm is more than this bead reaches over. %s",
			u.Gap.V, w.mending("", "closer fit-up", moreMetal, slowerTravel))
	case v.logs[limit.Bridges] < 0:
		w.tell("gap-not-bridged", Caution, untested, "A root opening of %.1f mm is more than this setting bridges: "+
			"the metal falls through or leaves a hole. Try %s: the window (map) and fit compute them beside each "+
			"other.",
			u.Gap.V,
			OverOpening(w.card))
	case u.Gap.V > tables.SteadyGap.V && fillet:
		w.tell("gap-untested", Info, untested, "That metal reaches over a gap of %.1f mm is computed from its shape, "+
			"and no test stands behind it: try it on scrap, or close the gap.", u.Gap.V)
	case u.Gap.V > tables.SteadyGap.V && u.backed() == "":
		w.tell("gap-untested", Info, untested, "That a root opening of %.1f mm is bridged is computed from the "+
			"forces on the liquid, and tests reach only about %.1f mm: try it on scrap.", u.Gap.V, tables.SteadyGap.V)
	}
	w.root(v)
	if ventable(w.card) {
		w.say("zinc-vent")
	}
}

// timed says how far the estimate of on and off times holds.
func (w *warnings) timed(s *spread) {
	u := &w.card.Used
	if u.Mode != "timed" {
		if u.ArcOn.Set || u.ArcOff.Set || u.SpotStep.Set {
			w.say("beat-unused")
		}
		return
	}
	if !(s.value[oOn] > 0) {
		w.tell("no-beat", Caution, "standing source on a sheet", "This arc does not melt the filler on this sheet "+
			"within %d s: no on and off time. More wire feed, thinner sheet, or %s.", LongestOnOff,
			OrStrip(w.card, "preheat"))
		return
	}
	w.say("timed-estimate")
	switch {
	case u.Gap.V > 0:
	case w.card.Job.Gap.Set || u.Joint == "plug" || u.Joint == "overlay":
		w.say("timed-no-gap")
	default: // nobody said that there is no gap
		w.say("timed-closed")
	}
	if widest := 2 * tables.ArcWidth.V; u.Gap.V > widest {
		w.tell("gap-wide", Caution, "two standard deviations of the arc's width", "A gap of %.1f mm is wider than "+
			"about %.1f mm: the arc finds little sheet to land on. Try %s.", u.Gap.V, widest,
			OverOpening(w.card))
	}
}
