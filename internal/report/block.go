// Package report describes every finding once. A card, a page beside it, an operating window, the times of a timed arc,
// a practice job, a saved record and a draft procedure are each a list of blocks. Text, Markdown, JSON, PDF, the
// line-by-line voice and the screens turn the blocks into their medium: they decide how something looks, never what is
// said.
package report

import (
	"slices"
	"strings"

	"brazebooth/calc"
	"brazebooth/calc/advice"
	"brazebooth/tables"
)

// Block is one part of a finding. Most blocks hold values; timed.go, window.go and practice.go have further ones.
type Block interface {
	// words returns the block in words, which are the same in every medium. A picture is one line that names it.
	words(o Options) []Line
}

// Said is a block of finished lines. It appears only as text, neither as a picture nor in JSON.
type Said []Line

func (s Said) words(Options) []Line { return s }

// lines is a block of which only the words are needed, not the values.
type lines func(o Options) []Line

func (f lines) words(o Options) []Line { return f(o) }

// Head says what a finding is for: members, joint, filler, wire, mode, gas and position.
type Head struct {
	Card     *calc.Card
	WireOnly bool   // the finding is about the wire alone
	Title    string // what the finding is, "" for a settings card
}

// Stops are the warnings that stop a job. Every finding has them, and they come first.
type Stops struct{ List []calc.Warning }

// Chapter is a part of a finding with a title of its own.
type Chapter struct {
	Title  string
	Blocks []Block
}

// Body is the part that only a page beside the card shows; brief for a page among all the others.
type Body struct {
	*advice.Page
	Brief bool
}

// Figures is a table of figures with their bands. The gun angle is left out, because the notes have it in words.
type Figures struct {
	Card *calc.Card // the card that the figures are on or belong to
	List []calc.Figure
	Of   Table
}

// Table says which kind of table of figures it is.
type Table int

// The tables: a card's own figures, a page's, the times of a timed arc, and a saved card's.
const (
	OfCard Table = iota
	OfPage
	OfTimed
	OfKept // of a card as it was saved, without the remarks, which are about a present card
)

// Cautions are warnings that do not stop a job.
type Cautions struct {
	List   []calc.Warning
	OnCard bool // the card shows them too
	Brief  bool // each in one sentence
}

// Edges are the edges of the operating window. With Verdict the card's verdict is shown above them.
type Edges struct {
	Card    *calc.Card
	Verdict bool
}

// Section is the joint's cross-section: a picture, which text leaves out.
type Section struct{ calc.Section }

// Notes are the settings that are words.
type Notes struct{ List []calc.Note }

// Assumed is everything that a card assumed because it was not given. Screens mark each such value itself.
type Assumed struct{ List []calc.Assumption }

// Checks are the assumed values, ordered by how much each moves the answer.
type Checks struct{ List []advice.Check }

// Card is everything on a card, in its order.
func Card(c *calc.Card) []Block {
	list := []Block{Head{Card: c}, stopsOf(c)}
	return append(append(list, cardBody(c)...), cautionsOf(c), Assumed{c.Assumed})
}

// cardBody is the part that only the card shows.
func cardBody(c *calc.Card) []Block {
	return []Block{Figures{Card: c, List: c.Figures}, Edges{c, true}, Notes{c.Notes}, Section{c.Section}}
}

// Kept is a card as it was saved, below the first lines of its record and what its job left open.
func Kept(head Said, c *calc.Card) []Block {
	first := func(o Options) []Line {
		if len(c.Assumed) == 0 {
			return head
		}
		return append(slices.Clip(head), Line{Kind: Named, Lead: "assumed", Text: AssumedText(c.Assumed, o.Units),
			AsTyped: true})
	}
	return []Block{lines(first), stopsOf(c), Figures{c, c.Figures, OfKept}, Edges{c, true}, cautionsOf(c)}
}

// Wire is the card of a wire alone.
func Wire(c *calc.Card) []Block {
	return []Block{Head{Card: c, WireOnly: true}, Figures{Card: c, List: c.Figures}, cautionsOf(c)}
}

// Page is a page beside the card. open are the choices that it asks for and that were not given.
func Page(p *advice.Page, open []string) []Block {
	return []Block{Head{Card: &p.Card, Title: "Page " + p.Name}, stopsOf(&p.Card),
		Body{Page: p}, Cautions{dangers(&p.Card, p.Warnings), true, true}, Assumed{p.Card.Assumed}, mayGive(open)}
}

// mayGive names the choices that a page asks for and that were not given.
func mayGive(open []string) Said {
	if len(open) == 0 {
		return nil
	}
	return Said{{Kind: MayGive, Text: strings.Join(open, ", ")}}
}

// Whole is everything for a job: the card, the pages beside it in the order of the work, and what to check first.
func Whole(c *calc.Card, pages []advice.Page) []Block {
	list := []Block{Head{Card: c}, stopsOf(c)}
	for _, chapter := range [...]advice.Chapter{advice.Decide, advice.Set, advice.Look, advice.Keep} {
		if chapter == advice.Set {
			list = append(list, Chapter{Title: "Set: the card", Blocks: cardBody(c)})
		}
		for i := range pages {
			if p := &pages[i]; ChapterOf(p.Name) == chapter {
				list = append(list, Chapter{string(chapter) + ": " + p.Name, []Block{Body{p, true}}})
			}
		}
	}
	return append(list, Chapter{Title: "Cautions", Blocks: []Block{cautionsOf(c)}},
		Chapter{Title: "Check these first: assumed, since nobody gave them",
			Blocks: []Block{Checks{advice.CheckFirst(c)}}})
}

func stopsOf(c *calc.Card) Stops { return Stops{calc.Stops(c.Warnings)} }

// cautionsOf are a card's warnings that do not stop the job.
func cautionsOf(c *calc.Card) Cautions {
	stop := func(w calc.Warning) bool { return w.Severity == calc.Stop }
	return Cautions{List: slices.DeleteFunc(slices.Clone(c.Warnings), stop)}
}

// ChapterOf is the chapter that a page belongs to, "" for an unknown page.
func ChapterOf(name string) advice.Chapter {
	p, ok := advice.EntryByName(name)
	if !ok {
		return ""
	}
	return p.Chapter
}

// dangers are the card's cautions about injuries at the arc, without those in said. A stopped job has none, because its
// stops say more.
func dangers(card *calc.Card, said []calc.Warning) []calc.Warning {
	if card.Stopped() {
		return nil
	}
	var list []calc.Warning
	for _, d := range tables.Dangers {
		code := func(w calc.Warning) bool { return w.Code == d.Code }
		if i := slices.IndexFunc(card.Warnings, code); i >= 0 && !slices.ContainsFunc(said, code) {
			list = append(list, card.Warnings[i])
		}
	}
	return list
}
