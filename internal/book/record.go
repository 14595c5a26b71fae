package book

import (
	"encoding/json"
	"fmt"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"brazebooth/calc"
	"brazebooth/calc/practice"
	"brazebooth/internal/plain"
)

// Card is a saved settings card.
type Card struct {
	Name string   `json:"name" cut:"60"`
	Tags []string `json:"tags,omitempty" cut:"24"`
	Note string   `json:"note,omitempty" cut:"2000"`
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
	Zone    string            `json:"zone,omitempty" cut:"20"`
}

// Figure is a figure with its reason in words.
type Figure struct {
	Name    string  `json:"name" cut:"60"`
	Value   float64 `json:"value"`
	Low     float64 `json:"low"`
	High    float64 `json:"high"`
	Unit    string  `json:"unit" cut:"20"`
	Formula string  `json:"formula,omitempty" cut:"400"`
	Source  string  `json:"source,omitempty" cut:"400"`
	Known   string  `json:"known,omitempty" cut:"40"`
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
	Seen    string   `json:"seen,omitempty" cut:"200"`  // ids of tables.Sights
	Verdict string   `json:"verdict" cut:"60"`          // good acceptable bad
	Peel    string   `json:"peel,omitempty" cut:"2000"` // peel or bend result in the welder's words
	Photo   string   `json:"photo,omitempty" cut:"200"`
	Source  string   `json:"source,omitempty" cut:"60"` // power source's name
	Lot     string   `json:"lot,omitempty" cut:"60"`
	Note    string   `json:"note,omitempty" cut:"2000"`

	Measured Measured `json:"measured,omitzero"`
}

// Measured is what a bead that was cut across measured, mm; 0 where it was not.
type Measured struct {
	Width  float64 `json:"width,omitempty"`  // from toe to toe
	Leg    float64 `json:"leg,omitempty"`    // from the joint to the toe on the second member
	Throat float64 `json:"throat,omitempty"` // the least that carries load
	Zinc   float64 `json:"zinc,omitempty"`   // from the joint to where the first member's zinc is left
}

// Reading is what was measured while the arc ran. A reading that is withdrawn is deleted.
type Reading struct {
	Source   string  `json:"source" cut:"60"` // power source's name
	Filler   string  `json:"filler"`
	Wire     float64 `json:"wire"` // mm
	Mode     string  `json:"mode"`
	Lot      string  `json:"lot,omitempty" cut:"60"`
	Feed     float64 `json:"feed,omitzero"`     // m/min
	StickOut float64 `json:"stickout,omitzero"` // mm
	Amps     float64 `json:"amps,omitempty"`    // A
	Volts    float64 `json:"volts,omitempty"`   // V
	Travel   float64 `json:"travel,omitempty"`  // mm/s
	Flow     float64 `json:"flow,omitempty"`    // L/min at the nozzle
	// Where the power source's dials stood, by their own marks.
	FeedDial  calc.Opt `json:"feed_dial,omitzero"`
	VoltsDial calc.Opt `json:"volts_dial,omitzero"`
	Confirmed bool     `json:"confirmed,omitempty"`
	Note      string   `json:"note,omitempty" cut:"2000"`
	Pull      Pulled   `json:"pull,omitzero"` // of a pulled piece, which was measured without an arc
}

// Source is a power source with its plate.
type Source struct {
	Name      string  `json:"name" cut:"60"`
	RatedAmps float64 `json:"rated_amps,omitempty"` // A at RatedDuty
	RatedDuty float64 `json:"rated_duty,omitempty"` // %
	LeastAmps float64 `json:"least_amps,omitempty"`
	MostAmps  float64 `json:"most_amps,omitempty"`
	Nozzle    float64 `json:"nozzle_bore,omitempty"` // mm
	Note      string  `json:"note,omitempty" cut:"2000"`
}

// Spool is a spool of wire and what is left of it.
type Spool struct {
	Lot    string  `json:"lot" cut:"60"`
	Filler string  `json:"filler"`
	Wire   float64 `json:"wire"` // mm
	Full   float64 `json:"full"` // g as bought
	Left   float64 `json:"left"` // g
	Note   string  `json:"note,omitempty" cut:"2000"`
}

// Person is a short name only.
type Person struct {
	Name string `json:"name" cut:"60"`
}

// Longest texts, in columns. A text is cut where it is typed and again where it is read, since another program may have
// saved it: to the width that its field's tag cut says, or else to usualWidth.
const (
	nameWidth  = 60
	noteWidth  = 2000
	lineWidth  = 200
	usualWidth = 600 // more than any text of this program's own
)

// Clean removes from every text what a terminal could obey, and cuts it to its length.
func Clean[T any](v *T) { tame(reflect.ValueOf(v).Elem(), usualWidth) }

// Clean is like the function, and makes tags lower case.
func (c *Card) Clean() {
	Clean(c)
	for i, tag := range c.Tags {
		c.Tags[i] = strings.ToLower(tag)
	}
	c.Tags = slices.DeleteFunc(c.Tags, func(tag string) bool { return tag == "" })
}

// Body reads a revision's body. Every text in it is safe for a terminal, whoever wrote it.
func Body[T any](r *Revision) (T, error) {
	var v T
	err := json.Unmarshal(r.Body, &v)
	Clean(&v)
	return v, err
}

// tame cleans every text of a value, at any depth.
func tame(v reflect.Value, width int) {
	switch v.Kind() {
	case reflect.String:
		v.SetString(plain.Line(v.String(), width))
	case reflect.Struct:
		for i := range v.NumField() {
			f, own := v.Field(i), usualWidth
			if !f.CanSet() {
				continue
			}
			if k := f.Kind(); k == reflect.String || k == reflect.Slice {
				if n, err := strconv.Atoi(v.Type().Field(i).Tag.Get("cut")); err == nil {
					own = n
				}
			}
			tame(f, own)
		}
	case reflect.Slice:
		for i := range v.Len() {
			tame(v.Index(i), width)
		}
	}
}

// listed is what a list shows of a card; its figures and reasons, which are most of the body, are not read.
type listed struct {
	Name string   `json:"name"`
	Tags []string `json:"tags" cut:"24"`
	Note string   `json:"note" cut:"2000"`
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
		if p := &d.Pull; p.Force > 0 {
			line = fmt.Sprintf("pulled: %s kN on %s mm, broke in the %s; %s", short(p.Force), short(p.Length),
				p.Broke, p.For)
		}
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
	name, line = plain.Line(name, nameWidth), plain.Line(line, lineWidth)
	return name, line, name + " " + line + " " + text
}

// Line is the card's job in a few words.
func (c *Card) Line() string { return plain.Line(jobLine(&c.Card.Used), lineWidth) }

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
	return plain.Line(strings.Join(parts, ", "), lineWidth)
}

// jobLine is a job in a few words.
func jobLine(j *calc.Job) string {
	size := ""
	switch {
	case j.Gauge != 0:
		size = strconv.Itoa(j.Gauge) + "ga"
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

// short is a number in the few digits that a list needs.
func short(v float64) string { return strconv.FormatFloat(v, 'g', 3, 64) }

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
