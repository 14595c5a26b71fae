package calc

import (
	"slices"

	"brazebooth/calc/effort"
	"brazebooth/calc/thinsheet"
)

// timedCard is the card of the job with its on and off times. Times that are put into a job count as given and would
// carry no interval, so the run's figures replace the card's own.
func (g *timedRun) timedCard(e *effort.Account, job Job, s *Timed) (Card, error) {
	j := job
	j.Feed, j.Amps = g.card.Used.Feed, job.Amps
	if g.board.chain.ampsGiven {
		j.Feed = Opt{}
	}
	if b := &g.times.OnOff; b.On > 0 {
		j.Travel = Opt{}
		j.ArcOn, j.ArcOff, j.SpotStep = Some(b.On), Some(b.Off), Some(b.Step)
	}
	card, err := solve(e, j)
	if err != nil {
		return card, err
	}
	card.Job = job
	for i := range card.Figures {
		f := &card.Figures[i]
		if own, ok := FigureNamed(s.Figures, f.Name); ok && (f.Name != "net_heat" || g.read()) {
			*f = own
		}
		switch {
		case f.Name != "wire_feed" || job.Feed.Set || job.Amps.Set:
		case g.unjudged(): // merely usual
			low, high := g.board.steadyFeeds()
			f.Low, f.High = min(f.Value, low*0.06), max(f.Value, high*0.06)
			f.Basis = OwnBasis(usualFormula, "a current at which the arc burns steadily")
		case s.Good:
			f.Basis = OwnBasis(suggestFormula,
				"the feed nearest to the middle of the arc's range at which a hand can keep a rhythm")
		}
	}
	card.dropWarnings("timed-estimate", "no-beat")
	if g.times.OnOff.On > 0 {
		card.Zone = s.zone(&g.times)
		card.dropWarnings("not-modelled")
	} else {
		card.dropOnOff()
	}
	g.warn(&card, s)
	return card, nil
}

// unjudged reports whether nothing can say if this joint has a rhythm.
func (g *timedRun) unjudged() bool {
	return slices.Contains([]thinsheet.Reason{thinsheet.WideGap, thinsheet.TooThick, onBacking, roundHole, openFillet},
		g.times.Reason)
}

// sameInterval gives a figure of the run the relative interval of the same figure on the card, which accounts for what
// moves volts and amps together.
func (s *Timed) sameInterval(name string) {
	f, ok := s.Card.Figure(name)
	for i := range s.Figures {
		if g := &s.Figures[i]; ok && g.Name == name {
			g.Low, g.High = g.Value*f.Low/f.Value, g.Value*f.High/f.Value
		}
	}
}

// zone is the thermal zone of the timed arc.
func (s *Timed) zone(t *thinsheet.Times) string {
	b := &t.OnOff
	switch {
	case b.On > t.OnMax:
		return "hot"
	case b.EdgePeak < s.Liquidus || b.On < t.OnMin*0.999:
		return "cold"
	}
	return "good"
}

// byOnOff are the figures that follow from the times of a timed arc.
var byOnOff = []string{"arc_on", "arc_off", "spot_step", "travel", "arc_energy", "heat_input", "net_heat", "bead_area",
	"bead_width", "zinc_boiled_halfwidth", "zinc_boiled_halfwidth_2", "zinc_melted_halfwidth",
	"zinc_melted_halfwidth_2",
	"cooling_time"}

// dropOnOff removes the times, and figures that follow from them, from a card without a rhythm: readers would trust an
// estimate.
func (c *Card) dropOnOff() {
	c.Figures = slices.DeleteFunc(slices.Clone(c.Figures),
		func(f Figure) bool { return slices.Contains(byOnOff, f.Name) })
	c.Used.ArcOn, c.Used.ArcOff, c.Used.SpotStep, c.Used.Travel = Opt{}, Opt{}, Opt{}, Opt{}
}

func (c *Card) dropWarnings(codes ...string) {
	c.Warnings = slices.DeleteFunc(slices.Clone(c.Warnings),
		func(w Warning) bool { return slices.Contains(codes, w.Code) })
}
