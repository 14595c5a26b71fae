package linear

import (
	"fmt"

	"brazebooth/calc"
	"brazebooth/internal/report"
)

// tell reads a finding out to who has heard the card.
func (t *talk) tell(blocks []report.Block) {
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
	report.Stop: "Stop! ", report.Caution: "Caution: ", report.Note: "Note: ", report.VerdictIs: "Verdict: ", report.Instead: "Instead: ",
	report.Change: "Change: ", report.For: "For it: ", report.Against: "Against it: ",
}

// line reads out one line. Pictures are for the eye, and the sources of reasons are told when they are asked for.
func (t *talk) line(l *report.Line) {
	switch l.Kind {
	case report.Gap, report.Picture, report.Source, report.Formula, report.PutIn, report.LeansOn:
	case report.Subject:
		t.voice.say(sentence(first(l.Lead)), " ", sentence(first(l.Text)))
	case report.Rank:
		t.voice.say(fmt.Sprintf("%d: ", l.N), sentence(l.Text))
	case report.FigureRow:
		t.voice.say(first(t.figure(l.Row, assumedWord(l.Row))))
	case report.Reason:
		t.voice.say(sentence(first(l.Text)), " Known: ", calc.KnownWords(l.Known), ".")
	case report.Change, report.VerdictIs, report.Instead, report.For, report.Against:
		t.voice.say(leads[l.Kind], sentence(l.Text))
	case report.MayGive:
		t.voice.show("You may also give: " + l.Text + ".")
	case report.Edge, report.Limit, report.Remedy, report.Turns, report.Setting:
		t.voice.say(first(l.Lead), ": ", sentence(l.Text))
	default:
		t.voice.say(leads[l.Kind], sentence(first(l.Text)))
	}
}

func assumedWord(r *report.Row) string {
	if r.Assumed {
		return "assumed"
	}
	return ""
}
