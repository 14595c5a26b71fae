package advice

import (
	"context"
	"slices"
	"strconv"
	"strings"

	"brazebooth/calc"
	"brazebooth/internal/mistake"
)

// Chapter is the step of the work that a page belongs to.
type Chapter string

// The chapters in the order of the work. The card itself is the main part of Set.
const (
	Decide Chapter = "Decide"
	Set    Chapter = "Set"
	Look   Chapter = "Check"
	Keep   Chapter = "Keep"
)

// Entry is one row of the contents: a page beside the card.
type Entry struct {
	Name    string
	Chapter Chapter
	Of      PageOf // nil for correct, which needs the look of a test bead
	// Needs names the choices of the job (field names with dashes) that this page asks for and the card does
	// not.
	Needs []string
}

// contents lists the pages in the order of the work.
var contents = [...]Entry{
	{Name: "fit", Chapter: Decide, Of: FitContext,
		Needs: []string{"hazard", "use", "service-temp", "load", "length", "safety", "throat", "leg"}},
	{Name: "filler", Chapter: Decide, Of: Fillers, Needs: []string{"use", "wire-price"}},
	{Name: "prepare", Chapter: Decide, Of: quick(Prepare), Needs: []string{"length", "preheat"}},
	{Name: "overlay", Chapter: Set, Of: quick(Overlay),
		Needs: []string{"joint", "shaft-dia", "length", "layer", "preheat"}},
	{Name: "passes", Chapter: Set, Of: quick(Passes), Needs: []string{"length", "leg", "throat"}},
	{Name: "plug", Chapter: Set, Of: quick(Plug), Needs: []string{"hole"}},
	{Name: "machine", Chapter: Set, Of: quick(Machine), Needs: []string{"rated-amps", "rated-duty", "nozzle-bore"}},
	{Name: "pulse", Chapter: Set, Of: quick(Pulse), Needs: []string{"mode"}},
	{Name: "strength", Chapter: Look, Of: quick(Strength),
		Needs: []string{"length", "throat", "leg", "load", "safety", "service-temp", "count", "hole"}},
	{Name: "distortion", Chapter: Look, Of: quick(Distortion), Needs: []string{"part-width"}},
	{Name: "haz", Chapter: Look, Of: Zone},
	{Name: "air", Chapter: Look, Of: quick(Air), Needs: []string{"operating"}},
	{Name: "correct", Chapter: Look, Needs: []string{"hazard", "use", "nozzle-bore"}},
	{Name: "cost", Chapter: Keep, Of: quick(Cost), Needs: []string{"length", "count", "wire-price", "gas-price",
		"labour-rate", "operating", "steel-price", "grinding", "zinc-repair", "shaft-dia", "layer", "hole"}},
}

// Contents lists the pages beside the card in the order of the work; read only.
func Contents() []Entry { return contents[:] }

// Answer computes a page of a card. If the job must not be done at all, only fit is answered: every other page
// gives the reason and what a shop does instead, because none of its figures may be used. After ctx is
// cancelled the error is that of ctx.
func (p *Entry) Answer(ctx context.Context, card *calc.Card) (Page, error) {
	if p.Name != "fit" {
		if stopped, ok := Stopped(p.Name, card); ok {
			return stopped, nil
		}
	}
	page, err := p.Of(ctx, card)
	if err == nil {
		page.PreheatCautions(card)
	}
	return page, err
}

// quick is a page that takes hardly any time, so that nobody cancels it.
func quick(of func(card *calc.Card) (Page, error)) PageOf {
	return func(_ context.Context, card *calc.Card) (Page, error) { return of(card) }
}

// Stopped is the page of a job that must not be done at all.
func Stopped(name string, card *calc.Card) (Page, bool) {
	if !card.Stopped() {
		return Page{}, false
	}
	fit, _ := Fit(card)
	part := Page{Name: name, Card: *card, Instead: fit.Instead}
	for _, r := range fit.Reasons {
		if r.Weight == stopWeight {
			r.Text = "stop: " + r.Text
			part.Reasons = append(part.Reasons, r)
		}
	}
	return part, true
}

// EntryByName returns the entry with exactly this name.
func EntryByName(name string) (*Entry, bool) {
	for i := range contents {
		if contents[i].Name == name {
			return &contents[i], true
		}
	}
	return nil, false
}

// Pages computes the named pages of a card. If names is empty, it computes all pages that suit the card's
// joint, except correct. If the job lacks something that a page needs, the page says what to type.
func Pages(ctx context.Context, card *calc.Card, names []string) ([]Page, error) {
	if len(names) == 0 {
		names = pagesOf(card)
	}
	var list []Page
	for i := range contents {
		s := &contents[i]
		if s.Of == nil || !slices.Contains(names, s.Name) {
			continue
		}
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		p, err := s.Answer(ctx, card)
		if lacks := mistake.Of(err); lacks != nil {
			p = Page{Name: s.Name, Card: *card}
			p.Because(ownJob, "not for this job yet: %v; %s", lacks, lacks.Hint)
		} else if err != nil {
			return nil, err
		}
		list = append(list, p)
	}
	return list, nil
}

// pagesOf names the pages that suit the joint and the arc: no strength for an overlay, overlay only for an
// overlay, plug only for a plug, pulse only for a pulsed arc.
func pagesOf(card *calc.Card) []string {
	over, plug := card.Used.Joint == "overlay", card.Used.Joint == "plug"
	left := map[string]bool{"overlay": !over, "strength": over, "plug": !plug, "passes": over || plug,
		"pulse": card.Used.Mode != "pulsed"}
	return slices.DeleteFunc(ComputedPages(), func(name string) bool { return left[name] })
}

// Asks returns the needs that apply to a joint: holes and their count belong to plugs, layers and shafts to
// overlays.
func (p *Entry) Asks(joint string) []string {
	return slices.DeleteFunc(slices.Clone(p.Needs), func(name string) bool {
		switch name {
		case "hole", "count":
			return joint != "plug" && (p.Name == "strength" || p.Name == "cost" && name == "hole")
		case "layer", "shaft-dia":
			return joint != "overlay" && p.Name == "cost"
		}
		return false
	})
}

// ComputedPages names the pages that are computed from a card alone.
func ComputedPages() (names []string) {
	for _, s := range contents {
		if s.Of != nil {
			names = append(names, s.Name)
		}
	}
	return names
}

// PageNames turns a typed list of pages into names; "all" alone gives an empty list. The error for an unknown
// name says what may be typed.
func PageNames(text string) ([]string, error) {
	all := ComputedPages()
	hint := "type all, or any of " + strings.Join(all, ", ") + ", with commas"
	names := calc.TypedWords(text)
	for _, w := range names {
		switch {
		case w == "all":
			return nil, nil
		case !slices.Contains(all, w):
			return nil, mistake.In("show", "no page is called "+strconv.QuoteToASCII(w), hint)
		}
	}
	if len(names) == 0 {
		return nil, mistake.In("show", "no page is named", hint)
	}
	return names, nil
}
