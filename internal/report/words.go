package report

import (
	"fmt"
	"strings"

	"brazebooth/calc"
	"brazebooth/calc/advice"
	"brazebooth/internal/quantity"
	"brazebooth/tables"
)

// Line is one thing said, in words that are the same in every medium.
type Line struct {
	Kind          Kind
	Lead          string // what it is about, before the text: a topic, a note's name, an edge, what is assumed
	Text          string
	Known, Source string
	Row           *Row  // of a figure
	Of            Block // of a picture
	N             int   // of a rank, from 1; of an edge 1 where it stands under a zone
	Bad           bool  // an edge is not met, a filler is ruled out
}

// Kind is what a line is. Each medium has a sign of its own for each.
type Kind int

// The kinds of lines.
const (
	Plain   Kind = iota
	Gap          // between blocks
	Subject      // what the finding is for
	Title
	Stop
	Caution
	Note
	VerdictIs
	Instead
	Change
	Rank
	For
	Against
	FigureRow
	Formula
	PutIn
	Source
	LeansOn
	RestsOn // what the figures before it go by, which nobody gave
	Turns
	Topic
	Reason
	Zone
	Edge
	Setting // a note
	Assume
	CheckFirst
	MayGive
	Heading  // over a list
	Sentence // what an answer comes to
	Limit
	Remedy
	Picture
)

// Words are blocks in words. Between two blocks that say something stands a Gap.
func Words(blocks []Block, o Options) []Line {
	var list []Line
	for _, b := range blocks {
		if o.Beside && onCard(b) {
			continue
		}
		said := b.words(o)
		if len(said) == 0 {
			continue
		}
		if n := len(list); n > 0 && list[n-1].Kind != Title {
			list = append(list, Line{Kind: Gap})
		}
		list = append(list, said...)
	}
	return list
}

// onCard reports a block that the card has itself.
func onCard(b Block) bool {
	switch b := b.(type) {
	case Head, Assumed, Decides:
		return true
	case Cautions:
		return b.OnCard
	}
	return false
}

func (h Head) words(o Options) []Line {
	c, wire := h.Card, "wire "+wireText(h.Card.Used.Wire.V)
	if h.WireOnly {
		return []Line{{Kind: Subject, Text: c.Setup.Filler.Name + ", " + wire}}
	}
	u := &c.Used
	list := []Line{{Kind: Subject, Lead: "Settings card", Text: memberText(c, 0, o) + ", " + jointText(c, o)}}
	if !c.Setup.One {
		list = append(list, Line{Kind: Subject, Text: "onto " + memberText(c, 1, o)})
	}
	with := []string{c.Setup.Filler.Name, wire, u.Mode, c.Setup.Gas.Name, u.Position}
	return append(list, Line{Kind: Subject, Text: strings.Join(with, ", ")})
}

func memberText(card *calc.Card, i int, o Options) string {
	m := &card.Setup.Members[i]
	size := quantity.Show(m.Thickness, "mm", o.Units)
	if m.Gauge != 0 {
		size = fmt.Sprintf("%d ga %s, %s", m.Gauge, m.Metal.System, size)
	}
	coat := ""
	if m.Coating.ID != "none" {
		coat = " " + m.Coating.ID
		if o.Heard {
			coat = ", coat " + m.Coating.ID
		}
	}
	return m.Metal.ID + " " + size + coat
}

// wireText names a wire as its spool does, with its diameter.
func wireText(mm float64) string {
	w, ok := tables.WireNear(mm)
	switch {
	case !ok:
		return quantity.Show(mm, "mm", quantity.Both)
	case w.Inch > 0:
		return fmt.Sprintf("%s in (%.3f mm)", w.ID, mm)
	}
	return w.ID
}

func jointText(card *calc.Card, o Options) string {
	if g := card.Used.Gap.V; g > 0 {
		return card.Used.Joint + ", gap " + quantity.Show(g, "mm", o.Units)
	}
	return card.Used.Joint
}

func (s Stops) words(Options) []Line {
	var list []Line
	for i := range s.List {
		list = append(list, warningLine(&s.List[i]), Line{Kind: Gap})
	}
	if len(list) > 0 {
		list = append(list, Line{Text: "What follows is computed for comparison only: do not strike the arc on it."})
	}
	return list
}

func warningLine(w *calc.Warning) Line {
	kind := Note
	switch w.Severity {
	case calc.Stop:
		kind = Stop
	case calc.Caution:
		kind = Caution
	}
	return Line{Kind: kind, Text: w.Text, Source: w.Basis}
}

func (c Chapter) words(o Options) []Line {
	if o.Heard {
		c.Blocks = cautionsFirst(c.Blocks)
	}
	said := Words(c.Blocks, o)
	if c.Title == "" {
		return said
	}
	return append([]Line{{Kind: Title, Text: c.Title}}, said...)
}

func (v Verdict) words(Options) []Line {
	var list []Line
	if v.Verdict != "" {
		list = append(list, Line{Kind: VerdictIs, Lead: v.Verdict, Text: verdictWords(v.Verdict)})
	}
	for _, x := range v.Instead {
		list = append(list, Line{Kind: Instead, Text: x})
	}
	return list
}

func verdictWords(v string) string {
	switch v {
	case advice.Suits:
		return "suits"
	case advice.WithCare:
		return "possible with care"
	case advice.AnotherWay:
		return "choose another way"
	}
	return "STOP"
}

func (c Correction) words(o Options) []Line {
	if c.Correction == nil {
		return nil
	}
	var list []Line
	if text := CorrectionText(c.Change, c.Do, o.Units); text != "" {
		list = append(list, Line{Kind: Change, Text: text})
	}
	return append(list, Line{Text: c.Why})
}

// CorrectionText is the one thing to change after a bead: a setting, or what is done in its place; "" for nothing.
func CorrectionText(c *advice.Change, do string, sys quantity.System) string {
	if c == nil {
		return do
	}
	if c.What == "mode" {
		return fmt.Sprintf("mode from %s to %s", c.FromMode, c.ToMode)
	}
	text := func(v float64) string { return quantity.Show(v, c.Unit, sys) }
	if c.What == "arc_on" || c.What == "arc_off" {
		text = func(v float64) string { return fmt.Sprintf("%.2f s", v) }
	}
	return fmt.Sprintf("%s from %s to %s", calc.FigureLabel(c.What), text(c.From), text(c.To))
}

func (r Ranking) words(Options) []Line {
	const full = 3
	var list []Line
	var others, out []string
	for i := range r.List {
		f := &r.List[i]
		switch {
		case !r.Brief || i < full:
			list = append(list, r.rank(i)...)
		case f.RuledOut:
			out = append(out, f.ID)
		default:
			others = append(others, f.ID)
		}
	}
	var rest []string
	if len(others) > 0 {
		rest = append(rest, "after these: "+strings.Join(others, ", "))
	}
	if len(out) > 0 {
		rest = append(rest, "ruled out: "+strings.Join(out, ", "))
	}
	if len(rest) > 0 {
		list = append(list, Line{Text: strings.Join(rest, "; ")})
	}
	return list
}

// rank is one filler with what speaks for it and against.
func (r *Ranking) rank(i int) []Line {
	f := &r.List[i]
	parts := []string{f.Colour, fmt.Sprintf("%.0f MPa", f.Tensile)}
	if f.Wire != nil {
		parts = append(parts, fmt.Sprintf("%.0f g of wire a metre", *f.Wire))
	}
	if f.Cost != nil {
		money := r.Currency
		if money == "" {
			money = "money"
		}
		parts = append(parts, fmt.Sprintf("%.2f %s a metre at the price given", *f.Cost, money))
	}
	facts := strings.Join(parts, ", ")
	if f.RuledOut {
		facts = "ruled out"
	}
	list := []Line{{Kind: Rank, N: i + 1, Bad: f.RuledOut, Text: f.ID + ", " + f.Name + ": " + facts}}
	for _, x := range f.For {
		list = append(list, Line{Kind: For, Text: x.Text, Known: x.Known, Source: x.Source})
	}
	for _, x := range f.Against {
		list = append(list, Line{Kind: Against, Text: x.Text, Known: x.Known, Source: x.Source})
	}
	return list
}

func (f Figures) words(o Options) []Line {
	var list []Line
	for i := range f.List {
		if f.List[i].Name == "gun_angle" {
			continue
		}
		row := RowOf(f.Card, &f.List[i], f.Of, o.Units)
		list = append(list, Line{Kind: FigureRow, Row: &row})
		if o.Why {
			list = append(list, grounds(&f.List[i].Basis)...)
		}
	}
	if f.Of == OfPage {
		if text := guessLine(&f); text != "" {
			list = append(list, Line{Kind: RestsOn, Text: text})
		}
	}
	return list
}

// grounds are how a figure came about: formula, numbers, source and what it leans on most.
func grounds(b *calc.Basis) []Line {
	list := []Line{{Kind: Formula, Text: b.Plain()}}
	if s := b.Substituted(); s != b.Plain() {
		list = append(list, Line{Kind: PutIn, Text: s})
	}
	list = append(list, Line{Kind: Source, Text: b.Source, Known: b.Known})
	var most []string
	telling := b.Telling()
	for _, in := range telling[:min(3, len(telling))] {
		most = append(most, fmt.Sprintf("%s (%+.1f %%)", in.Name, in.Sensitivity))
	}
	if len(most) > 0 {
		list = append(list, Line{Kind: LeansOn, Text: strings.Join(most, ", ")})
	}
	return list
}

func (s Order) words(Options) []Line {
	if len(s.Turns) == 0 {
		return nil
	}
	const lead = "turn of each piece along the seam, each laid back toward the finished end"
	return []Line{{Kind: Turns, Lead: lead, Text: strings.Join(s.Turns, " – ")}}
}

func (r Reasons) words(o Options) []Line {
	var list []Line
	topic := ""
	for _, x := range r.List {
		if x.Topic != topic {
			if topic != "" {
				list = append(list, Line{Kind: Gap})
			}
			topic = x.Topic
			list = append(list, Line{Kind: Topic, Text: topic})
		}
		list = append(list, Line{Kind: Reason, Lead: topic, Text: x.Text, Known: x.Known, Source: x.Source})
		if o.Why {
			list = append(list, Line{Kind: Source, Lead: "reason", Text: x.Source, Known: x.Known})
		}
	}
	return list
}

// whoDecides stands under the cautions of every answer that is no card, which says it itself.
const whoDecides = "Local codes and licensed practice decide."

func (c Cautions) words(Options) []Line {
	var list []Line
	for i := range c.List {
		l := warningLine(&c.List[i])
		if c.Brief {
			l.Text = firstSentence(l.Text)
		}
		list = append(list, l)
	}
	if c.Brief && len(list) > 0 {
		list = append(list, Line{Text: "The card has these in full. " + whoDecides})
	}
	return list
}

// firstSentence is as much of a text as its first full stop ends.
func firstSentence(text string) string {
	if first, _, more := strings.Cut(text, ". "); more {
		return first + "."
	}
	return text
}

func (e Edges) words(o Options) []Line {
	var list []Line
	if e.Zone {
		if z := e.Card.Zone; z == "" || z == "not-modelled" {
			return nil
		}
		list = append(list, Line{Kind: Zone, Text: verdictText(e.Card)})
	}
	under := len(list)
	for i := range e.Card.Edges {
		x := &e.Card.Edges[i]
		list = append(list, Line{Kind: Edge, Lead: x.Name, Text: edgeWords(x, o.loud), Bad: !x.Met, N: under})
	}
	return list
}

// edgeWords say whether an edge is met, and by how much; loud where nothing has a colour.
func edgeWords(e *calc.Edge, loud bool) string {
	met := "met"
	switch {
	case !e.Met && loud:
		met = "NOT MET"
	case !e.Met:
		met = "not met"
	}
	return met + ", " + EdgeFar(e)
}

// EdgeFar is how far an edge is.
func EdgeFar(e *calc.Edge) string {
	if e.Margin >= 999 {
		return "far away"
	}
	return fmt.Sprintf("%.0f %% of feed or travel away", e.Margin)
}

// verdictText is the verdict with what stands against a good heat.
func verdictText(card *calc.Card) string {
	switch v := card.Verdict(); v {
	case "outside":
		return v + ": the heat is good, " + card.NearestEdge().Name + " is not met"
	case "stop":
		return v + ": not to be done, whatever the heat"
	default:
		return v
	}
}

func (Section) words(Options) []Line { return nil }

func (n Notes) words(Options) []Line {
	var list []Line
	for _, x := range n.List {
		list = append(list, Line{Kind: Setting, Lead: x.Name, Text: x.Text, Known: x.Known, Source: x.Source})
	}
	return list
}

func (a Assumed) words(Options) []Line {
	if len(a.List) == 0 {
		return nil
	}
	list := []Line{{Kind: Heading, Text: "Assumed, since it was not given:"}}
	for _, x := range a.List {
		list = append(list, Line{Kind: Assume, Lead: fmt.Sprintf("%-12s %s", x.Field, x.Value), Text: x.Why})
	}
	return list
}

func (c Checks) words(Options) []Line {
	var list []Line
	for i := range c.List {
		x := &c.List[i]
		list = append(list, Line{Kind: CheckFirst, Lead: fmt.Sprintf("%-12s %s", x.Field, x.Value), Text: x.Text()})
	}
	return list
}

func (p Open) words(Options) []Line {
	if len(p.Choices) == 0 {
		return nil
	}
	return []Line{{Kind: MayGive, Text: strings.Join(p.Choices, ", ")}}
}
