package tui

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"charm.land/bubbles/v2/key"
	tea "charm.land/bubbletea/v2"

	"brazebooth/calc"
	"brazebooth/internal/choice"
	"brazebooth/internal/quantity"
	"brazebooth/internal/report"
)

// whyPage answers "why this number?" for one row of the card. If the row can be set, a value can be typed there.
type whyPage struct {
	row     cardRow
	set     *choice.Choice
	chosen  *choice.Row // the value of a choice, nil for a figure
	reasons []choice.Reason
	field   field
	scroll  window
}

func openWhy(r cardRow) action {
	return func(m *root) tea.Cmd {
		p := &whyPage{row: r, set: choice.SettingOf(r.name)}
		p.explain(m)
		m.push(p)
		return nil
	}
}

func (p *whyPage) about(*root) about {
	keys := "esc back" + p.scroll.key() + "  u units: metric, inch, both"
	if p.set != nil {
		keys = "enter set, or back" + p.scroll.key() + "  esc back"
	}
	return about{help: "everywhere", term: p.row.label, keys: keys}
}

// refresh takes over the row's present values.
func (p *whyPage) refresh(m *root) {
	p.row = *m.card.row()
	p.explain(m)
}

func (p *whyPage) view(m *root, w, h int) (b block, _ *tea.Cursor) {
	var cur *tea.Cursor
	b.add(newRow(w).put(m.th.bold, p.row.label).line())
	if p.set != nil {
		r, x := p.field.ask(&m.th, "set it yourself: ", w)
		cur = tea.NewCursor(x, len(b))
		b.add(r.line())
		b.say(m.th.quiet, 0, p.field.reading(p.set.Kind, m.Units, quantity.Rule(p.set.Kind)), w)
	}
	b.skip()
	w = min(w, textWidth)
	text := reasons(&m.th, &p.row, &m.session.card, m.Units, w, true)
	if p.chosen != nil {
		text.skip()
		text.addAll(reasonPage(&m.th, p.chosen, p.reasons, w))
	}
	b.addAll(p.scroll.draw(&m.th, text, w, h-len(b)))
	return b, cur
}

func (p *whyPage) press(m *root, msg tea.KeyPressMsg) action {
	switch {
	case key.Matches(msg, bound.On) && p.field.empty():
		return goBack
	case key.Matches(msg, bound.On):
		return m.set(p.set, &p.field, p.row.label+" is yours now", p.field.clear)
	case msg.String() == "esc" && !p.field.empty():
		p.field.clear()
		return nil
	case msg.Text == "" && p.scroll.moved(msg):
		return nil
	}
	if p.field.empty() && msg.Text != "." { // a point begins a number
		if a := everywhere(msg, keyAction{bound.Why, goBack}, keyAction{bound.Cautions, openPoints}); a != nil {
			return a
		}
	}
	if p.set != nil {
		p.field.edit(msg)
	}
	return nil
}

// reasons is the page's text for a row. bars shows how near the edges are.
func reasons(th *theme, r *cardRow, c *calc.Card, sys quantity.System, w int, bars bool) (b block) {
	switch {
	case r.numbered():
		feedSentence(&b, th, r.name, c, sys, w)
		figureValue(&b, th, &r.fig, w)
		if bars {
			limitBars(&b, th, r.name, c, w)
		}
		figureGrounds(&b, th, &r.fig, w)
	case r.note.Name != "":
		b.say(th.plain, 0, r.note.Text, w)
		b.skip()
		source(&b, th, r.note.Source, r.note.Known, w)
	default:
		b.say(th.plain, 0, r.words, w)
	}
	if why := c.AssumedWhy(r.name); why != "" && r.note.Name == "" {
		b.say(th.quiet, 0, "~ assumed: "+th.inUnits(why), w)
	}
	return b
}

// figureValue is the number with its uncertainty, or, for a suggestion, with its good range.
func figureValue(b *block, th *theme, r *report.Row, w int) {
	value := newRow(w).put(th.bold, r.Value.String())
	if r.Other.Number != "" {
		value.put(th.plain, "  "+r.Other.String())
	}
	b.add(value.line())
	bands := spaced(r.Value.Band(), r.Value.Unit)
	if r.Other.Low != "" {
		bands += " (" + spaced(r.Other.Band(), r.Other.Unit) + ")"
	}
	switch {
	case r.Range == report.GoodBetween:
		b.say(th.quiet, 0, "good between "+bands+", as long as nothing else is changed", w)
	case r.Range == report.UsualBetween:
		b.say(th.quiet, 0, "usual between "+bands+"; not judged", w)
	case r.Value.Low != "":
		b.say(th.quiet, 0, "between "+bands, w)
	case r.Figure.Basis.Known == "given":
		b.say(th.quiet, 0, "as you set it", w) // replaces the band, so that the rest does not move
	}
}

// figureGrounds says how the number was computed: formula, source, inputs.
func figureGrounds(b *block, th *theme, r *report.Row, w int) {
	f := r.Figure
	if f.Basis.Source == "user" && f.Basis.Known == "given" { // already said in place of its band
		if r.Value.Low != "" {
			b.say(th.quiet, 0, "as you set it", w)
		}
		return
	}
	b.skip()
	b.say(th.plain, 0, f.Basis.Plain(), w)
	if put := f.Basis.Substituted(); put != "" && put != f.Basis.Plain() {
		b.say(th.bold, 0, "= "+put, w)
	}
	b.skip()
	source(b, th, f.Basis.Source, f.Basis.Known, w)
	inputs(b, th, f.Basis.Inputs, w)
}

func source(b *block, th *theme, from, known string, w int) {
	words := calc.KnownWords(known)
	b.say(th.quiet.exact(), 0, "source: "+from, w)
	if words != from {
		b.say(th.quiet, 0, words, w)
	}
}

// inputs lists what a figure depends on, the most important first.
func inputs(b *block, th *theme, list []calc.Input, w int) {
	if len(list) == 0 {
		return
	}
	sorted := slices.Clone(list)
	slices.SortStableFunc(sorted, func(a, b calc.Input) int {
		return cmp.Compare(math.Abs(b.Sensitivity), math.Abs(a.Sensitivity))
	})
	b.skip()
	b.say(th.bold, 0, "rests on, most telling first", w)
	for i := range sorted {
		inputLine(b, th, &sorted[i], w)
	}
}

// inputLine is one input: how much it moves the figure, its name, its value.
func inputLine(b *block, th *theme, in *calc.Input, w int) {
	moves := "      "
	if math.Abs(in.Sensitivity) >= 0.05 {
		moves = fmt.Sprintf("±%4.1f%%", math.Abs(in.Sensitivity))
	}
	value := spaced(fmt.Sprintf("%.4g", in.Value), quantity.Label(in.Unit, quantity.Metric))
	name := in.Name
	if in.Assumed {
		name = "~ " + name + ", assumed"
	}
	r := newRow(w).put(th.quiet, moves).blank(1)
	b.addAll(flow(r, []piece{{7, th.plain, name}, {w - width(value), th.quiet, value}}, 7, w))
}

// feedSentence says how wire feed and travel are found: from the sheet to the heat, from the heat to the feed.
func feedSentence(b *block, th *theme, name string, c *calc.Card, sys quantity.System, w int) {
	if name != "wire_feed" && name != "travel" {
		return
	}
	said := func(name string) string {
		f, ok := c.Figure(name)
		if !ok {
			return ""
		}
		x := report.ValueOf(&f, sys)
		if x.Low == "" || f.Name == "wire_feed" || f.Name == "travel" { // these have no uncertainty of their own
			return x.String()
		}
		return x.String() + " (" + x.Band() + ")"
	}
	feed, travel, amps, heat := said("wire_feed"), said("travel"), said("current"), said("net_heat")
	if feed == "" || travel == "" || amps == "" || heat == "" {
		return
	}
	b.say(th.bold, 0, fmt.Sprintf("%s is %s of metal that takes up the heat. %s of %s wire draws %s; at a travel of "+
		"%s that puts %s into the sheet.",
		choice.ByName("gauge").Shown(c, sys), quantity.Show(c.Setup.Members[0].Core, "mm", sys.Lead()), feed,
		choice.ByName("wire").Shown(c, sys), amps, travel, heat), w)
	b.skip()
}

// limitBars show how near wire feed and travel are to each edge, because they were chosen for that.
func limitBars(b *block, th *theme, name string, c *calc.Card, w int) {
	if name != "wire_feed" && name != "travel" || len(c.Edges) == 0 {
		return
	}
	b.skip()
	b.say(th.quiet, 0, "The edges, nearest first: how much more or less feed or travel each allows.", w)
	b.addAll(block(edgesOf(c).Draw(th.Theme, min(w, 56), len(c.Edges)+len(c.Unjudged))))
}
