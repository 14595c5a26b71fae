package report

import (
	"slices"

	"brazebooth/calc"
	"brazebooth/calc/advice"
	"brazebooth/tables"
)

// Card is everything on a card, in its order.
func Card(c *calc.Card) []Block {
	list := []Block{Head{Card: c}, stopsOf(c)}
	return append(append(list, cardBody(c)...), cautionsOf(c), Assumed{c.Assumed})
}

// cardBody is the part that only the card shows.
func cardBody(c *calc.Card) []Block {
	return []Block{Figures{Card: c, List: c.Figures}, Edges{c, true}, Notes{c.Notes}, Section{c.Section}}
}

// Kept is a card as it was saved.
func Kept(c *calc.Card) []Block {
	return []Block{stopsOf(c), Figures{c, c.Figures, OfKept}, Edges{c, true}, cautionsOf(c)}
}

// Wire is the card of a wire alone.
func Wire(c *calc.Card) []Block {
	return []Block{Head{Card: c, WireOnly: true}, Figures{Card: c, List: c.Figures}, cautionsOf(c)}
}

// Page is a page beside the card. open are the choices that it asks for and that were not given.
func Page(p *advice.Page, open []string) []Block {
	return []Block{Head{Card: &p.Card, Title: "Page " + p.Name}, stopsOf(&p.Card),
		Chapter{Page: p.Name, Blocks: body(p, false)}, Cautions{dangers(&p.Card, p.Warnings), true, true},
		Assumed{p.Card.Assumed}, Open{open}}
}

// body is the part that only this page shows; brief for a page among all the others.
func body(p *advice.Page, brief bool) []Block {
	return []Block{Fit{p.Verdict, p.Instead}, Correction{p.Correction},
		Ranking{p.Ranking, p.Card.Used.Currency, brief}, Figures{&p.Card, p.Figures, OfPage},
		Order{p.Order}, Reasons{p.Reasons}, Cautions{List: p.Warnings}}
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
				list = append(list, Chapter{string(chapter) + ": " + p.Name, p.Name, body(p, true)})
			}
		}
	}
	return append(list, Chapter{Title: "Cautions", Blocks: []Block{cautionsOf(c)}},
		Chapter{Title: "Check these first: assumed, since nobody gave them",
			Blocks: []Block{Checks{advice.CheckFirst(c)}}})
}

// cautionsFirst orders a page for a listener: its answer and the one change, then cautions, then figures and reasons.
func cautionsFirst(list []Block) []Block {
	turn := func(b Block) int {
		switch b.(type) {
		case Fit, Correction:
			return 0
		case Cautions:
			return 1
		}
		return 2
	}
	return slices.SortedStableFunc(slices.Values(list), func(a, b Block) int { return turn(a) - turn(b) })
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
