package tui

import (
	"fmt"

	"brazebooth/internal/choice"
	"brazebooth/tui/canvas"
)

// toCome stands in the place of a figure that is still being computed.
const toCome = "--"

// fromHeat reports a figure of a timed arc that following its heat settles. Before that there is an estimate, which may
// be several times too short, and whose range need not hold what the heat gives.
func fromHeat(name string) bool {
	switch name {
	case "arc_on", "arc_off", "spot_step", "travel":
		return true
	}
	return false
}

// unsettled reports a figure of the present card that stands for an estimate.
func (m *root) unsettled(name string) bool {
	return m.timed() && !m.followed && fromHeat(name) && !choice.SettingOf(name).Given(&m.session.card.Job)
}

// unsettledWord is such a figure in words: none while its heat is followed.
func (m *root) unsettledWord(value string) string {
	if m.beat.stop != nil {
		return toCome
	}
	return value + " rough"
}

// unfollowed is a dial of the present card whose heat was not followed.
func (m *root) unfollowed(d *canvas.Dial, name string) {
	if m.unsettled(name) {
		m.beat.estimated(d)
	}
}

// estimated shows no figure on a dial while the heat is followed, and an estimate without its range where that was
// given up.
func (p *beatPage) estimated(d *canvas.Dial) {
	d.Bar.Kind, d.Span = canvas.NoSpan, "rough"
	if p.stop != nil {
		d.Number, d.Also, d.Span = toCome, "", ""
		d.Bar.Empty, d.Bar.Off = true, true
	}
}

// rough is said of the times of the card while their heat is followed.
func (p *beatPage) rough() string {
	return fmt.Sprintf("on, off and travel come when their heat is followed: %.0f %%", 100*p.share())
}
