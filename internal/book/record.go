package book

import (
	"encoding/json"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"brazebooth/calc"
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

// Keep is the part of a card that is saved.
func Keep(c *calc.Card) Kept {
	k := Kept{Used: c.Used, Assumed: c.Assumed, Notes: c.Notes, Warns: c.Warnings, Zone: c.Verdict()}
	for i := range c.Figures {
		f := &c.Figures[i]
		k.Figures = append(k.Figures, Figure{f.Name, f.Value, f.Low, f.High, f.Unit, f.Basis.Substituted(),
			f.Basis.Source, f.Basis.Known})
	}
	return k
}

// Trial is a test bead or a bead of a real job: how it was laid, what was seen, and the verdict.
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

// Measured are the sizes of a bead that was cut across, mm; 0 if not measured.
type Measured struct {
	Width  float64 `json:"width,omitempty"`  // from toe to toe
	Leg    float64 `json:"leg,omitempty"`    // from the joint to the toe on the second member
	Throat float64 `json:"throat,omitempty"` // the least that carries load
	Zinc   float64 `json:"zinc,omitempty"`   // from the joint to the first zinc that is left on the first member
}

// Reading is what was measured while the arc ran. Withdrawing a reading deletes it.
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
	// Positions of the power source's dials, by their own marks.
	FeedDial  calc.Opt `json:"feed_dial,omitzero"`
	VoltsDial calc.Opt `json:"volts_dial,omitzero"`
	Confirmed bool     `json:"confirmed,omitempty"`
	Note      string   `json:"note,omitempty" cut:"2000"`
	Pull      Pulled   `json:"pull,omitzero"` // of a pulled piece, which was measured without an arc
}

// Pulled is a test piece of the shop that was pulled until it broke. It is stored as a reading without amps, so that an
// older program, which does not know such pieces, learns nothing from it.
type Pulled struct {
	For    string  `json:"for" cut:"200"`    // its joint, filler and members, by calc.PulledKey
	Length float64 `json:"length"`           // of the seam, mm
	Throat float64 `json:"throat,omitempty"` // mm, if it was measured
	Force  float64 `json:"force"`            // kN at which it broke
	Broke  string  `json:"broke" cut:"20"`   // sheet bronze bond
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

// Spool is a spool of wire and how much is left on it.
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

// The longest texts, in columns. A text is cut when it is typed and again when it is read, since another program may
// have saved it: to the width in its field's tag "cut", or to usualWidth.
const (
	nameWidth  = 60
	lineWidth  = 200
	usualWidth = 600 // more than any text that this program writes
)

// Clean removes control characters from every text, and cuts it to its longest width.
func Clean[T any](v *T) { tame(reflect.ValueOf(v).Elem(), usualWidth) }

// Clean is like the function Clean, and also makes tags lower case.
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
