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

// figure is a figure as a sentence: "Wire feed 6.35 metres per minute, good between 5.9 and 6.8, suggested." The text
// added comes after the value, before the remark.
func figure(r *report.Row, added string) string {
	name := label(r.Figure.Name)
	text := capital(name) + " " + value(r)
	named := strings.HasSuffix(name, " member") // then a remark need not name it
	for _, a := range append([]string{added}, strings.Split(r.Long, ", ")...) {
		if a != "" && !(named && strings.HasSuffix(a, " member")) {
			text += ", " + a
		}
	}
	return text + "."
}

// setting is a figure of the card as a sentence that also says whether it was given, assumed or suggested.
func (t *talk) setting(f *calc.Figure) string { return figure(t.row(f), origin(&t.card, f.Name)) }

// row is the row of a card's figure.
func (t *talk) row(f *calc.Figure) *report.Row {
	r := report.RowOf(&t.card, f, report.OfCard, t.units)
	return &r
}

// value is a figure's number and band; in both systems if both were asked for.
func value(r *report.Row) string {
	text := valueIn(&r.Value, r.Range)
	if r.Other.Number != "" {
		text += ", or " + valueIn(&r.Other, r.Range)
	}
	return text
}

// between is how a band is read out, by its meaning.
var between = [...]string{", between ", ", good between ", ", usual between ", ", works between ",
	", between "}

func valueIn(v *report.Value, of report.Meaning) string {
	text := inUnit(v.Number, v.Unit)
	if v.Low != "" {
		text += between[of] + inUnit(v.Low, "") + " and " + inUnit(v.High, "")
	}
	return text
}

// label is a figure's plain name. A member's number is put into words, otherwise it would sound like the figure's
// value. A label that contains a unit is replaced by the full name.
func label(name string) string {
	text := calc.FigureLabel(name)
	if strings.Contains(text, "/") {
		text = strings.ReplaceAll(name, "_", " ")
	}
	for i, member := range [...]string{"first", "second"} {
		if base, ok := strings.CutSuffix(text, fmt.Sprint(" ", i+1)); ok {
			return base + " on the " + member + " member"
		}
	}
	return text
}

// origin says whether a setting was given, assumed or suggested; "" for a figure that follows from others.
func origin(card *calc.Card, figure string) string {
	c := choice.SettingOf(figure)
	switch {
	case c == nil:
		return ""
	case c.Given(&card.Job):
		return "yours"
	case c.Assumed(card) != "":
		return "assumed"
	case figure == "wire_feed" && card.Job.Amps.Set:
		return "from your amps"
	case figure == "gas_flow":
		return "usual"
	case figure != "wire_feed" && (figure != "travel" || card.Used.Mode == "timed"):
		return "computed"
	case card.Warned("no-good-setting"):
		return "the nearest miss"
	}
	return "suggested"
}
