package report

import (
	"bytes"
	"encoding/csv"
	"math"
	"strconv"
	"strings"

	"brazebooth/calc"
	"brazebooth/calc/advice"
	"brazebooth/calc/practice"
)

// documented is a block that makes the whole document. A window, a timed arc and a practice job have their own JSON,
// described in docs/window-schema.json, docs/gap-schema.json and docs/practice-schema.json.
type documented interface{ document(s stamp) any }

type windowDocument struct {
	stamp
	Job  calc.Job `json:"job"`
	Axes struct {
		Feed   []float64 `json:"wire_feed"` // m/min
		Travel []float64 `json:"travel"`    // mm/s
	} `json:"axes"`
	Zones      []string        `json:"zones"`   // one row of travels for each feed
	Margins    []float64       `json:"margins"` // %
	Coarser    bool            `json:"coarser,omitempty"`
	Suggestion calc.Suggestion `json:"suggestion"`
	Given      *givenSetting   `json:"given,omitempty"`
	Good       bool            `json:"good"`
	Edges      []edge          `json:"edges"` // of the suggestion
	Unjudged   []calc.Unjudged `json:"not_judged,omitempty"`
	calc.Chance
	Remedies []calc.Remedy `json:"remedies"`
}

// givenSetting is the setting that was asked about, as JSON.
type givenSetting struct {
	Feed     float64         `json:"wire_feed"` // m/min
	Travel   float64         `json:"travel"`    // mm/s
	Zone     string          `json:"zone"`
	Verdict  string          `json:"verdict"`
	Edges    []edge          `json:"edges"`
	Unjudged []calc.Unjudged `json:"not_judged,omitempty"`
}

func (g Grid) document(s stamp) any {
	m := g.Window
	d := windowDocument{stamp: s, Job: m.Job, Zones: m.Zones, Coarser: m.Coarser,
		Suggestion: m.Suggestion,
		Good:       m.Good, Edges: each(m.Card.Edges, edgeOf), Unjudged: m.Card.Unjudged, Chance: m.Chance,
		Remedies: OrEmpty(m.Remedies),
		Margins:  each(m.Margins, func(v *float64) float64 { return math.Round(*v*10) / 10 })}
	d.Axes.Feed, d.Axes.Travel = m.Feeds, m.Travels
	if c := g.Given; c != nil {
		d.Given = &givenSetting{c.Used.Feed.V, c.Used.Travel.V, c.Zone, c.Verdict(), each(c.Edges, edgeOf),
			c.Unjudged}
	}
	return d
}

type timedDocument struct {
	stamp
	Job      calc.Job          `json:"job"`
	Used     calc.Job          `json:"used"`
	Good     bool              `json:"good"`
	Reason   string            `json:"reason"`
	Why      string            `json:"why"`
	Zone     string            `json:"zone"`
	Figures  []figure          `json:"figures"`
	Limits   []calc.RangeLimit `json:"limits"`
	Spots    int               `json:"spots"`
	Seam     float64           `json:"seam"` // mm
	Wider    *calc.Wider       `json:"wider,omitempty"`
	Remedies []calc.Remedy     `json:"remedies"`
	Warnings []calc.Warning    `json:"warnings"`
}

func (b Beat) document(s stamp) any {
	return timedDocument{s, b.Job, b.Card.Used, b.Good, b.Reason, b.Why, b.Card.Zone, each(b.Figures, figureOf),
		OrEmpty(b.Limits), b.Count, b.Seam, b.Wider, OrEmpty(b.Remedies), OrEmpty(b.Card.Warnings)}
}

// TraceCSV writes the heat trace of a timed arc, one line for each moment: time in s, arc 1 or 0, temperatures in C.
func TraceCSV(s *calc.Timed) ([]byte, error) {
	var out bytes.Buffer
	rows := [][]string{{"time_s", "arc", "root_edge_C", "centre_C", "back_face_C"}}
	for _, p := range s.Trace {
		row := []string{strconv.FormatFloat(p.Time, 'f', 4, 64), "0"}
		if p.On {
			row[1] = "1"
		}
		for _, v := range [...]float64{p.Edge, p.Centre, p.Back} {
			row = append(row, strconv.FormatFloat(v, 'f', 1, 64))
		}
		rows = append(rows, row)
	}
	err := csv.NewWriter(&out).WriteAll(rows)
	return out.Bytes(), err
}

type practiceDocument struct {
	stamp
	Level    int            `json:"level"`
	Seed     uint64         `json:"seed"`
	Work     string         `json:"work"`
	Job      calc.Job       `json:"job"` // with the setting of the first bead
	Beads    []practiceBead `json:"beads"`
	Solution *solution      `json:"solution,omitempty"`
	Warnings []calc.Warning `json:"warnings"`
}

type practiceBead struct {
	Setting calc.Job       `json:"setting"` // only the settings that are made by hand
	Verdict string         `json:"verdict"`
	Seen    []string       `json:"seen"`
	Meter   []figure       `json:"meter"`
	Section *calc.Section  `json:"section,omitempty"`
	Unmet   []string       `json:"unmet,omitempty"` // only of a job that is over
	Change  *advice.Change `json:"change,omitempty"`
	Do      string         `json:"do,omitempty"` // if no setting was to be changed
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
	Alone map[string]float64 `json:"alone"` // with one hidden value alone; 0 if the bead has no such figure
	True  float64            `json:"true"`
}

func (p *Practice) document(s stamp) any {
	d := practiceDocument{stamp: s, Level: p.Job.Level, Seed: p.Job.Seed, Work: p.Job.Work, Job: p.Job.Start,
		Beads: each(p.Beads, beadOf), Warnings: []calc.Warning{practice.Caution}}
	if p.Run == nil { // missed edges are shown only when the job is over
		for i := range d.Beads {
			d.Beads[i].Unmet = nil
		}
		return d
	}
	d.Solution = &solution{Good: p.Run.Good, Why: p.Run.Why, Beads: each(p.Run.Steps, stepOf),
		Best: settingOf(&p.Job.Best)}
	for _, h := range p.Revealed.Hidden {
		d.Solution.Hidden = append(d.Solution.Hidden, hidden{figureOf(&h.Figure), h.True})
	}
	for _, m := range p.Revealed.Moved {
		alone := map[string]float64{}
		for k, v := range m.Alone {
			alone[p.Revealed.Hidden[k].Name] = v
		}
		d.Solution.Moved = append(d.Solution.Moved, moved{figureOf(&m.Figure), alone, m.True})
	}
	return d
}

func beadOf(b *practice.Bead) practiceBead {
	out := practiceBead{Setting: settingOf(&b.Job), Verdict: b.Verdict, Seen: strings.Split(b.Seen, ","),
		Meter: each(b.Meter, figureOf), Unmet: b.Unmet}
	if b.Section.Drawn {
		out.Section = &b.Section
	}
	return out
}

func stepOf(s *practice.RunStep) practiceBead {
	b := beadOf(&s.Bead)
	b.Change, b.Do, b.Why = s.Change, s.Do, s.Why
	return b
}

func settingOf(j *calc.Job) calc.Job {
	return calc.Job{Feed: j.Feed, Volts: j.Volts, Travel: j.Travel, StickOut: j.StickOut, ArcOn: j.ArcOn,
		ArcOff: j.ArcOff}
}
