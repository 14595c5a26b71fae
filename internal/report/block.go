// Package report describes every finding once. A card, a page beside it, an operating window, the times of a timed arc,
// a practice job, a saved record and a draft procedure are each a list of blocks. Text, Markdown, JSON, PDF, the
// line-by-line voice and the screens turn the blocks into their medium: they decide how something looks, never what is
// said.
package report

import (
	"brazebooth/calc"
	"brazebooth/calc/advice"
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
