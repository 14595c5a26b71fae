package linear

import (
	"fmt"
	"strings"

	"brazebooth/calc"
	"brazebooth/calc/advice"
	"brazebooth/internal/choice"
	"brazebooth/internal/report"
)

// readPage reads out a page beside the card.
func (t *talk) readPage(page *advice.Entry) {
	p, err := page.Answer(t.ctx, &t.card)
	if err != nil {
		t.fault(err)
		return
	}
	t.part = &p
	t.stops()
	t.readPart(&p)
	if open := choice.Open(&t.job, page.Needs); len(open) > 0 {
		t.voice.show("You may also give: " + strings.Join(open, ", ") + ".")
	}
}

// readPart reads out what is a page's own: the verdict and the dangers before figures and reasons.
func (t *talk) readPart(p *advice.Page) {
	if p.Verdict != "" {
		t.voice.say("Verdict: ", strings.ToLower(report.VerdictText(p.Verdict)), ".")
	}
	for _, x := range p.Instead {
		t.voice.say("Instead: ", sentence(x))
	}
	for i := range p.Warnings {
		t.danger(&p.Warnings[i])
	}
	t.ranking(p)
	for i := range p.Figures {
		t.voice.say(first(t.figure(&p.Figures[i], t.remark(&p.Figures[i]))))
	}
	if len(p.Order) > 0 {
		t.voice.say("Along the seam the pieces are laid in these turns, each back toward the finished end: ", strings.Join(p.Order, ", "), ".")
	}
	topic := ""
	for _, r := range p.Reasons {
		if r.Topic != topic {
			topic = r.Topic
			t.voice.say(first(topic), ".")
		}
		t.voice.say(sentence(first(r.Text)), " Known: ", calc.KnownWords(r.Known), ".")
	}
}

// ranking is every filler, the best first.
func (t *talk) ranking(p *advice.Page) {
	for i := range p.Ranking {
		r := &p.Ranking[i]
		facts := report.FillerFacts(r, p.Card.Used.Currency)
		if r.RuledOut {
			facts = "ruled out"
		}
		t.voice.say(fmt.Sprintf("%d: ", i+1), r.ID, ", ", r.Name, ": ", facts, ".")
		for _, x := range r.For {
			t.voice.say("For it: ", sentence(x.Text))
		}
		for _, x := range r.Against {
			t.voice.say("Against it: ", sentence(x.Text))
		}
	}
}
