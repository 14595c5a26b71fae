package tui

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"brazebooth/calc"
	"brazebooth/calc/correct"
	"brazebooth/calc/practice"
	"brazebooth/internal/mistake"
	"brazebooth/internal/quantity"
	"brazebooth/internal/report"
	"brazebooth/tables"
)

// The rows of the form: what a power source does, then the sizes of a cut bead, then the rhythm of a timed arc.
const (
	askSource = iota
	askPull
	askPullAgain
	askStickOut
	askAmps
	askVolts
	askFeedDial
	askVoltsDial
	askTravel
	askSeen
	askVerdict
	askWidth
	askLeg
	askThroat
	askZinc
	askOn
	askOff
	askStep
	askSave
	measureCount
)

const (
	pullRule = "the length of wire, 635mm or 25in; space starts and stops the watch, without it 6 seconds are meant"
	dialRule = "where its dial stands, by the power source's own marks; empty leaves it out"
	laidRule = "as it was laid; empty: as on the card"
)

// length is a row for a length measured with a rule or a caliper.
func length(ask, rule string) formRow {
	return formRow{ask: ask, rule: rule + "; empty leaves it out", field: quantity.FieldLength, unit: "mm"}
}

var measureRows = [measureCount]formRow{
	askSource: {ask: "power source"},
	askPull: {ask: "wire pull", how: "measure-feed", rule: pullRule, field: quantity.FieldLength, unit: "mm",
		timed: true},
	askPullAgain: {ask: "second pull", how: "measure-feed", rule: pullRule, field: quantity.FieldLength, unit: "mm",
		timed: true},
	askStickOut: {ask: "stick-out", how: "measure-stick-out", rule: "from tip to arc: 12mm or 1/2in",
		field: quantity.FieldStickOut, figure: "stickout", unit: "mm"},
	askAmps: {ask: "amps", how: "measure-arc", rule: "after the first second: 93A", field: quantity.FieldCurrent,
		unit: "A"},
	askVolts: {ask: "volts", how: "measure-arc", rule: "while the arc burns, 14.8V; empty leaves them out",
		field: quantity.FieldVoltage, figure: "volts", unit: "V"},
	askFeedDial:  {ask: "feed dial", rule: dialRule, field: quantity.FieldMark, unit: "marks"},
	askVoltsDial: {ask: "volts dial", rule: dialRule, field: quantity.FieldMark, unit: "marks"},
	askTravel: {ask: "travel", how: "measure-travel", rule: "space starts and stops the watch while 100 mm are laid, " +
		"or type another length after; or type 16s/100mm; empty leaves it out", field: quantity.FieldTravel,
		figure: "travel", unit: "mm/s", timed: true},
	askSeen: {ask: "bead shows", rule: "what it looks like, as rolled edge; several with commas; empty leaves it out",
		over: "── the bead"},
	askVerdict: {ask: "bead is", rule: "good, acceptable or bad; empty: as it looks"},
	askWidth:   length("bead width", "from toe to toe: 6.1mm"),
	askLeg:     length("leg", "from the joint to the toe on the second member: 3mm"),
	askThroat:  length("throat", "the least that carries load, on a bead that was cut across: 1.2mm"),
	askZinc:    length("bare zinc", "from the joint to where the first member's zinc is left: 4mm"),
	askOn:      {ask: "arc on", rule: laidRule, field: quantity.FieldDuration, figure: "arc_on", unit: "s"},
	askOff:     {ask: "arc off", rule: laidRule, field: quantity.FieldDuration, figure: "arc_off", unit: "s"},
	askStep:    {ask: "spot step", rule: laidRule, field: quantity.FieldLength, figure: "spot_step", unit: "mm"},
	askSave:    {ask: "keep it", rule: "all of it is kept, or nothing; ↑ goes back to the rows"},
}

const (
	pullTime   = 6    // s, the usual time of a wire pull that was not timed
	alike      = 0.03 // how much two pulls may differ, as a share
	widestBead = 100  // mm
)

// read is the number on a row, in its unit (m/min for a pull), not set if there is none, and how the row was read. An
// error says what to type instead.
func (p *measurePage) read(at int) (v calc.Opt, said string, err error) {
	row, text := &measureRows[at], p.values[at]
	switch {
	case at == askSave || !p.asked(at) || text == "" && (at != askTravel || p.seconds[at] == 0):
		return v, "", nil
	case at == askSource && p.known(text):
		return v, "in the book", nil
	case at == askSource:
		return v, "a new one", nil
	case at == askSeen:
		said, err = seenOf(text, p.mode)
		return v, said, err
	case at == askVerdict:
		said, err = verdictOf(text)
		return v, said, err
	case at == askPull, at == askPullAgain:
		v.V, said, err = p.pulled(at)
	case at == askTravel:
		v.V, err = travelOf(text, p.seconds[at])
	default:
		v.V, err = quantity.Read(row.field, text)
	}
	if err == nil && at >= askWidth && at <= askZinc && !(v.V > 0 && v.V <= widestBead) {
		err = mistake.New(text+" is no size of a bead", "type it in mm, over 0 and at most 100: 6.1mm")
	}
	switch {
	case err != nil:
		return calc.Opt{}, "", err
	case row.figure != "":
		said = quantity.ShowDialed(row.figure, v.V, row.unit, p.units)
	case said == "":
		said = quantity.Show(v.V, row.unit, p.units)
	}
	return calc.Some(v.V), said, nil
}

// seenOf reads what a bead shows, in the words of the list of sights.
func seenOf(text, mode string) (string, error) {
	ids, err := correct.SeenIDs(tables.SightsSaid(text))
	if err == nil {
		err = correct.Possible(ids, mode)
	}
	if err != nil {
		return "", err
	}
	return report.SeenText(ids), nil
}

func verdictOf(text string) (string, error) {
	for _, word := range [...]string{practice.BeadGood, practice.BeadAcceptable, practice.BeadBad} {
		if strings.EqualFold(text, word) {
			return word, nil
		}
	}
	return "", mistake.New(text+" is no verdict", "type good, acceptable or bad")
}

// pulled turns a length of wire into a feed, m/min, by the watch or by six seconds. The second pull must be like the
// first.
func (p *measurePage) pulled(at int) (feed float64, said string, err error) {
	l, err := quantity.Read(quantity.FieldLength, p.values[at])
	if err != nil {
		return 0, "", err
	}
	seconds := p.seconds[at]
	if seconds == 0 {
		seconds = pullTime
	}
	if seconds < 1 {
		return 0, "", mistake.New(fmt.Sprintf("%.1f s is too short a pull", seconds), "let it run about 6 seconds")
	}
	feed = l * 60 / seconds / 1000
	said = fmt.Sprintf("%s in %.1f s: %s", quantity.Show(l, "mm", p.units), seconds,
		quantity.Show(feed, "m/min", p.units))
	if at == askPullAgain {
		first := p.value(askPull)
		if d := math.Abs(feed/first.V - 1); first.Set && d > alike {
			return 0, "", mistake.New(fmt.Sprintf("the two pulls differ by %.0f %%", 100*d),
				"look at rolls and liner, then pull twice again")
		}
	}
	return feed, said, nil
}

// travelOf turns a bead's length and the watch, or typed text, into a travel, mm/s, that is possible by hand.
func travelOf(text string, seconds float64) (v float64, err error) {
	if seconds == 0 {
		if v, err = quantity.Read(quantity.FieldTravel, text); err != nil {
			return 0, mistake.New(text+" is no travel", "type 16s/100mm or 6.3mm/s; or space starts and stops the "+
				"watch here, then the bead's length; empty leaves travel out")
		}
	} else {
		l := 100.0
		if text != "" {
			if l, err = quantity.Read(quantity.FieldLength, text); err != nil {
				return 0, err
			}
		}
		v = l / seconds
	}
	least, most, _, _ := calc.Span("travel")
	if !(v >= least && v <= most) {
		return 0, mistake.New(fmt.Sprintf("a travel of %.1f mm/s", v), fmt.Sprintf("a hand moves between %.1f "+
			"and %.0f mm/s: time it again", least, most))
	}
	return v, nil
}

func (p *measurePage) known(name string) bool {
	return slices.ContainsFunc(p.sources, func(s string) bool { return strings.EqualFold(s, name) })
}

// asked reports whether a row is asked: the rhythm only for a timed arc.
func (p *measurePage) asked(at int) bool { return p.mode == "timed" || at < askOn || at > askStep }
