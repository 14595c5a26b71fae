package tui

import (
	"fmt"
	"strings"

	"charm.land/bubbles/v2/key"
	tea "charm.land/bubbletea/v2"

	"brazebooth/calc"
	"brazebooth/internal/report"
	"brazebooth/tui/canvas"
)

// boothPage is for a screen that is read from some steps away: the verdict, and five figures in digits as large as the
// terminal allows, each always in its place. The sixth place has the most serious caution, or the beat of a timed arc.
// The arrows pick a figure and change it.
type boothPage struct {
	at   int // the figure under the cursor
	kept [2]canvas.Cached[canvas.Dials]
}

// boothColumns is how many places are beside each other.
const boothColumns = 3

// openBooth opens the view and plays the beat of a timed arc in it.
func openBooth(m *root) tea.Cmd {
	m.booth.at = 0
	m.push(&m.booth)
	return m.playInBooth()
}

// playInBooth plays the beat of a timed arc in the booth view when its heat has been computed.
func (m *root) playInBooth() tea.Cmd {
	if !m.isOpen(&m.booth) || !m.timed() || !m.followed || m.beat.plays {
		return nil
	}
	return m.beat.start()
}

func (m *root) timed() bool { return m.session.card.Used.Mode == "timed" }

func (*boothPage) left(m *root) { m.beat.halt() }

func (p *boothPage) about(m *root) about {
	a := about{help: "in the booth view", full: true, term: m.card.about(m).term,
		keys: "←→ pick  ↑↓ change  c cautions  esc card"}
	if m.timed() {
		a.keys += "  space play, stop"
	}
	return a
}

// press picks and changes figures. A key without a function here says which keys have one.
func (p *boothPage) press(m *root, press tea.KeyPressMsg) action {
	rows := m.boothRows()
	p.at = min(p.at, len(rows)-1)
	switch pick, turn := settingKey(press); {
	case key.Matches(press, bound.Back), key.Matches(press, bound.Booth):
		return goBack
	case pick != 0:
		p.at = (p.at + len(rows) + pick) % len(rows)
		return nil
	case turn != 0 && m.beat.stop != nil && m.unsettled(rows[p.at].name):
		return tooEarly
	case turn != 0:
		return rows[p.at].turn(&m.session, turn, false)
	case key.Matches(press, bound.Play), press.Text == " ":
		if m.timed() {
			return startBeat
		}
	case key.Matches(press, bound.Cautions):
		return openPoints
	case key.Matches(press, bound.Reset):
		return rows[p.at].reset(&m.session)
	}
	return refuse(press.String()+" does nothing here", "←→ pick, ↑↓ change, esc goes back to the card")
}

// boothRows are the figures of the view: those that are set or timed by hand.
func (m *root) boothRows() []cardRow {
	names := []string{"wire_feed", "volts", "travel", "gas_flow", "stickout"}
	if m.timed() {
		names = []string{"wire_feed", "volts", "travel", "arc_on", "arc_off"}
	}
	var rows []cardRow
	for _, name := range names {
		for _, r := range m.card.rows {
			if r.name == name && r.numbered() {
				rows = append(rows, r)
			}
		}
	}
	return rows
}

// boothDials are the figures as loud dials, in the colour of the verdict.
func (m *root) boothDials(at int) canvas.Dials {
	rows := m.boothRows()
	list := dialsOf(m, rows, &m.session.card)
	for i := range list {
		d := &list[i]
		d.Name, d.Short = strings.ToUpper(rows[i].label), strings.ToUpper(d.Short)
		d.Loud, d.Lit, d.Cursor, d.Also = true, true, i == at, ""
	}
	return list
}

// view puts the figures into a grid that changes only with the terminal's size.
func (p *boothPage) view(m *root, w, h int) (block, *tea.Cursor) {
	list := m.boothDials(p.at)
	p.at = min(p.at, len(list)-1)
	rows := (len(list) + boothColumns - 1) / boothColumns
	each := h / rows
	column := (w+2)/boothColumns - 2
	if m.w < narrowWidth || each < 6 || column < 36 && m.stopsUnsaid() {
		return p.low(m, list, w, h), nil
	}
	var b block
	if h > rows*each {
		b.skip()
	}
	b.addAll(block(p.kept[0].Draw(list[:boothColumns], m.th.Theme, w, each)))
	b = b.fit(h - each)
	wide := (len(list)-boothColumns)*(column+2) - 2
	under := append(block{}, p.kept[1].Draw(list[boothColumns:], m.th.Theme, wide, each)...).fit(each)
	b.addAll(beside(under, p.aside(m, column, each), wide+2, m.th.quiet, ""))
	return b, nil
}

// low is the layout for a screen without room for the grid: the figures below each other, then the dangers.
func (p *boothPage) low(m *root, list canvas.Dials, w, h int) block {
	room := h / 3
	if m.stopsUnsaid() { // stops are more important than large digits
		room = h - len(list)
	}
	foot := p.aside(m, w, max(1, min(h-len(list), room)))
	if h-len(foot) < len(list) { // a stop is never cut to make room for a figure
		return foot.fit(h)
	}
	b := append(block{}, p.kept[0].Draw(list, m.th.Theme, w, h-len(foot))...)
	return append(b.fit(h-len(foot)), foot...)
}

// aside is the sixth place: the beat of a timed arc, otherwise the dangers that the strip does not show.
func (p *boothPage) aside(m *root, w, h int) block {
	if !m.timed() || h < 3 || m.session.card.Stopped() {
		return m.boothDangers(w, h)
	}
	foot := m.boothDangers(w, 1)
	b := p.burning(m, w, h-len(foot)-1)
	return append(b.fit(h-len(foot)), foot...)
}

// boothDangers shows first the stops, then the dangers at the arc with the deadliest first, then this job's own
// cautions, as many as there is room for.
func (m *root) boothDangers(w, h int) block {
	c, said := &m.session.card, m.lampSays()
	names := dangerBand(&m.th, c, map[string]bool{said: true}, w)
	var b block
	for _, x := range unsaidStops(c, said) {
		if room := h - len(names) - len(b); room > 0 {
			b.addAll(cautionPart(&m.th, &x, w, room))
		}
	}
	b.addAll(names)
	for i := range c.Warnings {
		x := &c.Warnings[i]
		if lines := cautionLines(&m.th, x, w); x.Severity == calc.Caution && x.Code != said && !ofEveryArc(x) &&
			len(b)+len(lines) <= h {
			b.addAll(lines)
		}
	}
	return b
}

// burning fills its place while the arc burns. Until it can be played, it shows how much of the heat has been computed.
func (p *boothPage) burning(m *root, w, h int) (b block) {
	switch {
	case m.beat.stop != nil:
		b.say(m.th.quiet, 0, m.beat.rough(), w)
		return b
	case !m.beat.plays:
		b.say(m.th.quiet, 0, "space plays the beat", w)
		return b
	}
	spot, share, _ := m.beat.phase()
	on, off := report.BeatOf(&m.beat.have)
	l := canvas.Lamp{Word: "OFF", Note: fmt.Sprintf("spot %d", spot)}
	if share*(on+off) < on {
		l.Word, l.Lit = "ON", true
	}
	return block(l.Draw(m.th.Theme, w, h))
}
