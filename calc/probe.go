package calc

import (
	"context"
	"math"

	"brazebooth/calc/effort"
	"brazebooth/calc/limit"
	"brazebooth/calc/section"
	"brazebooth/internal/crew"
)

// Probe finds what a laid job would do if the heat, the feed or the travel were other than computed, for judging beads.
// What the job does as it stands is on its card.
type Probe struct {
	b     *board
	field heatField
}

// ProbeOf lays out the heat flow of a job whose settings are all known, see Laid. Errors as Solve. Once ctx is
// cancelled, methods that need a section return false or 0.
func ProbeOf(ctx context.Context, job *Job) (*Probe, error) {
	b, card, err := laidOut(effort.New(ctx), *job)
	if err != nil {
		return nil, err
	}
	return &Probe{b, b.heatField(card)}, nil
}

// state is the state at the job's own feed and travel where the heat is exp(shift) times the computed one.
func (p *Probe) state(shift float64, zinc bool) (heatState, error) {
	in, o, err := p.fed(shift)
	if err != nil {
		return heatState{o: o}, err
	}
	return p.field.solve(&in, &o, zinc)
}

// fed is the section's input there, with the outputs of wire and arc.
func (p *Probe) fed(shift float64) (in section.Input, o [outs]float64, err error) {
	in, o, err = p.field.fed(p.b.inputs[inFeed], p.b.inputs[inTravel])
	in.Heat *= math.Exp(shift)
	o[oNet] = in.Heat
	return in, o, err
}

// Limits are those where the heat is exp(shift) times the computed one; false where the model does not reach.
func (p *Probe) Limits(shift float64) (limit.All, bool) {
	s, err := p.state(shift, false)
	if err != nil {
		return limit.All{}, false
	}
	return p.field.logs(&s), true
}

// LimitsOf are Limits at several shifts, computed side by side.
func (p *Probe) LimitsOf(shifts []float64) (list []limit.All, ok []bool) {
	list, ok = make([]limit.All, len(shifts)), make([]bool, len(shifts))
	var wg crew.Crew
	for i := range shifts {
		wg.Go(func() { list[i], ok[i] = p.Limits(shifts[i]) })
	}
	wg.Wait()
	return list, ok
}

// Inside is how far the job lies inside the limit of cold (heat above 0) or of melting (heat below 0), as a logarithm,
// where the heat is exp(shift) times the computed one; false where the model does not reach.
func (p *Probe) Inside(heat, shift float64) (float64, bool) {
	s, err := p.state(shift, false)
	if err != nil {
		return 0, false
	}
	l := p.field.logs(&s)
	switch {
	case heat > 0 && s.bridged:
		return l[limit.Wets], true
	case heat > 0: // it does not even wet both members: the more heat, the nearer
		return math.Log(s.o[oNet]) - limit.Far, true
	}
	return min(l[limit.Solid], l[limit.Burn]), true
}

// Simple are the limits beside those of heat: filled, gap bridged, metal stays up, arc steady, a hand's speed. All are
// zero for a timed arc; false where feed, volts or travel are outside the range of their formulas.
func (p *Probe) Simple() (l limit.All, ok bool) {
	if p.b.chain.timed {
		return l, true
	}
	var o [outs]float64
	if p.b.chain.travelling(&p.b.inputs, &o) != nil {
		return l, false
	}
	m := &p.field
	if !m.liquid.gap && !m.liquid.position && !m.wanted.openFillet() {
		m.simple(&o, nil, &l)
		return l, true
	}
	s, err := p.state(0, false)
	if err != nil {
		return l, false
	}
	l[limit.Bridges], l[limit.Stays] = m.liquid.edges(&s)
	m.simple(&o, &s, &l)
	return l, true
}

// Amps is the job's computed current, A; false where none is computed.
func (p *Probe) Amps() (float64, bool) {
	o, err := p.b.electric()
	return o[oAmps], err == nil && o[oAmps] > 0
}

// ZincBehind is the larger half-width, mm, over which zinc boils off a coated member's face away from the bead; 0 where
// none does or nothing is computed.
func (p *Probe) ZincBehind() float64 {
	s, err := p.state(0, true)
	if err != nil {
		return 0
	}
	widest := 0.0
	for i := range p.field.members {
		if p.field.coated[i] {
			widest = max(widest, known(s.boiledBack[i]))
		}
	}
	return widest
}

// SteadyFeeds are the feeds, m/min, between which a laid job's arc burns steadily; both are its own feed where that is
// not known.
func SteadyFeeds(job *Job) (low, high float64) {
	p, err := ProbeOf(context.Background(), job)
	if err != nil {
		return job.Feed.V, job.Feed.V
	}
	low, high = p.b.steadyFeeds()
	return low * 0.06, high * 0.06
}

// UsualVolts are the mode's volts at a laid job's current and the half-width of their 95 % interval, V; the job's own
// volts where none are computed.
func UsualVolts(job *Job) (volts, band float64) {
	open := *job
	open.Volts = Opt{}
	_, band = voltsOf(job.Mode)
	b, _, err := laidOut(nil, open)
	if err != nil {
		return job.Volts.V, band
	}
	o, err := b.electric()
	if err != nil {
		return job.Volts.V, band
	}
	return o[oVolts], band
}

// VoltEnds are the lowest and highest volts that a correction sets on a laid job: beyond them the wire stubs or burns
// back.
func VoltEnds(job *Job) (low, high float64) {
	usual, band := UsualVolts(job)
	return usual - voltReach*band, usual + voltReach*band
}

// MemberHeat is what a card's own setting does to a member: the peak of its skin, where its metal begins to melt, C,
// and how wide it is wetted, mm.
type MemberHeat struct{ Skin, Solid, Wet float64 }

// HeatOf is the heat of a card's own setting, member by member; false where no section is computed.
func HeatOf(card *Card) (m [2]MemberHeat, ok bool) {
	job := Laid(card)
	p, err := ProbeOf(context.Background(), &job)
	if err != nil || !p.b.chain.sectionModelled() {
		return m, false
	}
	s, err := p.state(0, false)
	for i := range m {
		m[i] = MemberHeat{s.skin[i], p.field.solid[i], s.wet[i]}
	}
	return m, err == nil
}
