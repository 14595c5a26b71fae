package tui

import (
	"cmp"
	"fmt"

	"charm.land/bubbles/v2/key"
	tea "charm.land/bubbletea/v2"

	"brazebooth/internal/choice"
)

func (p *cardPage) press(m *root, press tea.KeyPressMsg) action {
	s, row := &m.session, p.row()
	if p.typing {
		return p.edit(press, func() action {
			return s.set(choice.SettingOf(row.name), &p.field, row.label+" is yours now",
				func() { p.valueField = valueField{} })
		})
	}
	dotted := p.dotted
	p.dotted = false
	_, turn := settingKey(press)
	switch text := press.String(); {
	case len(text) == 1 && text[0] >= '0' && text[0] <= '9':
		if dotted {
			return p.chip(int(text[0] - '0'))
		}
		return p.begin(text, row)
	case press.Code == tea.KeyExtended && choice.SettingOf(row.name) != nil: // pasted
		return p.begin(text, row)
	case text == ".", text == ",":
		p.nextDial()
		p.dotted = true
		return nil
	case p.moveCursor(press, row):
		return nil
	case m.beat.stop != nil && m.unsettled(row.name) && (turn != 0 || key.Matches(press, bound.On, bound.Why)):
		return tooEarly
	case turn != 0:
		return row.turn(s, turn, text == "up" || text == "down")
	}
	return p.handle(press, s, row, dotted)
}

// handle handles the keys that neither move the cursor nor change a value by a step.
func (p *cardPage) handle(press tea.KeyPressMsg, s *session, row *cardRow, dotted bool) action {
	switch on := key.Matches(press, bound.On); {
	case key.Matches(press, bound.Reset):
		return row.reset(s)
	case key.Matches(press, bound.ResetAll):
		return resetAll(s)
	case on && dotted && choice.SettingOf(row.name) != nil:
		p.typing = true // after "." a digit would be the number of a chip
		return nil
	case on && row.ask != nil:
		return openAsk(row.ask)
	case on, key.Matches(press, bound.Why):
		return openWhy(*row)
	}
	return everywhere(press, keyAction{bound.Cautions, openPoints}, keyAction{bound.Drawing, openSection},
		keyAction{bound.Map, openMap}, keyAction{bound.Beat, openBeat}, keyAction{bound.Pages, openPart},
		keyAction{bound.Keep, openPage(pageBook)}, keyAction{bound.Booth, openBooth})
}

// moveCursor moves the cursor, if this key does that.
func (p *cardPage) moveCursor(press tea.KeyPressMsg, row *cardRow) bool {
	figures := row.group() == figureGroup
	switch text := press.String(); {
	case text == "left":
		p.pick(-1)
	case text == "right":
		p.pick(1)
	case key.Matches(press, bound.Next):
		p.nextGroup(1)
	case key.Matches(press, bound.Prev):
		p.nextGroup(-1)
	case figures && (text == "up" || text == "-"):
		p.pick(-max(1, p.columns))
	case figures && (text == "down" || text == "+"):
		p.pick(max(1, p.columns))
	default:
		return false
	}
	return true
}

// chip goes to the chip with a number; 0 lists the choices without a chip.
func (p *cardPage) chip(n int) action {
	if n == 0 {
		return openRest
	}
	from, to := p.span(chipGroup)
	if at := from + n - 1; at < to {
		p.goTo(at)
		return nil
	}
	return refuse(fmt.Sprintf("there is no choice %d", n),
		fmt.Sprintf("a point and 1 to %d; .0 lists the rest", to-from))
}

// begin starts typing with a digit: into the figure under the cursor, or into the list of its choice.
func (p *cardPage) begin(digit string, row *cardRow) action {
	switch {
	case row.ask != nil:
		return func(m *root) tea.Cmd {
			openAsk(row.ask)(m)
			return m.act(m.front().press(m, tea.KeyPressMsg{Code: []rune(digit)[0], Text: digit}))
		}
	case choice.SettingOf(row.name) == nil:
		return row.follows()
	}
	p.typing = true
	p.field.insert(digit)
	return nil
}

// everywhere handles a screen's own keys, then the keys that mean the same on every screen while nothing is typed.
func everywhere(press tea.KeyPressMsg, own ...keyAction) action {
	return actionOf(press, append(own, keyAction{bound.Units, otherUnits}, keyAction{bound.Help, openHelp},
		keyAction{bound.Words, openWords}, keyAction{bound.Leave, leave}, keyAction{bound.Back, goBack})...)
}

// keyAction is a key and the action that it leads to.
type keyAction struct {
	key key.Binding
	to  action
}

// actionOf is the action of the first keyAction whose key was pressed, nil if there is none.
func actionOf(press tea.KeyPressMsg, list ...keyAction) action {
	for _, l := range list {
		if key.Matches(press, l.key) {
			return l.to
		}
	}
	return nil
}

// turn changes the row by one step, or says what can be changed instead. For a number the arrow up means more; in a
// list it goes to the row before.
func (r *cardRow) turn(s *session, by int, arrow bool) action {
	if r.ask != nil {
		if arrow {
			by = -by
		}
		job, ok := s.neighbour(r.ask, by)
		if !ok {
			return refuse("the list of "+r.label+" ends here", "enter shows the list")
		}
		return change(job, "")
	}
	set := choice.SettingOf(r.name)
	if set == nil {
		return r.follows()
	}
	return change(set.Turned(s.job, r.fig.Figure.Value, by, s.Units), "")
}

// follows says that a row follows from others and cannot be set.
func (r *cardRow) follows() action {
	return refuse(r.label+" follows from the settings", "change wire feed, volts, travel or stick-out")
}

func (r *cardRow) reset(s *session) action {
	job := s.job
	if set := cmp.Or(r.ask, choice.SettingOf(r.name)); set != nil {
		set.Clear(&job)
	}
	if job == s.job {
		return refuse(r.label+" is not yours", "R puts every suggestion back")
	}
	return change(job, "") // the row shows the change; a message would move all rows below it
}

// resetAll leaves every setting open again. The choices stay.
func resetAll(s *session) action {
	job := s.job
	for _, set := range choice.Settings() {
		set.Clear(&job)
	}
	if job == s.job {
		return refuse("every setting is the suggested one", "− and + change one")
	}
	return change(job, "all suggestions back")
}
