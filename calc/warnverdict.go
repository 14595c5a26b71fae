package calc

import (
	"brazebooth/tables"
	"math"
)

// verdict says what the cross-section finds of the setting.
func (w *warnings) verdict(v *verdict) {
	const basis = "cross-section model, own computation"
	st := &v.state
	switch v.zone {
	case "cold":
		if !st.bridged {
			w.tell("cold", Caution, basis, "Cold: the bead would not wet both members. Slower, more wire feed, pulsed, or preheat; peel a test bead before you trust one.")
			return
		}
		w.tell("cold", Caution, basis, "Cold: the toe stands at %.0f°, a cold lap from about %.0f°. Slower wets further; so does more wire feed at a faster travel, or pulsed.",
			st.toes.Larger()*180/math.Pi, coldAngle(w.card.Used.Joint)*180/math.Pi)
	case "hot":
		w.tell("hot", Caution, basis, "Hot: the base metal's skin reaches about %.0f °C and starts to melt: that is welding. Faster, or less wire feed.", max(st.skin[0], st.skin[1]))
	case "burn-through":
		w.tell("burn-through", Caution, basis, "Burn-through: the sheet melts through under the arc. Faster, less wire feed, a thinner wire, or timed arc.")
	case "not-modelled":
		w.tell("not-modelled", Info, basis, "No verdict on wetting and melting: %s. Judge it on a test bead.", v.why)
	}
}

// weldBraze says that an edge is left out, and why.
func (w *warnings) weldBraze(v *verdict) {
	if v.modelled && (v.margins.melts[0] || v.margins.melts[1]) {
		w.say("weld-braze")
	}
}

// setting says that the search found no good point, and which edges cross.
func (w *warnings) setting(sug *suggestion, v *verdict) {
	if sug.found || sug.feed == 0 || !v.modelled {
		return
	}
	first, second := v.worst()
	w.tell("no-good-setting", Caution, OwnCalc,
		"No feed and travel that are open here meet every edge; the nearest miss is shown. %s and %s cross. Try another wire size, filler, mode or thickness: the window computes which of them opens a good zone.", first, second)
}

// justGood warns of a setting that meets every edge by less than a hand repeats: it is good on paper only.
func (w *warnings) justGood(v *verdict) {
	at, d := nearest(&v.d)
	if !v.modelled || v.zone != "good" || !(d >= 0 && d < tables.HandRepeats.V) {
		return
	}
	w.tell("just-good", Caution, tables.HandRepeats.Source,
		"Only just good: “%s” is %.0f %% of feed or travel away, less than a hand repeats (about %.0f %%). The window tells what opens a wider zone.", edgeNames[at], d, tables.HandRepeats.V)
}
