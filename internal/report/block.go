// Package report describes every finding once. A card, a page beside it, an operating window, the times of a timed arc,
// a practice job, a kept record and a draft procedure are each a list of blocks. Text, Markdown, JSON, PDF, the
// line-by-line voice and the screens turn the blocks into their medium: they decide how a thing looks, never what is
// said.
package report

import (
	"slices"

	"brazebooth/calc"
	"brazebooth/calc/advice"
)

// Block is one thing that a finding says. Most hold values; timed.go, window.go and practice.go have more of them.
type Block interface {
	// words are the block in words, the same for every medium. A picture is one line that names it.
	words(o Options) []Line
}

// Said are lines that are put into words by whoever makes them: only text is made of them, no picture and no JSON.
type Said []Line

func (s Said) words(Options) []Line { return s }

// KeptHead are the first lines of a kept card; behind them stands what its job did not say.
type KeptHead struct {
	Said
	Assumed []calc.Assumption
}

func (h KeptHead) words(o Options) []Line {
	if len(h.Assumed) == 0 {
		return h.Said
	}
	return append(slices.Clip(h.Said), Line{Kind: Named, Lead: "assumed", Text: AssumedText(h.Assumed, o.Units),
		AsTyped: true})
}

// lines are a block that nobody reads the values of: how it is put into words is all there is.
type lines func(o Options) []Line

func (f lines) words(o Options) []Line { return f(o) }

// Head says what a finding is for: members, joint, filler, wire, mode, gas and position.
type Head struct {
	Card     *calc.Card
	WireOnly bool   // the finding concerns the wire alone
	Title    string // what the finding is, "" for a settings card
}

// Stops are the warnings that stop a job. Every finding has them, and they come first.
type Stops struct{ List []calc.Warning }

// Chapter is a part of a finding: a page beside the card, or what stands under a title of its own.
type Chapter struct {
	Title  string // "" for a page that stands alone
	Page   string // its name, "" for none
	Blocks []Block
}

// Verdict is whether a job should be brazed at all, and what a shop does instead.
type Verdict struct {
	Verdict string // advice.Suits ..., "" where the page gives none
	Instead []string
}

// Correction is the one thing to change after a test bead, and why.
type Correction struct{ *advice.Correction }

// Ranking is every filler, the best first, with what speaks for it and against.
type Ranking struct {
	List     []advice.Ranked
	Currency string
	Brief    bool // the first three in full, the others by name
}

// Figures is a table of figures with their bands. The gun's angle is said among the notes, in words.
type Figures struct {
	Card *calc.Card // the card that they stand on or beside
	List []calc.Figure
	Of   Table
}

// Table says which table of figures it is.
type Table int

// The tables: a card's own figures, a page's, the times of a timed arc, and a kept card's.
const (
	OfCard Table = iota
	OfPage
	OfTimed
	OfKept // of a card as it was kept: without the remarks, which belong to a present card
)

// Order is the turn in which each piece of a seam is laid, along the seam.
type Order struct{ Turns []string }

// Reasons are sentences with how each is known, those of one topic together.
type Reasons struct{ List []advice.Reason }

// Cautions are warnings that stop nothing.
type Cautions struct {
	List   []calc.Warning
	OnCard bool // the card says them too
	Brief  bool // each in one sentence
}

// Edges are the borders of the operating window; with Zone the card's verdict stands over them.
type Edges struct {
	Card *calc.Card
	Zone bool
}

// Section is the joint's cross-section: a picture, which text leaves out.
type Section struct{ calc.Section }

// Notes are settings that are words.
type Notes struct{ List []calc.Note }

// Assumed is what nobody gave. Screens mark each value itself.
type Assumed struct{ List []calc.Assumption }

// Checks is what nobody gave, in the order of how much it moves the answer.
type Checks struct{ List []advice.Check }

// Open are choices that a page asks for and that were not given.
type Open struct{ Choices []string }
