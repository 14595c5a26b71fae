package calc

import (
	"context"
	"errors"
	"slices"
	"strconv"
	"strings"
)

// Chapter is a step of the work that pages beside the card belong to.
type Chapter string

// The chapters in their order. The card itself is the middle of Set.
const (
	Decide Chapter = "Decide"
	Set    Chapter = "Set"
	Look   Chapter = "Check"
	Keep   Chapter = "Keep"
)

// Page is one page beside the card.
type Page struct {
	Name    string
	Chapter Chapter
	Of      PartOf // nil for correct, which needs what was seen
	// Given is Of for whoever may leave meanwhile; nil where Of takes no time to speak of.
	Given func(ctx context.Context, card *Card) (Part, error)
	// Needs are the choices, by the names of the job's fields with dashes, that this page asks for and the card does not.
	Needs []string
}

// pages in the order of the work.
var pages = [...]Page{
	{Name: "fit", Chapter: Decide, Of: Fit, Needs: []string{"hazard", "use", "service-temp", "load", "length", "safety", "throat", "leg"}},
	{Name: "filler", Chapter: Decide, Of: Fillers, Given: FillersContext, Needs: []string{"use", "wire-price"}},
	{Name: "prepare", Chapter: Decide, Of: Prepare, Needs: []string{"length", "preheat"}},
	{Name: "overlay", Chapter: Set, Of: Overlay, Needs: []string{"joint", "shaft-dia", "length", "layer", "preheat"}},
	{Name: "machine", Chapter: Set, Of: Machine, Needs: []string{"rated-amps", "rated-duty", "nozzle-bore"}},
	{Name: "strength", Chapter: Look, Of: Strength, Needs: []string{"length", "throat", "leg", "load", "safety", "service-temp", "count"}},
	{Name: "air", Chapter: Look, Of: Air},
	{Name: "correct", Chapter: Look, Needs: []string{"hazard", "use", "nozzle-bore"}},
	{Name: "cost", Chapter: Keep, Of: Cost, Needs: []string{"length", "count", "wire-price", "gas-price", "labour-rate", "operating", "steel-price", "grinding", "zinc-repair", "shaft-dia", "layer"}},
}

// Pages lists the pages beside the card in the order of the work; read only.
func Pages() []Page { return pages[:] }

// Answer computes a page of a card. Where the job is stopped only fit is answered; every other page says the stop and
// what a shop does instead, since no figure of it is to be used.
//
// Once ctx has ended what comes of it is its error.
func (p *Page) Answer(ctx context.Context, card *Card) (Part, error) {
	if p.Name != "fit" {
		if stopped, ok := stoppedPart(p.Name, card); ok {
			return stopped, nil
		}
	}
	if p.Given != nil {
		return p.Given(ctx, card)
	}
	return p.Of(card)
}

// stoppedPart is the page of a job that is not to be done at all.
func stoppedPart(name string, card *Card) (Part, bool) {
	fit, err := Fit(card)
	if err != nil || fit.Verdict != StopWork {
		return Part{}, false
	}
	part := Part{Name: name, Card: *card, Instead: fit.Instead}
	for _, r := range fit.Reasons {
		if r.Weight == stopWeight {
			r.Text = "stop: " + r.Text
			part.Reasons = append(part.Reasons, r)
		}
	}
	return part, true
}

// PageByName returns the page with exactly this name.
func PageByName(name string) (*Page, bool) {
	for i := range pages {
		if pages[i].Name == name {
			return &pages[i], true
		}
	}
	return nil, false
}

// Sheet computes the named pages of a card, or those that a job has where the list is empty: everything but what it
// lacks the joint for, and correct. A page that the job lacks something for stands there with what to type.
func Sheet(ctx context.Context, card *Card, names []string) ([]Part, error) {
	if len(names) == 0 {
		names = sheetOf(card)
	}
	var list []Part
	for i := range pages {
		s := &pages[i]
		if s.Of == nil || !slices.Contains(names, s.Name) {
			continue
		}
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		p, err := s.Answer(ctx, card)
		var lacks *FieldError
		if errors.As(err, &lacks) {
			p = Part{Name: s.Name, Card: *card}
			p.because("not for this job yet: "+lacks.Error()+"; "+lacks.Hint(), ownCalc, "the job")
		} else if err != nil {
			return nil, err
		}
		list = append(list, p)
	}
	return list, nil
}

// sheetOf are the pages that fit the joint: an overlay carries nothing between two parts, and nothing else is laid over.
func sheetOf(card *Card) []string {
	over := card.Used.Joint == "overlay"
	var names []string
	for _, s := range pages {
		if s.Of == nil || s.Name == "overlay" && !over || s.Name == "strength" && over {
			continue
		}
		names = append(names, s.Name)
	}
	return names
}

// SheetNames turns a list of pages as typed into names; "all" alone is an empty list. The error of an unknown name
// says what may be typed.
func SheetNames(text string) ([]string, error) {
	var names, all []string
	for _, s := range pages {
		if s.Of != nil {
			all = append(all, s.Name)
		}
	}
	for _, w := range strings.FieldsFunc(strings.ToLower(text), func(r rune) bool { return r == ',' || r == ' ' || r == ';' }) {
		switch {
		case w == "all":
			return nil, nil
		case !slices.Contains(all, w):
			return nil, &FieldError{"show", "no page is called " + strconv.QuoteToASCII(w), "type all, or any of " + strings.Join(all, ", ") + ", with commas"}
		}
		names = append(names, w)
	}
	if len(names) == 0 {
		return nil, &FieldError{"show", "no page is named", "type all, or any of " + strings.Join(all, ", ") + ", with commas"}
	}
	return names, nil
}
