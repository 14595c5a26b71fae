package calc

import (
	"cmp"
	"math"

	"brazebooth/calc/limit"
	"brazebooth/tables"
)

// Card is what was found for a Job. Every number on it carries its 95 % interval and its basis, so that a screen, a
// text or a PDF can answer "why this number?" without computing again.
type Card struct {
	Job Job // as it was given
	// Used is the job with every assumption filled in: Solve(Used) gives the same values. But assumptions then count as
	// given, a stick-out above all, so that bands get narrower and the chance changes.
	Used    Job
	Assumed []Assumption // what Used holds that Job did not, in the order a welder would check it

	Setup    Setup     // the table rows that Used names
	Figures  []Figure  // in the order a welder needs them: settings first
	Notes    []Note    // settings that are words: polarity, gun angle, inductance
	Warnings []Warning // stops first, then cautions, then information
	Zone     string    // by heat alone: "", cold good hot burn-through not-modelled; Verdict counts the rest
	Edges    []Edge
	Unjudged []Unjudged // edges that the job asks for and this setting is not judged by
	Chance   Chance     // that every edge is met; zero where nothing is modelled
	Section  Section    // what a picture of the joint needs; not Drawn where it is not modelled
}

// Section is the joint's cross-section with its bead, mm and rad. Index 0 is the first member.
type Section struct {
	Drawn      bool       `json:"-"`
	Joint      string     `json:"joint"`
	Thick      [2]float64 `json:"thickness"`
	Gap        float64    `json:"gap"`
	Wet        [2]float64 `json:"wetted_width"`
	Phi        float64    `json:"phi"`         // between chord and surface; negative is concave
	Root       float64    `json:"-"`           // how deep bronze gets into a butt's open root, mm
	Backing    float64    `json:"-"`           // how much of a bar or strip behind the root is drawn, mm; 0 for none
	Boiled     [2]float64 `json:"zinc_boiled"` // from the joint outward on the bead's face; 0 without zinc
	Melted     [2]float64 `json:"zinc_melted"`
	BoiledBack [2]float64 `json:"zinc_boiled_back"` // on the other face
	MeltedBack [2]float64 `json:"zinc_melted_back"`
}

// Setup holds the rows of tables/ that a card was computed from.
type Setup struct {
	Members [2]Member
	One     bool // a joint with one member only (overlay)
	Filler  tables.Filler
	Gas     tables.Gas
}

// Member is one of the pieces that the joint joins.
type Member struct {
	Metal     tables.Metal
	Coating   tables.Coating
	Gauge     int     // 0 where a thickness was given
	Thickness float64 // as bought, coating included, mm
	Core      float64 // metal alone: what carries the heat, mm
}

// Assumption is one value that was not given.
type Assumption struct {
	Field string `json:"field"` // the Job's JSON name
	Value string `json:"value"` // as a user types it
	Why   string `json:"why"`
}

// Figure is one number with its 95 % interval, unit and basis.
type Figure struct {
	Name  string  `json:"name"` // JSON name: wire_feed, current ...; "_2" ends a second member's
	Value float64 `json:"value"`
	Low   float64 `json:"low"`
	High  float64 `json:"high"`
	Unit  string  `json:"unit"` // "m/min", "A", "mm2" ...
	Basis Basis   `json:"basis"`
}

// Suggested reports whether the figure is a setting that the program chose. Its range is then no uncertainty: it tells
// how far the setting may go, all else the same, before an edge is reached.
func (f *Figure) Suggested() bool { return f.Basis.Formula == suggestFormula && f.Low < f.High }

// Usual reports whether the figure is a setting that the program chose where it cannot judge settings: its range is
// what is usual, not what was found good.
func (f *Figure) Usual() bool { return f.Basis.Formula == usualFormula && f.Low < f.High }

// Missed reports whether the figure is a setting that the program chose where no open setting meets every edge: the
// nearest miss, not a suggestion.
func (f *Figure) Missed() bool { return f.Basis.Formula == missFormula }

// Basis is the reason for a figure. Formula marks each symbol with braces: "{a}·{b}".
type Basis struct {
	Formula string
	Inputs  []Input // the formula's symbols first, then what they rest on, strongest first
	Source  string
	Known   string // a tables.Known, or "given" for a value that the user gave, or "own computation"
}

// Input is one number that a figure rests on.
type Input struct {
	Name    string  `json:"name"`
	Symbol  string  `json:"symbol,omitempty"` // as it stands in the formula, "" where it does not
	Value   float64 `json:"value"`
	Unit    string  `json:"unit"`
	Assumed bool    `json:"assumed"` // not given by the user, and not a table's figure
	Derived bool    `json:"-"`       // computed on this card from inputs that are in the list themselves
	// Sensitivity is the figure's change in per cent of its value when this input alone moves to the end of its own
	// 95 % interval; the larger of the two sides, signed for an increase of the input.
	Sensitivity float64 `json:"sensitivity"`
}

// Note is a setting that is a word: name "polarity", "gun angle", "inductance".
type Note struct {
	Name   string `json:"name"`
	Text   string `json:"text"`
	Source string `json:"source"`
	Known  string `json:"known"`
}

// Severity of a warning.
type Severity string

// The three severities.
const (
	Info    Severity = "info"
	Caution Severity = "caution"
	Stop    Severity = "stop"
)

// Warning is one line that a welder must not miss; Code is stable, Text says what to do, then why.
type Warning struct {
	Code     string   `json:"code"`
	Severity Severity `json:"severity"`
	Text     string   `json:"text"`
	Basis    string   `json:"basis"`
}

// Edge is one border of the operating window.
type Edge struct {
	Name   string  `json:"name"`
	Margin float64 `json:"margin"` // smallest relative change of feed or travel that reaches it, %
	Met    bool    `json:"met"`
	Basis  Basis   `json:"basis"`
}

// Unjudged is an edge that a setting is not judged by although its job asks for it.
type Unjudged struct {
	Name string `json:"name"`
	Why  string `json:"why"` // a clause, with what to try
}

// Figure returns the named figure.
func (c *Card) Figure(name string) (Figure, bool) {
	return FigureNamed(c.Figures, name)
}

// FigureNamed finds a figure of a list by its JSON name.
func FigureNamed(list []Figure, name string) (Figure, bool) {
	for i := range list {
		if list[i].Name == name {
			return list[i], true
		}
	}
	return Figure{}, false
}

// Verdict is the card's judgement of the setting in a word: "stop" where the job must not be done; "outside" where the
// heat is good and another edge is not met or the parts are too warm; "marginal" where every edge is met but that is
// less likely than not; else the zone. "good" is every edge met, by more than luck. All judgements of a card use this
// one.
func (c *Card) Verdict() string {
	chance, judged := c.Figure("chance")
	switch {
	case c.Stopped():
		return "stop"
	case c.Zone == "good" && (!c.Met() || c.TooHotParts() != ""):
		return "outside"
	case c.Zone == "good" && judged && chance.Value < tables.MarginalUnder.V:
		return "marginal"
	}
	return c.Zone
}

// AboutEven reports whether the chance is so near to even that the model cannot tell “good” from “marginal”.
func (c *Card) AboutEven() bool {
	chance, judged := c.Figure("chance")
	return judged && c.Met() && !c.Stopped() && math.Abs(chance.Value-tables.MarginalUnder.V) <= chanceError
}

// Met reports whether the setting meets every edge, however likely that is and whatever else stops the job.
func (c *Card) Met() bool {
	e := c.DecidingEdge()
	return c.Zone == "good" && (e == nil || e.Met)
}

// TooHotParts is the text of the warning against a preheat that the parts must not have, "" for none.
func (c *Card) TooHotParts() string { return cmp.Or(c.Said(PreheatSoftens), c.Said(ZincWarmed)) }

// Stopped reports whether a warning stops the job.
func (c *Card) Stopped() bool { return len(Stops(c.Warnings)) > 0 }

// Stops are the warnings of a list that stop the job.
func Stops(list []Warning) []Warning {
	var out []Warning
	for _, w := range list {
		if w.Severity == Stop {
			out = append(out, w)
		}
	}
	return out
}

// zoneEdge is the edge that a zone other than good is named for.
var zoneEdge = map[string]string{"cold": limit.Wets.Edge(), "hot": limit.Solid.Edge(),
	"burn-through": limit.Burn.Edge()}

// DecidingEdge is the edge to show where there is room for one: the edge that the zone is named for; else the one that
// is missed by most; else the nearest of all, which are met. Nil where none is modelled.
func (c *Card) DecidingEdge() *Edge {
	var deciding *Edge
	for i := range c.Edges {
		e := &c.Edges[i]
		if !e.Met && e.Name == zoneEdge[c.Zone] {
			return e
		}
		if deciding == nil || e.inside() < deciding.inside() {
			deciding = e
		}
	}
	return deciding
}

// inside is the distance to an edge in %, below zero where it is missed.
func (e *Edge) inside() float64 {
	if e.Met {
		return e.Margin
	}
	return -e.Margin
}
