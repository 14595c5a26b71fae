package practice

import (
	"context"
	"fmt"
	"strings"

	"brazebooth/calc"
	"brazebooth/calc/correct"
	"brazebooth/calc/thinsheet"
	"brazebooth/tables"
)

// The verdicts on a bead, as in a trial.
const (
	BeadGood       = "good"
	BeadAcceptable = "acceptable"
	BeadBad        = "bad"
)

// Bead is what a simulated booth lays with a setting.
type Bead struct {
	Job     calc.Job      // the setting as the welder believes it
	Seen    string        // ids of tables.Sights, with commas
	Verdict string        // good: every edge met; acceptable: one missed by less than the smallest step; bad
	Meter   []calc.Figure // what the booth's meter shows: current, volts
	Section calc.Section  // to scale; not Drawn for a timed arc, or where there is too much heat to compute
	Unmet   []string      // the edges that are not met, in words; shown when the job is over

	causes []string // ids of tables.Causes that explain Seen
}

// Bead lays one bead. It shows the sights that are likeliest, by the evidence of tables, for the unmet edges of
// the true bead; dirt, gas, restraint and zinc vapour are not simulated. Errors are those of calc.Answer, or
// say that the setting is one of another job.
func (p *Booth) Bead(ctx context.Context, setting calc.Job) (Bead, error) {
	if err := p.settable(&setting); err != nil {
		return Bead{}, err
	}
	b := Bead{Job: setting, Verdict: BeadGood}
	booth := p.Truth.of(&setting)
	var err error
	if setting.Mode == "timed" {
		err = b.timed(ctx, booth)
	} else {
		err = b.steady(ctx, booth)
	}
	if err != nil {
		return Bead{}, err
	}
	b.arc(&booth)
	b.look()
	return b, nil
}

// miss records a missed edge and its cause. near means that it is missed by less than the smallest step.
func (b *Bead) miss(cause, edge string, near bool) {
	if cause != "" {
		b.causes = append(b.causes, cause)
	}
	b.Unmet = append(b.Unmet, edge)
	switch {
	case !near:
		b.Verdict = BeadBad
	case b.Verdict == BeadGood:
		b.Verdict = BeadAcceptable
	}
}

// causeOfEdge is the cause that a missed edge points to.
var causeOfEdge = map[string]string{"wets": tables.CauseCold, "base stays solid": tables.CauseHot,
	"no burn-through": tables.CauseMelts,
	"gap bridged":     tables.CauseMelts,
	"joint filled":    tables.CauseHollow, "arc steady": tables.CauseUneven}

// steady judges the bead of a travelling arc by the edges of the true job's card.
func (b *Bead) steady(ctx context.Context, booth calc.Job) error {
	card, err := calc.SolveContext(ctx, booth)
	if err != nil {
		return err
	}
	b.meter(&card)
	if card.Zone == "not-modelled" { // only too much heat leads outside the model's grid
		b.miss(tables.CauseMelts, "no burn-through: more heat than the cross-section can follow", false)
		return nil
	}
	b.Section = card.Section
	for _, e := range card.Edges {
		if e.Met || e.Name == "base stays solid" && card.Zone == "burn-through" {
			continue
		}
		by := fmt.Sprintf("%s, missed by %.0f %% of feed or travel", e.Name, e.Margin)
		if e.Margin >= 999 {
			by = e.Name + ", missed by far"
		}
		b.miss(causeOfEdge[e.Name], by, e.Margin < tables.StepFeed.Low)
	}
	return nil
}

// timed judges a timed arc by the ends of on and off at the true heat and its feed.
func (b *Bead) timed(ctx context.Context, booth calc.Job) error {
	free := booth
	free.ArcOn, free.ArcOff = calc.Opt{}, calc.Opt{}
	s, err := calc.SolveTimed(ctx, free, nil)
	if err != nil {
		return err
	}
	b.meter(&s.Card)
	if !s.Good {
		cause := tables.CauseMelts
		if thinsheet.Reason(s.Reason) == thinsheet.NeverWets {
			cause = tables.CauseOnShort
		}
		b.miss(cause, "a rhythm: "+s.Why, false)
		return nil
	}
	end := func(name string) float64 { f, _ := calc.FigureNamed(s.Figures, name); return f.Value }
	for _, x := range [...]struct {
		past  float64 // s beyond the end
		cause string
		edge  string
	}{
		{booth.ArcOn.V - end("arc_on_max"), tables.CauseOnLong, "arc on, too long"},
		{end("arc_on_min") - booth.ArcOn.V, tables.CauseOnShort, "arc on, too short"},
		{booth.ArcOff.V - end("arc_off_max"), tables.CauseOffLong, "arc off, too long"},
		{end("arc_off_min") - booth.ArcOff.V, tables.CauseOffShort, "arc off, too short"},
	} {
		if x.past > 0 {
			b.miss(x.cause, fmt.Sprintf("%s by %.2f s", x.edge, x.past), x.past < tables.LeastOnOff.V)
		}
	}
	return nil
}

// arc judges the volts: outside the range around the usual volts of the true current, the wire stubs or burns
// back.
func (b *Bead) arc(booth *calc.Job) {
	low, high := calc.VoltEnds(booth)
	switch volts := booth.Volts.V; {
	case !booth.Volts.Set:
	case volts < low:
		b.miss(tables.CauseVoltsLow, fmt.Sprintf("volts, %.1f V under what this current bears", low-volts), false)
	case volts > high:
		b.miss(tables.CauseVoltsHi, fmt.Sprintf("volts, %.1f V over what this current bears", volts-high), false)
	}
}

// look turns the causes into sights.
func (b *Bead) look() {
	ids := map[string]bool{}
	for _, c := range b.causes {
		ids[likeliestSight(c)] = true
		if hot := c == tables.CauseHot || c == tables.CauseMelts; hot &&
			b.Section.BoiledBack[0]+b.Section.BoiledBack[1] > 0 {
			ids["zinc-gone-behind"] = true
		}
	}
	if len(ids) == 0 {
		ids["good"] = true
	}
	var list []string
	for _, id := range correct.SightIDs() {
		if ids[id] {
			list = append(list, id)
		}
	}
	b.Seen = strings.Join(list, ",")
}

// likeliestSight is the sight that a cause shows most often.
func likeliestSight(cause string) string {
	best, most := "", 0.0
	for _, s := range tables.Sights {
		if share := tables.ShareSeen(s.ID, cause); share > most {
			best, most = s.ID, share
		}
	}
	return best
}

// meter reads current and volts as a welder does while the arc burns.
func (b *Bead) meter(booth *calc.Card) {
	for _, name := range [...]string{"current", "volts"} {
		f, ok := booth.Figure(name)
		if !ok {
			continue
		}
		by := 2 * tables.ReadingSigma.V * f.Value
		b.Meter = append(b.Meter, calc.NewFigure(name, f.Unit, f.Value, f.Value-by, f.Value+by,
			calc.RowBasis("meter of the simulated booth, as well as one is read", tables.ReadingSigma.Origin)))
	}
}
