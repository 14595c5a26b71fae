package report

import (
	"cmp"
	"fmt"

	"brazebooth/calc"
	"brazebooth/internal/plain"
	"brazebooth/internal/quantity"
)

// Procedure is a draft of a brazing procedure specification with its qualification record, which a qualified person
// checks, completes and signs.
type Procedure struct {
	Name, Number string
	Card         *calc.Card // as it was saved, with the table rows of its job
	Trials       []ProcedureTrial
	Ranges       []Range // the qualified ranges, as they were typed
	Foot         string
}

// ProcedureTrial is one test bead of the record.
type ProcedureTrial struct{ At, Who, Laid, Verdict, Seen, Peel, Lot, Note string }

// Range is the qualified range of one variable, in the unit of the figure of that name.
type Range struct {
	Name      string
	Low, High float64
}

// toFill stands in an empty field, short in a gap within a sentence.
const (
	toFill = "____________________ (to be filled in)"
	short  = "________"
)

// Blocks are the draft in words. A stopped job has no draft, and the blocks say why.
func (p *Procedure) Blocks() []Block {
	if p.Card.Stopped() {
		return []Block{Said(each(calc.Stops(p.Card.Warnings), warningLine)),
			Said{{Text: "No procedure is drafted of a job that is stopped."}}}
	}
	list := []Block{
		Said{{Kind: Draft, Text: "Brazing procedure specification, with its qualification record"},
			{Kind: Draft, Text: "not valid until a qualified person has checked, completed and signed it"}},
		p.specification(),
	}
	if len(p.Ranges) > 0 {
		list = append(list, p.qualified())
	}
	return append(list, p.record(), Said{
		{Text: "Fields as ISO 17779:2021 (its scope, process 972, read) and AWS B2.2:2016 (its limits read) name the " +
			"variables; process 973 of ISO 4063:2009 (memory high). Neither document is at hand in full: check the " +
			"fields against the edition that your contract names."}},
		Said{{Kind: Verbatim, Text: "Prepared by ____________________  date __________"},
			{Kind: Verbatim, Text: "Qualified person _______________  date __________  procedure no. __________"}},
		Said{{Text: p.Foot}})
}

// outside has a sentence for each variable that is outside its qualified range.
func (p *Procedure) outside() (list Said) {
	for _, r := range p.Ranges {
		v, unit, ok := p.value(r.Name)
		show := func(v float64) string { return quantity.Show(v, unit, quantity.Metric) }
		switch {
		case !ok:
			list = append(list, Line{Kind: Alert, Text: r.Name + ": nothing of this card has that name"})
		case v < r.Low-1e-9 || v > r.High+1e-9:
			list = append(list, Line{Kind: Alert, Text: fmt.Sprintf("%s %s is outside the qualified %s to %s: "+
				"the procedure does not cover it", calc.FigureLabel(r.Name), show(v), show(r.Low), show(r.High))})
		}
	}
	return list
}

// value is a variable by its name: a figure, the thickness of either member, the preheat or the gap.
func (p *Procedure) value(name string) (v float64, unit string, ok bool) {
	s, u := &p.Card.Setup, &p.Card.Used
	switch name {
	case "thickness":
		return s.Members[0].Thickness, "mm", true
	case "thickness_2":
		return s.Members[1].Thickness, "mm", !s.One
	case "preheat":
		return u.Preheat.V, "C", u.Preheat.Set
	case "gap":
		return u.Gap.V, "mm", u.Gap.Set
	}
	f, ok := p.Card.Figure(name)
	return f.Value, f.Unit, ok
}

// form is a field of the draft, left to be filled in if nothing is known.
func form(name, value string) Line { return Line{Kind: Form, Lead: name, Text: cmp.Or(value, toFill)} }

func (p *Procedure) specification() Said {
	s, u := &p.Card.Setup, &p.Card.Used
	list := append(p.outside(), Line{Kind: Verbatim, Text: "Specification"},
		form("name", plain.Line(p.Name, 60)), form("procedure number", plain.Line(p.Number, 40)),
		form("process", "973 gas metal arc weld brazing (ISO 4063), semi-automatic"), p.metal(0))
	if !s.One {
		list = append(list, p.metal(1))
	}
	gas := s.Gas.Name
	if flow := p.figure("gas_flow"); flow != "" {
		gas += ", " + flow
	}
	list = append(list,
		form("joint", fmt.Sprintf("%s, root opening %.4g mm; lap: %s mm", u.Joint, u.Gap.V, short)),
		form("backing", cmp.Or(calc.BackingOf(p.Card), "none")),
		form("filler", fmt.Sprintf("%s, AWS A5.7 %s, ISO 24373 %s; heat or lot: %s",
			s.Filler.Name, s.Filler.AWS, s.Filler.ISO, p.lot())),
		form("wire diameter", fmt.Sprintf("%.4g mm", u.Wire.V)), form("shielding gas", gas),
		form("position", u.Position), form("mode", u.Mode))
	for _, n := range p.Card.Notes {
		list = append(list, form(n.Name, n.Text))
	}
	for _, f := range [...][2]string{{"current", "current"}, {"voltage at the arc", "volts"},
		{"wire feed", "wire_feed"},
		{"travel", "travel"}, {"stick-out", "stickout"}, {"arc on", "arc_on"}, {"arc off", "arc_off"},
		{"spot step", "spot_step"}, {"heat input (reports)", "heat_input"}} {
		if text := p.figure(f[1]); text != "" {
			list = append(list, form(f[0], text))
		}
	}
	return append(list, form("preheat", fmt.Sprintf("%.4g C", u.Preheat.V)),
		form("interpass", ""), form("cleaning before and after", ""))
}

func (p *Procedure) metal(i int) Line {
	m := &p.Card.Setup.Members[i]
	coat := "bare"
	if m.Coating.ID != "none" {
		coat = fmt.Sprintf("%s, %.0f g/m2 each side", m.Coating.ID, m.Coating.Side.V)
	}
	return form(fmt.Sprintf("base metal %d", i+1),
		fmt.Sprintf("%s, %.4g mm, %s; grade and heat: %s", m.Metal.Name, m.Thickness, coat, short))
}

// figure is a figure with its band; "" if there is none.
func (p *Procedure) figure(name string) string {
	f, ok := p.Card.Figure(name)
	if !ok {
		return ""
	}
	v := ValueOf(&f, quantity.Metric)
	if v.Band() == "" {
		return v.String()
	}
	return v.String() + " (" + v.Band() + ")"
}

func (p *Procedure) lot() string {
	for _, t := range p.Trials {
		if t.Lot != "" {
			return plain.Line(t.Lot, 40)
		}
	}
	return short
}

func (p *Procedure) qualified() Said {
	list := Said{{Kind: Verbatim, Text: "Qualified ranges, as they were typed"}}
	for _, r := range p.Ranges {
		_, unit, _ := p.value(r.Name)
		ends := quantity.Show(r.Low, unit, quantity.Metric) + " to " + quantity.Show(r.High, unit, quantity.Metric)
		list = append(list, form(calc.FigureLabel(r.Name), ends))
	}
	return list
}

func (p *Procedure) record() Said {
	list := Said{{Kind: Verbatim, Text: "Qualification record"}}
	if len(p.Trials) == 0 {
		list = append(list, Line{Kind: Item, Text: "no trial is kept of this card"})
	}
	for _, t := range p.Trials {
		list = append(list,
			Line{Kind: Item, Text: fmt.Sprintf("%s %s, laid with %s: %s; seen: %s; peel or bend: %s; lot %s %s",
				t.At, cmp.Or(t.Who, short), cmp.Or(t.Laid, short), t.Verdict, cmp.Or(t.Seen, short),
				cmp.Or(t.Peel, short), cmp.Or(t.Lot, short), t.Note)})
	}
	return append(list, form("visual", ""),
		form("macro section", "discontinuities ____ % of the lap (AWS B2.2:2016: at most 20 %, read)"),
		form("peel", "unbonded ____ % of the faying area (at most 25 %, read); cracks: none allowed"),
		form("shear or tension", ""))
}
