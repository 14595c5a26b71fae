package report

import (
	"fmt"
	"strings"

	"brazebooth/calc"
	"brazebooth/internal/plain"
	"brazebooth/internal/quantity"
)

// Procedure is a draft of a brazing procedure specification with its qualification record: what a qualified person
// checks, completes and signs.
type Procedure struct {
	Comma        bool // in numbers, instead of the point
	Name, Number string
	Used         calc.Job
	Figures      []calc.Figure
	Notes        []calc.Note
	Setup        calc.Setup
	Trials       []ProcedureTrial
	Ranges       []Range // that somebody typed as qualified
	Stops        []calc.Warning
	Foot         string
}

// ProcedureTrial is one bead of the record.
type ProcedureTrial struct{ At, Who, Laid, Verdict, Seen, Peel, Lot, Note string }

// Range is a qualified range of one variable, in the unit of the figure of that name.
type Range struct {
	Name      string
	Low, High float64
}

// outside are the variables that leave their qualified range, each as a sentence.
func (p *Procedure) outside() []string {
	var list []string
	for _, r := range p.Ranges {
		v, unit, ok := p.value(r.Name)
		switch {
		case !ok:
			list = append(list, fmt.Sprintf("%s: nothing of this card has that name", r.Name))
		case v < r.Low-1e-9 || v > r.High+1e-9:
			list = append(list, fmt.Sprintf("%s %s is outside the qualified %s to %s: the procedure does not cover it", calc.FigureLabel(r.Name),
				quantity.Show(v, unit, quantity.Metric), quantity.Show(r.Low, unit, quantity.Metric), quantity.Show(r.High, unit, quantity.Metric)))
		}
	}
	return list
}

// value is a variable by its name: a figure, or the thickness of either member.
func (p *Procedure) value(name string) (v float64, unit string, ok bool) {
	switch name {
	case "thickness":
		return p.Setup.Members[0].Thickness, "mm", true
	case "thickness_2":
		return p.Setup.Members[1].Thickness, "mm", !p.Setup.One
	case "preheat":
		return p.Used.Preheat.V, "C", p.Used.Preheat.Set
	case "gap":
		return p.Used.Gap.V, "mm", p.Used.Gap.Set
	}
	f, ok := figureIn(p.Figures, name)
	if !ok {
		return 0, "", false
	}
	return f.Value, f.Unit, true
}

// ProcedureText writes the draft as plain text of at most 80 columns.
func ProcedureText(p *Procedure) string {
	w := writer{Options: Options{Comma: p.Comma}}
	if len(p.Stops) > 0 {
		for _, s := range p.Stops {
			w.para("STOP  ", s.Text)
		}
		w.line("")
		w.para("", "No procedure is drafted of a job that is stopped.")
		return w.String()
	}
	w.line("DRAFT  Brazing procedure specification, with its qualification record")
	w.line("DRAFT  not valid until a qualified person has checked, completed and signed it")
	w.line("")
	for _, x := range p.outside() {
		w.para("ALERT  ", x)
	}
	w.procedureFields(p)
	w.procedureRanges(p)
	w.procedureRecord(p)
	w.para("", "Fields as ISO 17779:2021 (its scope, process 972, read) and AWS B2.2:2016 (its limits read) name the variables; process 973 of ISO 4063:2009 (memory high). Neither document is at hand in full: check the fields against the edition that your contract names.")
	w.line("")
	w.line("Prepared by ____________________  date __________")
	w.line("Qualified person _______________  date __________  procedure no. __________")
	w.line("")
	w.para("", p.Foot)
	return w.String()
}

func (w *writer) field(name, value string) {
	if value == "" {
		value = "____________________ (to be filled in)"
	}
	w.para(fmt.Sprintf("  %-26s ", name), value)
}

func (w *writer) procedureFields(p *Procedure) {
	s, u := &p.Setup, &p.Used
	w.line("Specification")
	w.field("name", plain.Line(p.Name, 60))
	w.field("procedure number", plain.Line(p.Number, 40))
	w.field("process", "973 gas metal arc weld brazing (ISO 4063), semi-automatic")
	for i := range s.Members[:map[bool]int{true: 1, false: 2}[s.One]] {
		m := &s.Members[i]
		coat := "bare"
		if m.Coating.ID != "none" {
			coat = fmt.Sprintf("%s, %.0f g/m2 each side", m.Coating.ID, m.Coating.Side.V)
		}
		w.field(fmt.Sprintf("base metal %d", i+1), fmt.Sprintf("%s, %s mm, %s; grade and heat: ________", m.Metal.Name, short(m.Thickness), coat))
	}
	w.field("joint", u.Joint+", root opening "+short(u.Gap.V)+" mm; lap: ________ mm")
	w.field("filler", fmt.Sprintf("%s, AWS A5.7 %s, ISO 24373 %s; heat or lot: %s", s.Filler.Name, s.Filler.AWS, s.Filler.ISO, p.lot()))
	w.field("wire diameter", short(u.Wire.V)+" mm")
	w.field("shielding gas", s.Gas.Name+p.figure("gas_flow"))
	w.field("position", u.Position)
	w.field("mode", u.Mode)
	for _, n := range p.Notes {
		w.field(n.Name, n.Text)
	}
	for _, f := range [...]struct{ label, name string }{{"current", "current"}, {"voltage at the arc", "volts"}, {"wire feed", "wire_feed"}, {"travel", "travel"}, {"stick-out", "stickout"},
		{"arc on", "arc_on"}, {"arc off", "arc_off"}, {"spot step", "spot_step"}, {"heat input (reports)", "heat_input"}} {
		if t := strings.TrimPrefix(p.figure(f.name), ", "); t != "" {
			w.field(f.label, t)
		}
	}
	w.field("preheat", short(u.Preheat.V)+" C")
	w.field("interpass", "")
	w.field("cleaning before and after", "")
	w.line("")
}

// figure is a figure with its band, behind a comma; "" where there is none.
func (p *Procedure) figure(name string) string {
	f, ok := figureIn(p.Figures, name)
	if !ok {
		return ""
	}
	value, band := quantity.Band(f.Value, f.Low, f.High, f.Unit, quantity.Metric)
	text := ", " + value + " " + quantity.Label(f.Unit, quantity.Metric)
	if f.Low != f.High {
		text += " (" + band + ")"
	}
	return text
}

func (p *Procedure) lot() string {
	for _, t := range p.Trials {
		if t.Lot != "" {
			return plain.Line(t.Lot, 40)
		}
	}
	return "________"
}

func short(v float64) string { return fmt.Sprintf("%.4g", v) }

func (w *writer) procedureRanges(p *Procedure) {
	if len(p.Ranges) == 0 {
		return
	}
	w.line("Qualified ranges, as they were typed")
	for _, r := range p.Ranges {
		_, unit, _ := p.value(r.Name)
		w.field(calc.FigureLabel(r.Name), fmt.Sprintf("%s to %s", quantity.Show(r.Low, unit, quantity.Metric), quantity.Show(r.High, unit, quantity.Metric)))
	}
	w.line("")
}

func (w *writer) procedureRecord(p *Procedure) {
	w.line("Qualification record")
	if len(p.Trials) == 0 {
		w.line("  no trial is kept of this card")
	}
	for _, t := range p.Trials {
		w.para("  ", fmt.Sprintf("%s %s, laid with %s: %s; seen: %s; peel or bend: %s; lot %s %s", t.At, orBlank(t.Who), orBlank(t.Laid), t.Verdict, orBlank(t.Seen), orBlank(t.Peel), orBlank(t.Lot), t.Note))
	}
	w.field("visual", "")
	w.field("macro section", "discontinuities ____ % of the lap (AWS B2.2:2016: at most 20 %, read)")
	w.field("peel", "unbonded ____ % of the faying area (at most 25 %, read); cracks: none allowed")
	w.field("shear or tension", "")
	w.line("")
}

func orBlank(s string) string {
	if s == "" {
		return "________"
	}
	return s
}
