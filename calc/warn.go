package calc

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"brazebooth/calc/formula"
	"brazebooth/calc/limit"
	"brazebooth/tables"
)

// warnings collects the warnings of a card.
type warnings struct {
	card    *Card
	list    []Warning
	stopped bool        // the job is not to be done
	asked   limit.Asked // what the edges ask for that are not met
}

// say adds warnings whose texts are in tables.
func (w *warnings) say(codes ...string) {
	for _, code := range codes {
		if l, ok := tables.Warnings.ByID(code); ok {
			w.list = append(w.list, Warning{code, Severity(l.Severity), l.Text, l.Source})
		}
	}
}

// tell adds a warning with numbers of this job.
func (w *warnings) tell(code string, severity Severity, basis, format string, args ...any) {
	w.list = append(w.list, Warning{code, severity, fmt.Sprintf(format, args...), basis})
}

// warn writes every warning that fits the card, stops first.
func warn(card *Card, b *board, s *spread, sug *suggestion, v *verdict, up *warmUp) {
	w := warnings{card: card, list: make([]Warning, 0, 12), asked: b.askedOf(card, s, v)}
	w.hazards()
	w.say("stops", "shock", "solvent") // what kills at once comes before what only spoils the joint or harms in time
	w.refused()
	metals := warnings{card: card} // they come after the verdict, which must know whether they stop the job
	metals.metals()
	w.stopped = len(Stops(w.list))+len(Stops(metals.list)) > 0
	w.verdict(sug, v, up)
	w.list = append(w.list, metals.list...)
	w.coats()
	w.given()
	w.weldBraze(v)
	w.inCorner(v)
	w.sheet()
	w.fume()
	w.wire()
	w.arc(b, s)
	w.travel(s)
	w.fill(b, s, v)
	w.gap(v)
	w.backing(v)
	w.position(v)
	w.timed(s)
	w.noGoodSetting(sug, v)
	w.warmUp(up)
	w.seamEnds(v)
	w.zinc(v)
	w.service()
	w.coldStart(s, v)
	w.justGood(v)
	w.learned(s)
	w.dials()
	w.eyes(s.value[oAmps], s.value[oPeak])
	w.say("test-bead", "fire", "strength")
	w.put()
}

// put writes the warnings on the card, stops first.
func (w *warnings) put() {
	rank := func(x Warning) int { return slices.Index([]Severity{Stop, Caution, Info}, x.Severity) }
	slices.SortStableFunc(w.list, func(a, b Warning) int { return cmp.Compare(rank(a), rank(b)) })
	w.card.Warnings = w.list
}

// hazards stops the job, on every card and page, where the user said that a hazard applies.
func (w *warnings) hazards() {
	for _, id := range strings.Split(w.card.Used.Hazard, ",") {
		if h, ok := tables.Hazards.ByID(id); ok {
			w.tell("hazard-"+id, Stop, h.Source, "%s: %s. Instead: %s.", sentenceCase(h.Name), lowerFirst(h.Why),
				lowerFirst(h.Instead))
		}
	}
}

func sentenceCase(s string) string { return strings.ToUpper(s[:1]) + s[1:] }

func lowerFirst(s string) string { return strings.ToLower(s[:1]) + s[1:] }

// arc compares the current with the steady range and with a reading.
func (w *warnings) arc(b *board, s *spread) {
	amps := s.value[oAmps]
	floor, spray := SteadyRange(w.card.Used.Wire.V)
	if floor > 0 && amps < floor {
		arc := "short arc"
		if w.card.Used.Mode == "pulsed" {
			arc = "arc"
		}
		w.tell("arc-unsteady", Caution, "common practice, no source", "%.0f A is under about %.0f A, where this "+
			"wire's %s gets unsteady. %s", amps, floor, arc, w.mending("", moreFeed, "a thinner wire"))
	}
	if spray > 0 && amps > spray {
		w.tell("spray", Caution, "AWS Welding Handbook, 8th ed. vol. 2 (memory high)", "%.0f A is over about %.0f A, "+
			"where the arc turns to spray and floods thin sheet. %s", amps, spray,
			w.mending("", lessFeed, "a thicker wire"))
	}
	job := &w.card.Job
	if job.Feed.Set && job.Amps.Set {
		w.reading(job.Amps.V)
	}
	if job.Volts.Set {
		w.voltsReading(job.Volts.V, b, s)
	}
}

// reading compares the given amps with the current of the feed, as computed without them, and says whether they are
// used.
func (w *warnings) reading(amps float64) {
	open := w.card.Job
	open.Amps, open.Volts, open.Feed = Opt{}, Opt{}, w.card.Used.Feed
	s, ok := arcOf(open)
	if !ok {
		return
	}
	doubt := 200 * tables.ReadingSigma.V
	if amps >= s.low[oAmps] && amps <= s.high[oAmps] {
		w.tell("amps-agree", Info, wireSource, "Your %.0f A agrees with the feed: computed %.0f A, between %.0f and "+
			"%.0f. Heat and window follow your reading, taken as known within %.0f %%.", amps, s.value[oAmps],
			s.low[oAmps],
			s.high[oAmps], doubt)
		return
	}
	check := "the feed (time a 6 s pull) and the wire size: the meter reads more than this feed can melt"
	if amps < s.low[oAmps] {
		check = "the stick-out, and whether the feed slips: the meter reads less than this feed needs"
	}
	used := "Heat and window follow it as far as it can be believed"
	if !w.card.Used.Readings.Set {
		used = "It is too far off to be used"
	}
	w.tell("amps-disagree", Caution, wireSource, "Your %.0f A lies outside the feed's %.0f to %.0f A. Check %s. "+
		"%s.", amps,
		s.low[oAmps], s.high[oAmps], check, used)
}

// voltsReading compares the volts that were given with the mode's load line.
func (w *warnings) voltsReading(volts float64, b *board, s *spread) {
	model := b.inputs[inModeFactor] * b.inputs[inVoltFactor] * formula.LoadLine(s.value[oAmps])
	_, band := voltsOf(w.card.Used.Mode)
	if d := math.Abs(volts - model); d > voltReach*band {
		w.tell("volts-unusual", Caution, "conventional load line IEC 60974-1 scaled to the mode",
			"%.1f V is far from the %.1f V usual at %.0f A in this mode. Read the meter while the arc "+
				"runs, not the knob.", volts, model, s.value[oAmps])
	}
}

// voltReach is how many bands the volts may be off the mode's line; further off the wire stubs or burns back.
const voltReach = 1.5

// travel warns of a speed that a hand cannot hold.
func (w *warnings) travel(s *spread) {
	v := s.value[oTravel]
	if w.card.Used.Mode == "timed" {
		return // spots need no even speed
	}
	switch {
	case v > tables.HandSpeedHigh.V:
		w.tell("travel-fast", Caution, tables.HandSpeedHigh.Source, "%.1f mm/s is faster than a hand holds well "+
			"(about %.0f mm/s). Use %s.", v, tables.HandSpeedHigh.V, orElse(w.unopposed("a carriage", lessFeed)))
	case v < tables.HandSpeedLow.V:
		w.tell("travel-slow", Caution, tables.HandSpeedLow.Source, "%.1f mm/s is slower than a hand holds well "+
			"(about %.0f mm/s). %s", v, tables.HandSpeedLow.V, w.mending("", moreFeed, "a timed arc"))
	}
}

// fill warns where the bead does not fill what the joint needs.
func (w *warnings) fill(b *board, s *spread, v *verdict) {
	if b.chain.plug || b.chain.timed {
		return
	}
	need := wantedOf(w.card)
	if n, ok := w.card.Figure("passes"); ok && n.Value > 1 {
		if Grooved(w.card) {
			w.tell("passes", Info, n.Basis.Source, "A butt of %.1f mm is taken as bevelled, a V of %.0f°: it takes "+
				"about %.0f beads like this one, each cooled before the next: see the page passes. Each is judged as "+
				"a bead on a flat joint: the groove itself is not computed, and the throat is that of closed square "+
				"edges.",
				MinCore(w.card.Setup.Joined()), tables.Bevel.V, n.Value)
		} else {
			w.tell("passes", Info, n.Basis.Source, "The joint needs %.0f mm², and one pass lays about %.0f mm² well: "+
				"about %.0f beads like this one, each cooled before the next.", need.area(need.in), tables.OnePass.V,
				n.Value)
		}
	}
	at := (*heatState)(nil)
	if v.modelled {
		at = &v.state
	}
	if need := need.at(at); s.value[oBead] < need {
		w.tell("underfilled", Caution, "mass balance",
			"The bead lays %.1f mm² and the joint needs %.1f mm². %s", s.value[oBead], need,
			w.mending("Other edges ask "+
				"for less of it here: fill the joint with more than one bead, each cooled before the next.", goSlower,
				moreFeed))
	}
}
