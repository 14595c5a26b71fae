package tui

import (
	"fmt"
	"math"
	"strings"
	"time"

	"charm.land/bubbles/v2/key"
	tea "charm.land/bubbletea/v2"

	"brazebooth/calc"
	"brazebooth/internal/mistake"
	"brazebooth/internal/quantity"
)

// measurePage guides through a reading of the booth, one thing at a time: power source, wire pull twice, stick-out,
// amps,
// volts, travel; then it goes into the book and narrows the card.
type measurePage struct {
	at      int
	field   field
	sources []string
	source  string
	kept    string     // the power source of the last reading that is in the book
	fresh   string     // a name that is not known, once typed
	feeds   [2]float64 // m/min
	reading calc.Reading
	travel  float64 // mm/s
	watch   stopwatch
	said    string
	typed   [askSave + 1]typed
	view    window // what does not fit is scrolled to
	busy    bool   // a reading is on its way to the book
}

// typed is what a step was answered with.
type typed struct {
	text    string
	seconds float64 // by the watch
}

// stopwatch is started and stopped by the space bar.
type stopwatch struct {
	began   time.Time
	running bool
	seconds float64 // of the last run; 0 before any
}

// stamped is the moment of a key.
type stamped struct{ at time.Time }

// measured is the book's answer to a reading.
type measured struct {
	job  calc.Job
	said string
	err  error
}

// The steps.
const (
	askSource = iota
	askPull
	askPullAgain
	askStickOut
	askAmps
	askVolts
	askTravel
	askSave
)

// measureStep is what a step asks, how it is done and how it is read.
var measureSteps = [...]struct {
	ask, how string
	field    quantity.Field
}{
	askSource:    {"power source", "", 0},
	askPull:      {"wire that came out", "measure-feed", quantity.FieldLength},
	askPullAgain: {"wire, once more", "measure-feed", quantity.FieldLength},
	askStickOut:  {"stick-out", "measure-stick-out", quantity.FieldStickOut},
	askAmps:      {"amps", "measure-arc", quantity.FieldCurrent},
	askVolts:     {"volts", "measure-arc", quantity.FieldVoltage},
	askTravel:    {"bead's length", "measure-travel", 0},
	askSave:      {"keep it", "", 0},
}

// pullTime is the usual time of a wire pull where nothing was timed, s.
const pullTime = 6

// alike is how far apart two pulls may be.
const alike = 0.03

func (p *measurePage) timed() bool {
	return p.at == askPull || p.at == askPullAgain || p.at == askTravel
}

func (p *measurePage) update(msg tea.Msg, k *keyMap) action {
	if p.busy && pasted(msg) {
		return nil // it is on its way as it stands
	}
	return typeInto(&p.field, msg, func(key tea.KeyPressMsg) action { return p.press(key, k) })
}

func (p *measurePage) press(msg tea.KeyPressMsg, k *keyMap) action {
	switch {
	case p.busy: // it is not sent twice, nor changed under way
		if p.field.empty() && key.Matches(msg, k.Back) {
			return goBack
		}
		return nil
	case key.Matches(msg, k.On):
		return p.next()
	case p.timed() && p.field.empty() && key.Matches(msg, k.Play):
		return stampNow
	case msg.String() == "esc" && !p.field.empty():
		p.field.clear()
		return nil
	case msg.String() == "up" && p.at > 0:
		p.to(p.at - 1)
		return nil
	case msg.Text == "" && !key.Matches(msg, k.Up) && p.view.scrolled(msg, k):
		return nil
	case p.field.empty() && turnBy(msg) != 0:
		return turnPage(turnBy(msg))
	case p.field.empty() && key.Matches(msg, k.Back):
		return goBack
	}
	p.field.edit(msg)
	return nil
}

// stampNow asks for the moment of a key.
func stampNow(m *root) tea.Cmd {
	now := m.now
	return func() tea.Msg { return stamped{now()} }
}

func (msg stamped) tell(m *root) (tea.Cmd, bool) {
	m.meter.stamp(msg.at)
	return nil, true
}

// stamp starts or stops the watch.
func (p *measurePage) stamp(at time.Time) {
	if p.watch.running {
		p.watch.running, p.watch.seconds = false, at.Sub(p.watch.began).Seconds()
		return
	}
	p.watch = stopwatch{began: at, running: true}
}

// next takes what is typed and goes on; a fault says what to type.
func (p *measurePage) next() action {
	if p.watch.running {
		return refuse(fault{"the watch runs", "space stops it"})
	}
	text := strings.TrimSpace(p.field.String())
	if err := p.take(text); err != nil {
		return refuse(*faultOf(err))
	}
	if p.at == askSave {
		return withBook(keepReading)
	}
	p.typed[p.at] = typed{text, p.watch.seconds}
	at := p.at
	p.to(p.at + 1)
	if at == askSource && p.known(p.source) {
		return withBook(recall(p.source))
	}
	return nil
}

// to goes to a step, with what it was answered before.
func (p *measurePage) to(at int) {
	p.at, p.view = at, window{}
	p.field.clear()
	p.field.insert(p.typed[at].text)
	p.watch = stopwatch{seconds: p.typed[at].seconds}
}

// take reads one step's text.
func (p *measurePage) take(text string) error {
	switch p.at {
	case askSource:
		if text == "" && len(p.sources) > 0 {
			text = p.sources[0]
		}
		if text == "" {
			return mistake.New("a reading without a power source", "type its name, as booth 1")
		}
		if len(p.sources) > 0 && !p.known(text) && p.fresh != text {
			p.fresh = text
			return mistake.New("no power source is called "+text, "enter once more makes it a new one")
		}
		p.source = text
	case askPull:
		return p.pull(text, 0)
	case askPullAgain:
		if err := p.pull(text, 1); err != nil {
			return err
		}
		if d := math.Abs(p.feeds[1]/p.feeds[0] - 1); d > alike {
			p.typed[askPull], p.typed[askPullAgain] = typed{}, typed{}
			p.to(askPull) // both anew
			return mistake.New(fmt.Sprintf("the two pulls differ by %.0f %%", 100*d),
				"look at rolls and liner, then pull twice again")
		}
		p.reading.Feed = (p.feeds[0] + p.feeds[1]) / 2
	case askStickOut:
		return number1(quantity.FieldStickOut, text, &p.reading.StickOut)
	case askAmps:
		return number1(quantity.FieldCurrent, text, &p.reading.Amps)
	case askVolts:
		if text == "" {
			p.reading.Volts = 0
			return nil
		}
		return number1(quantity.FieldVoltage, text, &p.reading.Volts)
	case askTravel:
		return p.bead(text)
	}
	return nil
}

func (p *measurePage) known(name string) bool {
	for _, s := range p.sources {
		if strings.EqualFold(s, name) {
			return true
		}
	}
	return false
}

func number1(field quantity.Field, text string, to *float64) error {
	v, err := quantity.Read(field, text)
	if err == nil {
		*to = v
	}
	return err
}

// pull turns a length of wire into a feed, by the watch or by six seconds.
func (p *measurePage) pull(text string, i int) error {
	l, err := quantity.Read(quantity.FieldLength, text)
	if err != nil {
		return err
	}
	seconds := p.watch.seconds
	if seconds == 0 {
		seconds = pullTime
	}
	if seconds < 1 {
		return mistake.New(fmt.Sprintf("%.1f s is too short a pull", seconds), "let it run about 6 seconds")
	}
	p.feeds[i] = l * 60 / seconds / 1000
	return nil
}

// bead turns a bead's length and the watch into a travel; nothing typed and timed leaves it out.
func (p *measurePage) bead(text string) error {
	if p.watch.seconds == 0 {
		p.travel = 0
		if text == "" {
			return nil
		}
		v, err := quantity.Read(quantity.FieldTravel, text)
		if err != nil {
			return mistake.New(text+" is no travel", "type 16s/100mm or 6.3mm/s; or space starts and stops the "+
				"watch here, then the bead's length; enter alone leaves travel out")
		}
		return p.moved(v)
	}
	l := 100.0
	if text != "" {
		v, err := quantity.Read(quantity.FieldLength, text)
		if err != nil {
			return err
		}
		l = v
	}
	return p.moved(l / p.watch.seconds)
}

// moved takes a travel, mm/s, that a hand can have had.
func (p *measurePage) moved(travel float64) error {
	least, most, _, _ := calc.Span("travel")
	if !(travel >= least && travel <= most) {
		return mistake.New(fmt.Sprintf("a travel of %.1f mm/s", travel), fmt.Sprintf("a hand moves between %.1f "+
			"and %.0f mm/s: time it again", least, most))
	}
	p.travel = travel
	return nil
}
