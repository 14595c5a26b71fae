package book

import (
	"encoding/json"
	"fmt"
	"reflect"
	"slices"
	"strings"
	"unicode"

	"brazebooth/calc"
	"brazebooth/calc/practice"
	"brazebooth/internal/plain"
)

// Card is a saved settings card.
type Card struct {
	Name string   `json:"name"`
	Tags []string `json:"tags,omitempty"`
	Note string   `json:"note,omitempty"`
	Job  calc.Job `json:"job"`
	Card Kept     `json:"card"`
}

// Kept is an answer as it was shown: the figures with their bands and reasons, the notes, the cautions.
type Kept struct {
	Used    calc.Job          `json:"used"`
	Assumed []calc.Assumption `json:"assumed,omitempty"`
	Figures []Figure          `json:"figures"`
	Notes   []calc.Note       `json:"notes,omitempty"`
	Warns   []calc.Warning    `json:"warnings,omitempty"`
	Zone    string            `json:"zone,omitempty"`
}

// Figure is a figure with its reason in words.
type Figure struct {
	Name    string  `json:"name"`
	Value   float64 `json:"value"`
	Low     float64 `json:"low"`
	High    float64 `json:"high"`
	Unit    string  `json:"unit"`
	Formula string  `json:"formula,omitempty"`
	Source  string  `json:"source,omitempty"`
	Known   string  `json:"known,omitempty"`
}

// Keep is what is saved of a card.
func Keep(c *calc.Card) Kept {
	k := Kept{Used: c.Used, Assumed: c.Assumed, Notes: c.Notes, Warns: c.Warnings, Zone: c.Verdict()}
	for i := range c.Figures {
		f := &c.Figures[i]
		k.Figures = append(k.Figures, Figure{f.Name, f.Value, f.Low, f.High, f.Unit, f.Basis.Substituted(),
			f.Basis.Source, f.Basis.Known})
	}
	return k
}

// Trial is a test bead or a job's own: how it was laid, what was seen, what came of it.
type Trial struct {
	Card    string   `json:"card,omitempty"` // id of a saved card
	Job     calc.Job `json:"job"`
	Seen    string   `json:"seen,omitempty"` // ids of tables.Sights
	Verdict string   `json:"verdict"`        // good acceptable bad
	Peel    string   `json:"peel,omitempty"` // peel or bend result in the welder's words
	Photo   string   `json:"photo,omitempty"`
	Source  string   `json:"source,omitempty"` // power source's name
	Lot     string   `json:"lot,omitempty"`
	Note    string   `json:"note,omitempty"`
}

// Reading is what was measured while the arc ran. A reading that is withdrawn is deleted.
type Reading struct {
	Source    string  `json:"source"` // power source's name
	Filler    string  `json:"filler"`
	Wire      float64 `json:"wire"` // mm
	Mode      string  `json:"mode"`
	Lot       string  `json:"lot,omitempty"`
	Feed      float64 `json:"feed"`             // m/min
	StickOut  float64 `json:"stickout"`         // mm
	Amps      float64 `json:"amps,omitempty"`   // A
	Volts     float64 `json:"volts,omitempty"`  // V
	Travel    float64 `json:"travel,omitempty"` // mm/s
	Flow      float64 `json:"flow,omitempty"`   // L/min at the nozzle
	Confirmed bool    `json:"confirmed,omitempty"`
	Note      string  `json:"note,omitempty"`
}

// Source is a power source with its plate.
type Source struct {
	Name      string  `json:"name"`
	RatedAmps float64 `json:"rated_amps,omitempty"` // A at RatedDuty
	RatedDuty float64 `json:"rated_duty,omitempty"` // %
	LeastAmps float64 `json:"least_amps,omitempty"`
	MostAmps  float64 `json:"most_amps,omitempty"`
	Nozzle    float64 `json:"nozzle_bore,omitempty"` // mm
	Note      string  `json:"note,omitempty"`
}

// Spool is a spool of wire and what is left of it.
type Spool struct {
	Lot    string  `json:"lot"`
	Filler string  `json:"filler"`
	Wire   float64 `json:"wire"` // mm
	Full   float64 `json:"full"` // g as bought
	Left   float64 `json:"left"` // g
	Note   string  `json:"note,omitempty"`
}

// Person is a short name only.
type Person struct {
	Name string `json:"name"`
}

// Longest texts that are saved.
const (
	nameWidth = 60
	noteWidth = 2000
)

// Clean removes from every text what a terminal could obey, and cuts it to its length.
func (c *Card) Clean() {
	c.Name = plain.Line(c.Name, nameWidth)
	c.Note = plain.Line(c.Note, noteWidth)
	var tags []string
	for _, t := range c.Tags {
		if t = strings.ToLower(plain.Line(t, 24)); t != "" {
			tags = append(tags, t)
		}
	}
	c.Tags = tags
	c.Card.clean()
}

// clean is for a card from somebody else's book: its words are not this program's.
func (k *Kept) clean() {
	for i := range k.Assumed {
		a := &k.Assumed[i]
		a.Field, a.Value, a.Why = plain.Line(a.Field, 40), plain.Line(a.Value, 80), plain.Line(a.Why, 400)
	}
	for i := range k.Figures {
		f := &k.Figures[i]
		f.Name, f.Unit, f.Known = plain.Line(f.Name, 60), plain.Line(f.Unit, 20), plain.Line(f.Known, 40)
		f.Formula, f.Source = plain.Line(f.Formula, 400), plain.Line(f.Source, 400)
	}
	for i := range k.Notes {
		n := &k.Notes[i]
		n.Name, n.Text, n.Source, n.Known = plain.Line(n.Name, 40), plain.Line(n.Text, 400), plain.Line(n.Source,
			400), plain.Line(n.Known, 40)
	}
	for i := range k.Warns {
		w := &k.Warns[i]
		w.Code, w.Text, w.Basis = plain.Line(w.Code, 60), plain.Line(w.Text, 600), plain.Line(w.Basis, 400)
	}
	k.Zone = plain.Line(k.Zone, 20)
}

// Clean is as Card's.
func (t *Trial) Clean() {
	t.Peel, t.Note = plain.Line(t.Peel, noteWidth), plain.Line(t.Note, noteWidth)
	t.Photo, t.Source, t.Lot = plain.Line(t.Photo, 200), plain.Line(t.Source, nameWidth), plain.Line(t.Lot, nameWidth)
	t.Verdict, t.Seen = plain.Line(t.Verdict, 20), plain.Line(t.Seen, 200)
}

// Clean is as Card's.
func (r *Reading) Clean() {
	r.Source, r.Lot, r.Note = plain.Line(r.Source, nameWidth), plain.Line(r.Lot, nameWidth), plain.Line(r.Note, noteWidth)
}

// Clean is as Card's.
func (s *Source) Clean() {
	s.Name, s.Note = plain.Line(s.Name, nameWidth), plain.Line(s.Note, noteWidth)
}

// Clean is as Card's.
func (s *Spool) Clean() { s.Lot, s.Note = plain.Line(s.Lot, nameWidth), plain.Line(s.Note, noteWidth) }

// Clean is as Card's.
func (p *Person) Clean() { p.Name = plain.Line(p.Name, 24) }

// Body reads a revision's body. Every text in it is safe for a terminal, whoever wrote it.
func Body[T any](r *Revision) (T, error) {
	var v T
	err := json.Unmarshal(r.Body, &v)
	tame(reflect.ValueOf(&v).Elem())
	return v, err
}

// tame cleans every text of a value, at any depth.
func tame(v reflect.Value) {
	switch v.Kind() {
	case reflect.String:
		v.SetString(plain.Line(v.String(), noteWidth))
	case reflect.Struct:
		for i := range v.NumField() {
			if v.Type().Field(i).IsExported() {
				tame(v.Field(i))
			}
		}
	case reflect.Slice:
		for i := range v.Len() {
			tame(v.Index(i))
		}
	}
}

// listed is what a list shows of a card; its figures and reasons, which are most of the body, are not read.
type listed struct {
	Name string   `json:"name"`
	Tags []string `json:"tags"`
	Note string   `json:"note"`
	Card struct {
		Used  calc.Job `json:"used"`
		Warns []warned `json:"warnings"`
	} `json:"card"`
}

type warned struct {
	Severity calc.Severity `json:"severity"`
}

func (c *listed) summary() (name, line, text string) {
	line = jobLine(&c.Card.Used)
	for _, w := range c.Card.Warns {
		if w.Severity == calc.Stop {
			line = "STOP " + line
			break
		}
	}
	return summed(c.Name, line, strings.Join(c.Tags, " ")+" "+c.Note)
}

// listed is the same as reading the card's body back would give.
func (c *Card) listed() *listed {
	l := listed{Name: c.Name, Tags: slices.Clone(c.Tags), Note: c.Note}
	l.Card.Used = c.Card.Used
	for i := range c.Card.Warns {
		if c.Card.Warns[i].Severity == calc.Stop {
			l.Card.Warns = append(l.Card.Warns, warned{calc.Stop})
		}
	}
	tame(reflect.ValueOf(&l).Elem())
	return &l
}

// summary is a record's name, its line in lists, and the text that is searched; all safe for a terminal whatever the
// body holds.
func summary(r *Revision) (name, line, text string) {
	switch r.Kind {
	case CardKind:
		c, err := Body[listed](r)
		if err != nil {
			break
		}
		return c.summary()
	case TrialKind:
		t, _ := Body[Trial](r)
		name, line, text = t.Verdict, strings.TrimPrefix(strings.TrimSpace(t.Seen+" "+t.Peel)+", "+t.Line(),
			", "), t.Note+" "+t.Source+" "+t.Card
	case ReadingKind:
		d, _ := Body[Reading](r)
		name, line, text = d.Source, d.Filler+" "+d.Mode, d.Lot+" "+d.Note
	case SourceKind:
		s, _ := Body[Source](r)
		name, line = s.Name, s.Note
	case SpoolKind:
		s, _ := Body[Spool](r)
		name, line = s.Lot, strings.TrimSpace(fmt.Sprintf("%s %smm, %.0f of %.0f g left %s", s.Filler, short(s.Wire),
			s.Left, s.Full, s.Note))
	case PersonKind:
		p, _ := Body[Person](r)
		name = p.Name
	case PracticeKind:
		p, _ := Body[practice.Outcome](r)
		name, line = fmt.Sprintf("level %d seed %d", p.Level, p.Seed), p.Short()
	}
	return summed(name, line, text)
}

func summed(name, line, text string) (string, string, string) {
	name, line = plain.Line(name, nameWidth), plain.Line(line, 200)
	return name, line, name + " " + line + " " + text
}

// Line is the card's job in a few words.
func (c *Card) Line() string { return plain.Line(jobLine(&c.Card.Used), 200) }

// Line is how the bead was laid, in a few words.
func (t *Trial) Line() string {
	j := &t.Job
	parts := []string{jobLine(j)}
	for _, s := range [...]struct {
		o    calc.Opt
		unit string
	}{{j.Feed, "m/min"}, {j.Volts, "V"}, {j.Travel, "mm/s"}, {j.StickOut, "mm stick-out"}} {
		if s.o.Set {
			parts = append(parts, short(s.o.V)+" "+s.unit)
		}
	}
	return plain.Line(strings.Join(parts, ", "), 200)
}

// jobLine is a job in a few words.
func jobLine(j *calc.Job) string {
	size := ""
	switch {
	case j.Gauge != 0:
		size = itoa(j.Gauge) + "ga"
	case j.Thickness.Set:
		size = short(j.Thickness.V) + "mm"
	}
	parts := []string{j.Metal, size, j.Joint}
	if j.Metal2 != "" && j.Metal2 != j.Metal {
		parts = append(parts, "on "+j.Metal2)
	}
	parts = append(parts, j.Filler, short(j.Wire.V)+"mm", j.Mode)
	return strings.Join(strings.Fields(strings.Join(parts, " ")), " ")
}

// words are the words by which a record is found: each once, lower case.
func words(text string) []string {
	seen := map[string]bool{}
	var list []string
	for _, w := range strings.FieldsFunc(strings.ToLower(text), func(r rune) bool {
		return !unicode.IsLetter(r) && !unicode.IsDigit(r) && r != '.' && r != '-'
	}) {
		w = strings.Trim(w, ".-")
		if w == "" || seen[w] || len(list) >= 64 {
			continue
		}
		if r := []rune(w); len(r) > 32 {
			w = string(r[:32])
		}
		seen[w] = true
		list = append(list, w)
	}
	return list
}
