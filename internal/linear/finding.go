package linear

import (
	"fmt"

	"brazebooth/calc"
	"brazebooth/calc/advice"
	"brazebooth/internal/choice"
	"brazebooth/internal/report"
)

// readPage reads out a page beside the card.
func (t *talk) readPage(page *advice.Entry) {
	p, err := page.Answer(t.ctx, &t.card)
	if t.failed("", err) {
		return
	}
	t.page = &p
	t.tell(report.Page(&p, choice.Open(&t.job, page.Asks(t.card.Used.Joint)))...)
}

// readTimed reads out on time, off time and step of a timed arc on this joint.
func (t *talk) readTimed(string) {
	s, err := calc.SolveTimed(t.ctx, t.job, nil)
	if t.failed("", err) {
		return
	}
	t.tell(report.Timed(&s)...)
	if t.job.Mode != "timed" {
		t.voice.show("mode timed puts this on the card.")
	}
}

// readWindow says in words what the operating window shows.
func (t *talk) readWindow(string) {
	m, err := calc.WindowOf(t.ctx, t.job, calc.FullWindow, nil)
	if t.failed("", err) {
		return
	}
	var given *calc.Card
	if j := &t.job; j.Feed.Set || j.Amps.Set || j.Travel.Set {
		given = &t.card
	}
	t.tell(report.Window(&m, given)...)
}

// tell reads out a finding to a user who has heard the card already.
func (t *talk) tell(blocks ...report.Block) {
	t.say(blocks, report.Options{Units: t.units, Heard: true, Beside: true})
}

func (t *talk) say(blocks []report.Block, o report.Options) {
	lines := report.Words(blocks, o)
	for i := range lines {
		t.line(&lines[i])
	}
}

// leads are the words before a line of each kind.
var leads = map[report.Kind]string{
	report.Stop: "Stop! ", report.Caution: "Caution: ", report.Note: "Note: ",
	report.FitVerdict: capital(report.FitLabel) + ": ",
	report.Instead:    "Instead: ", report.Change: "Change: ", report.For: "For it: ", report.Against: "Against it: ",
}

// line reads out one line. Pictures are left out, and the sources of reasons are read only when the user asks for them.
func (t *talk) line(l *report.Line) {
	switch l.Kind {
	case report.Gap, report.Picture, report.Source, report.Formula, report.PutIn, report.LeansOn:
	case report.Subject:
		t.voice.say(sentence(capital(l.Lead)), " ", sentence(capital(l.Text)))
	case report.Rank:
		t.voice.say(fmt.Sprintf("%d: ", l.N), sentence(l.Text))
	case report.FigureRow:
		assumed := ""
		if l.Row.Assumed {
			assumed = "assumed"
		}
		t.voice.say(figure(l.Row, assumed))
	case report.Reason:
		t.voice.say(sentence(capital(l.Text)), " Known: ", calc.KnownWords(l.Known), ".")
	case report.Change, report.FitVerdict, report.Instead, report.For, report.Against:
		t.voice.say(leads[l.Kind], sentence(l.Text))
	case report.MayGive:
		t.voice.show("You may also give: " + l.Text + ".")
	case report.CardVerdict, report.Edge, report.Limit, report.Remedy, report.Turns, report.Setting:
		t.voice.say(capital(l.Lead), ": ", sentence(l.Text))
	case report.Assume:
		t.voice.say(capital(choice.Plain(l.Lead)), " ", l.Value, ": ", sentence(l.Text))
	default:
		t.voice.say(leads[l.Kind], sentence(capital(l.Text)))
	}
}
