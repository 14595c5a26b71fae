package report

import (
	"strings"

	"brazebooth/calc"
	"brazebooth/calc/advice"
	"brazebooth/calc/practice"
)

// practiceDocument is a practice job as JSON, version 1: docs/practice-schema.json.
type practiceDocument struct {
	Schema   int            `json:"schema"`
	Version  string         `json:"version"`
	Level    int            `json:"level"`
	Seed     uint64         `json:"seed"`
	Work     string         `json:"work"`
	Job      calc.Job       `json:"job"` // with the setting of the first bead
	Beads    []practiceBead `json:"beads"`
	Solution *solution      `json:"solution,omitempty"`
	Warnings []calc.Warning `json:"warnings"`
}

type practiceBead struct {
	Setting calc.Job       `json:"setting"` // only what a hand sets
	Verdict string         `json:"verdict"`
	Seen    []string       `json:"seen"`
	Meter   []figure       `json:"meter"`
	Section *calc.Section  `json:"section,omitempty"`
	Unmet   []string       `json:"unmet,omitempty"` // of a job that is over
	Change  *advice.Change `json:"change,omitempty"`
	Do      string         `json:"do,omitempty"` // where no setting was to be changed
	Why     string         `json:"why,omitempty"`
}

type solution struct {
	Good   bool           `json:"good"`
	Why    string         `json:"why"`
	Beads  []practiceBead `json:"beads"`
	Best   calc.Job       `json:"best"`
	Hidden []hidden       `json:"hidden"`
	Moved  []moved        `json:"moved"`
}

type hidden struct {
	Card figure  `json:"card"`
	True float64 `json:"true"`
}

type moved struct {
	Card  figure             `json:"card"`
	Alone map[string]float64 `json:"alone"` // with one hidden value alone; 0 where the bead has none
	True  float64            `json:"true"`
}

// PracticeJSON writes a practice job as one JSON document.
func PracticeJSON(p *Practice, version string) ([]byte, error) {
	d := practiceDocument{Schema: Schema, Version: version, Level: p.Job.Level, Seed: p.Job.Seed, Work: p.Job.Work, Job: p.Job.Start,
		Beads: []practiceBead{}, Warnings: []calc.Warning{practice.Caution}}
	for i := range p.Beads {
		d.Beads = append(d.Beads, beadOf(&p.Beads[i], p.Run != nil))
	}
	if p.Run != nil && p.Revealed != nil {
		d.Solution = solutionOf(p)
	}
	return encode(d)
}

// beadOf is a bead; which edges it misses is told of a job that is over.
func beadOf(b *practice.Bead, over bool) practiceBead {
	out := practiceBead{Setting: settingOf(&b.Job), Verdict: b.Verdict, Seen: strings.Split(b.Seen, ","), Meter: figuresOf(b.Meter)}
	if b.Section.Drawn {
		out.Section = &b.Section
	}
	if over {
		out.Unmet = b.Unmet
	}
	return out
}

func settingOf(j *calc.Job) calc.Job {
	return calc.Job{Feed: j.Feed, Volts: j.Volts, Travel: j.Travel, StickOut: j.StickOut, ArcOn: j.ArcOn, ArcOff: j.ArcOff}
}

func solutionOf(p *Practice) *solution {
	s := &solution{Good: p.Run.Good, Why: p.Run.Why, Beads: []practiceBead{}, Best: settingOf(&p.Job.Best)}
	for i := range p.Run.Steps {
		step := &p.Run.Steps[i]
		b := beadOf(&step.Bead, true)
		b.Change, b.Do, b.Why = step.Change, step.Do, step.Why
		s.Beads = append(s.Beads, b)
	}
	names := [3]string{}
	for i := range p.Revealed.Hidden {
		h := &p.Revealed.Hidden[i]
		names[i] = h.Name
		s.Hidden = append(s.Hidden, hidden{figureOf(&h.Figure), h.True})
	}
	for i := range p.Revealed.Moved {
		m := &p.Revealed.Moved[i]
		alone := map[string]float64{}
		for k, v := range m.Alone {
			alone[names[k]] = v
		}
		s.Moved = append(s.Moved, moved{figureOf(&m.Figure), alone, m.True})
	}
	return s
}

func figureOf(f *calc.Figure) figure {
	return figure{f.Name, f.Value, f.Low, f.High, f.Unit, basisOf(&f.Basis)}
}
