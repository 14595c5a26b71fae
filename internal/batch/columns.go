package batch

import (
	"fmt"
	"slices"
	"strings"

	"brazebooth/calc"
	"brazebooth/internal/choice"
	"brazebooth/internal/mistake"
	"brazebooth/internal/near"
	"brazebooth/internal/plain"
)

// carried are the columns that identify a row; they are copied and do not change the job.
var carried = [...]string{"id", "name", "note"}

// sourceName is the column of the power source whose readings calibrate a row's card.
const sourceName = "power-source"

// mostNames is how many columns or names a row may have besides those of --carry: several times the number of choices,
// and few enough that reading a row is fast.
const mostNames = 400

// mostText is the most bytes that the text of a choice may have.
const mostText = 400

// choices knows the names that the columns of a table may have.
type choices struct {
	carry map[string]bool
	names []string // of all choices in the order in which they are read, then of the power source
}

func newChoices(o *Options) choices {
	c := choices{carry: map[string]bool{}, names: append(choice.Names(choice.All()), sourceName)}
	for _, name := range slices.Concat(carried[:], o.Carry) {
		if name = strings.ToLower(strings.TrimSpace(name)); name != "" {
			c.carry[name] = true
		}
	}
	return c
}

// place is the index of a choice in names; −1 for a name that is only copied.
func (c *choices) place(name string) (at int, ok bool) {
	at = slices.Index(c.names, name)
	return at, at >= 0 || c.carry[name]
}

// most is the most names of a row.
func (c *choices) most() int { return mostNames + len(c.carry) }

// tooMany is the mistake of a row, or of a head, with more than most names.
func (c *choices) tooMany(line int) *mistake.Error {
	return at(line, "", fmt.Sprintf("more than %d names in one row", c.most()),
		"write one job in a row, and name only what brazebooth card --help lists")
}

// unknown is the mistake of a name that is not a choice.
func (c *choices) unknown(line int, name string) *mistake.Error {
	name = plain.Line(name, 40)
	hint := "name it like a flag of brazebooth card, or only copy it: --carry " + name
	if like := choice.Like(strings.ReplaceAll(name, "_", "-"), c.names); len(like) > 0 {
		hint = "type " + near.Or(like) + ", or only copy it: --carry " + name
	}
	return at(line, name, "a card has no choice of this name", hint)
}

// given is the text of a choice, or of the power source, in a row.
type given struct {
	place      int // index in the names of choices
	name, text string
}

// read reads what a row gives in the order of the choices, so that of two mistakes always the same is reported.
func (r *row) read(list []given) {
	slices.SortFunc(list, func(a, b given) int { return a.place - b.place })
	for _, g := range list {
		r.put(g.name, g.place, g.text)
	}
}

// put reads the value of the choice with this index.
func (r *row) put(name string, place int, text string) {
	if len(text) > mostText {
		r.fail(name, "longer than any choice",
			fmt.Sprintf("write at most %d letters, as the flag of brazebooth card takes them", mostText))
	} else if place == len(choice.All()) {
		r.source = strings.TrimSpace(text)
	} else if err := choice.All()[place].Set(&r.job, text); err != nil {
		m := mistake.Of(err) // Set returns no other error
		r.fail(name, m.What, m.Hint)
	}
}

// lacking refuses a row without metal or thickness: in a table an assumption for one row would go unnoticed.
func (r *row) lacking() {
	j := &r.job
	if j.Metal == "" {
		r.fail("metal", "none is given", "write the metal of every row, such as galvanized or mild-steel")
	}
	if j.Gauge == 0 && !j.Thickness.Set && !j.ShaftDia.Set {
		r.fail("gauge", "none is given", "write every row's gauge or thickness, such as 18ga, .060 or 1.5mm")
	}
}

// figures are the figures of a CSV answer in order, with three columns each: value, low and high.
var figures = [...]struct{ name, unit string }{
	{"wire_feed", "m/min"}, {"volts", "V"}, {"travel", "mm/s"}, {"arc_on", "s"}, {"arc_off", "s"}, {"spot_step", "mm"},
	{"gas_flow", "L/min"}, {"stickout", "mm"}, {"gun_angle", "deg"}, {"current", "A"}, {"deposition_rate", "g/min"},
	{"wire_mass_per_length", "g/m"}, {"arc_energy", "J/mm"}, {"heat_input", "J/mm"}, {"net_heat", "J/mm"},
	{"bead_area", "mm2"}, {"passes", "1"}, {"bead_width", "mm"},
	{"zinc_boiled_halfwidth", "mm"}, {"zinc_boiled_halfwidth_2", "mm"}, {"zinc_melted_halfwidth", "mm"},
	{"zinc_melted_halfwidth_2", "mm"}, {"cooling_time", "s"},
	{"pulse_frequency", "Hz"},
	{"wetted_width_1", "mm"}, {"wetted_width_2", "mm"}, {"wetting_angle", "deg"}, {"toe_angle_1", "deg"},
	{"toe_angle_2", "deg"}, {"throat", "mm"}, {"base_peak_temperature", "C"}, {"margin", "%"}, {"chance", "%"},
	{"least_preheat", "C"}, {"soak_through", "s"}, {"soak_across", "s"}, {"seam_rise", "K"},
	{"next_start", "C"}, {"next_hold", "s"},
	{"largest_gap", "mm"}, {"root_sag", "mm"}, {"largest_bead", "mm2"},
	{"feed_dial", "marks"}, {"volts_dial", "marks"},
	{"wire_mass_per_seam", "g/m"}, {"effective_current", "A"}, {"pulse_power", "%"},
}

func figureCells(card *calc.Card) ([]string, error) {
	cells := make([]string, 3*len(figures))
	for i := range card.Figures {
		f := &card.Figures[i]
		at := slices.IndexFunc(figures[:], func(c struct{ name, unit string }) bool { return c.name == f.Name })
		if at < 0 {
			return nil, fmt.Errorf("the figure %s has no column", f.Name)
		}
		for end, v := range [...]float64{f.Value, f.Low, f.High} {
			cells[3*at+end] = calc.Number(v)
		}
	}
	return cells, nil
}
