package report

import (
	"encoding/json"
	"fmt"
	"strings"

	"brazebooth/calc"
	"brazebooth/calc/advice"
	"brazebooth/internal/quantity"
)

// WholeText is everything for a job on one sheet of at most 80 columns: the card, what to check first, and the pages
// beside it in the order of the work.
func WholeText(card *calc.Card, parts []advice.Page, o Options) string {
	w := writer{comma: o.Comma}
	w.head(card, o)
	w.stops(card)
	w.chapters(parts, advice.Decide, o)
	w.heading("Set: the card")
	w.figures(card, o)
	w.edges(card)
	w.notes(card)
	w.chapters(parts, advice.Set, o)
	w.chapters(parts, advice.Look, o)
	w.chapters(parts, advice.Keep, o)
	w.heading("Cautions")
	w.warnings(card)
	w.checkFirst(card)
	return w.String()
}

func (w *writer) heading(text string) {
	w.line("%s", text)
	w.line("%s", strings.Repeat("-", len(text)))
}

// chapters writes the pages of one chapter.
func (w *writer) chapters(parts []advice.Page, chapter advice.Chapter, o Options) {
	for i := range parts {
		if ChapterOf(parts[i].Name) == chapter {
			w.heading(string(chapter) + ": " + parts[i].Name)
			p := Short(&parts[i])
			w.part(&p, o)
		}
	}
}

// Short is a page as it stands on the sheet of all: of the fillers the first three in full, the others by name.
func Short(p *advice.Page) advice.Page {
	short := *p
	const full = 3
	if len(p.Ranking) <= full {
		return short
	}
	short.Ranking = p.Ranking[:full]
	var others, out []string
	for _, r := range p.Ranking[full:] {
		if r.RuledOut {
			out = append(out, r.ID)
		} else {
			others = append(others, r.ID)
		}
	}
	var said []string
	if len(others) > 0 {
		said = append(said, "after these: "+strings.Join(others, ", "))
	}
	if len(out) > 0 {
		said = append(said, "ruled out: "+strings.Join(out, ", "))
	}
	text := strings.Join(said, "; ")
	short.Reasons = append([]advice.Reason{{Text: text, Known: "own computation", Source: "the rules and the window"}}, p.Reasons...)
	return short
}

// ChapterOf is the chapter that a page belongs to.
func ChapterOf(name string) advice.Chapter {
	p, ok := advice.EntryByName(name)
	if !ok {
		return ""
	}
	return p.Chapter
}

// checkFirst is what was assumed, most telling first.
func (w *writer) checkFirst(card *calc.Card) {
	list := calc.CheckFirst(card)
	if len(list) == 0 {
		return
	}
	w.heading("Check these first: assumed, since nobody gave them")
	for i := range list {
		w.para(fmt.Sprintf("  %-12s %-12s ", list[i].Field, list[i].Value), list[i].Text())
	}
}

// WholeMarkdown is WholeText as Markdown: headings, tables of figures, lists.
func WholeMarkdown(card *calc.Card, parts []advice.Page, o Options) string {
	m := marker{comma: o.Comma}
	var head writer
	head.head(card, o)
	lines := strings.Split(strings.TrimSpace(head.String()), "\n")
	m.line("# %s", clean(strings.Join(lines, " ")))
	m.line("")
	m.cautions(calc.Stops(card.Warnings))
	m.chapters(parts, advice.Decide, o)
	m.line("## Set: the card\n")
	m.figures(card, card.Figures, o)
	if card.Zone != "" && card.Zone != "not-modelled" {
		m.line("Zone: **%s**. %s\n", verdictText(card), edgesLine(card))
	}
	for _, n := range card.Notes {
		m.line("- **%s**: %s", n.Name, clean(n.Text))
	}
	m.line("")
	for _, c := range [...]advice.Chapter{advice.Set, advice.Look, advice.Keep} {
		m.chapters(parts, c, o)
	}
	m.line("## Cautions\n")
	m.cautions(card.Warnings)
	m.line("## Check these first\n")
	for _, c := range calc.CheckFirst(card) {
		m.line("- **%s** %s: %s", c.Field, c.Value, clean(c.Text()))
	}
	return m.String()
}

// marker writes Markdown.
type marker struct {
	strings.Builder
	comma bool // in numbers
}

func (m *marker) line(format string, args ...any) {
	text := fmt.Sprintf(format, args...)
	if m.comma {
		text = quantity.Comma(text)
	}
	m.WriteString(text + "\n")
}

// clean keeps text from meaning something in Markdown.
func clean(s string) string {
	return strings.NewReplacer("|", "\\|", "*", "\\*", "_", "\\_", "<", "&lt;", "`", "\\`").Replace(s)
}

func edgesLine(card *calc.Card) string {
	var parts []string
	for i := range card.Edges {
		parts = append(parts, card.Edges[i].Name+" "+strings.Join(strings.Fields(edgeText(&card.Edges[i])), " "))
	}
	return strings.Join(parts, "; ")
}

func (m *marker) cautions(list []calc.Warning) {
	for _, l := range list {
		m.line("- **%s** %s", strings.ToUpper(string(l.Severity)), clean(l.Text))
	}
	if len(list) > 0 {
		m.line("")
	}
}

func (m *marker) chapters(parts []advice.Page, chapter advice.Chapter, o Options) {
	for i := range parts {
		if ChapterOf(parts[i].Name) == chapter {
			m.line("## %s: %s\n", chapter, parts[i].Name)
			p := Short(&parts[i])
			m.part(&p, o)
		}
	}
}

func (m *marker) part(p *advice.Page, o Options) {
	if p.Verdict != "" {
		m.line("**Verdict: %s**\n", VerdictText(p.Verdict))
	}
	for _, x := range p.Instead {
		m.line("- instead: %s", clean(x))
	}
	m.ranking(p)
	m.figures(&p.Card, p.Figures, o)
	if len(p.Order) > 0 {
		m.line("Turn of each piece along the seam: %s\n", strings.Join(p.Order, " – "))
	}
	for _, r := range p.Reasons {
		topic := ""
		if r.Topic != "" {
			topic = "**" + r.Topic + "**: "
		}
		m.line("- %s%s (%s; %s)", topic, clean(r.Text), r.Known, clean(r.Source))
	}
	m.line("")
	m.cautions(p.Warnings)
}

func (m *marker) ranking(p *advice.Page) {
	for i := range p.Ranking {
		r := &p.Ranking[i]
		facts := FillerFacts(r, p.Card.Used.Currency)
		if r.RuledOut {
			facts = "ruled out"
		}
		m.line("%d. **%s** %s: %s", i+1, r.ID, r.Name, facts)
		for _, x := range r.For {
			m.line("   - for: %s (%s)", clean(x.Text), x.Known)
		}
		for _, x := range r.Against {
			m.line("   - against: %s (%s)", clean(x.Text), x.Known)
		}
	}
	if len(p.Ranking) > 0 {
		m.line("")
	}
}

// figures is a table: figure, value, band, how it is known.
func (m *marker) figures(card *calc.Card, list []calc.Figure, o Options) {
	if len(list) == 0 {
		return
	}
	m.line("| figure | value | band | basis |\n|---|---|---|---|")
	for i := range list {
		f := &list[i]
		value, band := quantity.Band(f.Value, f.Low, f.High, f.Unit, lead(o.Units))
		if f.Unit == "1" {
			value, band = fmt.Sprintf("%.0f", f.Value), fmt.Sprintf("%.0f–%.0f", f.Low, f.High)
		}
		if f.Low == f.High {
			band = ""
		}
		if r := aside(card, f, o); r != "" {
			band = strings.TrimSpace(band + " " + r)
		}
		m.line("| %s | %s %s | %s | %s |", calc.FigureLabel(f.Name), value, quantity.Label(f.Unit, lead(o.Units)), clean(band), clean(f.Basis.Known))
	}
	m.line("")
}

// WholeJSON is the card's document with every page under sections, its figures and cautions with it, and what to check
// first.
func WholeJSON(card *calc.Card, parts []advice.Page, version string) ([]byte, error) {
	d := documentOf(card, version)
	put := func(name string, v any) error {
		b, err := json.Marshal(v)
		d.Sections[name] = b
		return err
	}
	if card.Section.Drawn {
		if err := put("cross_section", card.Section); err != nil {
			return nil, err
		}
	}
	if err := put("check_first", orEmpty(calc.CheckFirst(card))); err != nil {
		return nil, err
	}
	for i := range parts {
		p := &parts[i]
		s := sectionOf(p)
		s.Figures, s.Warnings = figuresOf(p.Figures), orEmpty(p.Warnings)
		if err := put(p.Name, s); err != nil {
			return nil, err
		}
	}
	return encode(d)
}
