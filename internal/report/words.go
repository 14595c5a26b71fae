package report

import (
	"slices"

	"brazebooth/calc"
	"brazebooth/internal/quantity"
)

// Line is one thing to say, in words that are the same in every medium.
type Line struct {
	Kind          Kind
	Lead          string // what the text is about: a topic, a note's name, an edge, what is assumed
	Value         string // the assumed value
	Text          string
	Cells         []any // the texts of a row of a table
	Known, Source string
	Row           *Row  // of a figure
	Of            Block // of a picture
	N             int   // rank of a filler, from 1; 1 for an edge under the verdict and for the first of the reasons
	Bad           bool  // an edge is not met, a filler is ruled out
	AsTyped       bool  // it repeats typed text, which keeps its units
}

// Kind is the kind of a line. Each medium marks each kind in its own way.
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
	FitVerdict // of the fit page; Lead is the advice package's word for it
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
	RestsOn // the assumptions that the figures before it depend on
	Turns
	Topic
	Reason
	CardVerdict
	Edge
	Setting // a note
	Assume
	CheckFirst
	MayGive
	Heading // over a list
	Limit
	Remedy
	Picture
	Verbatim // stays as it is, with its blanks
	Item     // of a list
	Named    // Lead is its name
	Draft
	Alert
	Form   // a field of a form
	Field  // of a record
	Bead   // how a test bead was laid; Lead is its number
	OfBead // further facts about it
	Hid    // a row of the values that a booth hid, in cells
	Moves  // a row of what those values changed, in cells
)

// FitLabel stands before the fit page's answer, which may share a sheet with the card's verdict on the setting.
const FitLabel = "arc brazing"

// Words are blocks in words, their sentences in the reader's units. There is a Gap between two blocks that are not
// empty.
func Words(blocks []Block, o Options) []Line {
	list := said(blocks, o)
	for i := range list {
		if l := &list[i]; !slices.Contains(asComputed[:], l.Kind) && !l.AsTyped {
			l.Lead, l.Value, l.Text = quantity.Sentence(l.Lead, o.Units), quantity.Sentence(l.Value, o.Units),
				quantity.Sentence(l.Text, o.Units)
		}
	}
	return list
}

// asComputed are the kinds of lines that keep their units: what a job is for, with the names of sheet and wire, and how
// a figure was computed, in metric units with the names of its sources.
var asComputed = [...]Kind{Subject, Formula, PutIn, Source, LeansOn, Verbatim, Form}

func said(blocks []Block, o Options) []Line {
	var list []Line
	for _, b := range blocks {
		if o.Beside && onCard(b) {
			continue
		}
		lines := b.words(o)
		if len(lines) == 0 {
			continue
		}
		if n := len(list); n > 0 && list[n-1].Kind != Title {
			list = append(list, Line{Kind: Gap})
		}
		list = append(list, lines...)
	}
	return list
}

// onCard reports whether the card shows this block itself.
func onCard(b Block) bool {
	switch b := b.(type) {
	case Head, Assumed, Decides:
		return true
	case Cautions:
		return b.OnCard
	}
	return false
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

var warningKinds = map[calc.Severity]Kind{calc.Stop: Stop, calc.Caution: Caution, calc.Info: Note}

func warningLine(w *calc.Warning) Line {
	return Line{Kind: warningKinds[w.Severity], Text: w.Text, Source: w.Basis}
}

func (c Chapter) words(o Options) []Line {
	return append([]Line{{Kind: Title, Text: c.Title}}, said(c.Blocks, o)...)
}

// under puts a heading over a list that is not empty.
func under(heading string, list []Line) []Line {
	if len(list) == 0 {
		return nil
	}
	return append([]Line{{Kind: Heading, Text: heading}}, list...)
}
