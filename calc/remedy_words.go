package calc

import (
	"fmt"
	"strings"

	"brazebooth/tables"
)

// judged reports whether a job can be completed and judged: by the cross-section, or, a timed arc, in the sheet's
// plane.
func judged(job Job) bool {
	var card Card
	switch err := resolve(job, &card); {
	case err != nil:
		return false
	case card.Used.Mode == "timed":
		return timedReaches(&card)
	}
	return newBoard(&card).notModelled(&card) == ""
}

// timedReaches reports whether a timed arc is judged over a card's joint and opening.
func timedReaches(card *Card) bool {
	spread := tables.ArcWidth.V
	if r := &card.Used.Rhythm; r.Set() {
		spread = r.Spread
	}
	return OutsideTimed(card) == "" && card.Used.Gap.V <= 2*spread
}

// either joins words into “a, b or c”.
func either(words []string) string {
	last := len(words) - 1
	if last < 1 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:last], ", ") + " or " + words[last]
}

// advised are, in words, those changes that give a card's job one that is judged. Every hint in which an answer names
// another goes through it, so that no hint leads to a refusal.
func advised(card *Card, list ...candidate) (words []string) {
	for _, c := range list {
		job := card.Job
		if c.alter(&job); job != card.Job && judged(job) {
			words = append(words, c.change)
		}
	}
	return words
}

// overOpening are the ways over a card's opening that its job does not use yet and that something here judges: each
// backing, a timed arc, the opening closed. Only the page gap finds a timed arc's times, so the words promise none.
func overOpening(card *Card) []string {
	if !(card.Used.Gap.V > 0) {
		return nil
	}
	var list []candidate
	for _, b := range backingTries(&card.Job) {
		b.change = "a " + strings.ReplaceAll(b.change, ", two", " with two")
		list = append(list, b)
	}
	words := advised(card, list...)
	if card.Used.Mode != "timed" && timedReaches(card) {
		words = append(words, "a timed arc (gap, key t, says whether it has a rhythm)")
	}
	return append(words, advised(card, candidate{"the opening closed", closed})...)
}

// OverOpening joins the ways over an opening; “a smaller opening” where none is judged here.
func OverOpening(card *Card) string {
	if words := overOpening(card); len(words) > 0 {
		return either(words)
	}
	return "a smaller opening"
}

// closed closes a job's opening and removes its backing.
func closed(j *Job) { j.Gap, j.Backing = Some(0), "" }

// orTry ends a reason with the changes that are judged; with a test piece where none is.
func orTry(card *Card, why string, list ...candidate) string {
	words := advised(card, list...)
	if len(words) == 0 {
		words = []string{"a test piece"}
	}
	return why + "; try " + either(words)
}

// withoutBacking are the changes to try where nothing judges the backing of a root.
func withoutBacking(card *Card) []candidate {
	return []candidate{
		{fmt.Sprintf("a root opening of %.1f mm", tables.StripGap.V), func(j *Job) { j.Gap = Some(tables.StripGap.V) }},
		{"a copper bar", func(j *Job) { j.Backing = copperBar }},
		{"it without the " + backingName(card.Used.Backing), func(j *Job) { j.Backing = "" }},
		{"a closed root without the " + backingName(card.Used.Backing), func(j *Job) {
			if j.Gap.V > 0 {
				closed(j)
			}
		}},
	}
}

// joined is the same job as another joint, with an arc without pauses and no opening.
func joined(joint string) candidate {
	return candidate{"a " + joint, func(j *Job) {
		if j.Joint = joint; j.Mode == "timed" {
			j.Mode = "dip"
		}
		closed(j)
	}}
}

// windowHint says what to give instead for a job that has no window; it names nothing that the job has.
func windowHint(card *Card) string {
	u := &card.Used
	if u.Joint != "plug" && u.Mode != "timed" && u.Gap.V > 0 {
		if words := overOpening(card); len(words) > 0 {
			return "try " + either(words)
		}
	}
	var list []candidate
	if u.Mode == "timed" {
		list = append(list, candidate{"the mode dip", func(j *Job) { j.Mode = "dip" }})
	}
	for _, joint := range [...]string{"lap", "tee", "butt", "corner"} {
		list = append(list, joined(joint))
	}
	if words := advised(card, list...); len(words) > 0 {
		return "try " + either(words)
	}
	return fmt.Sprintf("give members of up to %g mm", tables.SectionThickest.V)
}
