package report

import (
	"fmt"
	"slices"
	"strings"

	"brazebooth/calc"
	"brazebooth/internal/quantity"
)

// Value is a number with its band as shown in one system of units.
type Value struct{ Number, Low, High, Unit string }

// ValueOf is a figure's value. A setting is rounded as it can be set by hand, a count has no decimals, and a value
// without a band has no ends.
func ValueOf(f *calc.Figure, sys quantity.System) Value {
	if each, unit := quantity.Counted(f.Value, f.Unit); each != 1 {
		f = &calc.Figure{Name: f.Name, Value: f.Value * each, Low: f.Low * each, High: f.High * each, Unit: unit}
	}
	v := Value{Unit: quantity.Label(f.Unit, sys.Lead())}
	switch {
	case quantity.Dialable(f.Name):
		v.Number, v.Low, v.High = quantity.Dialed(f.Name, f.Value, f.Low, f.High, f.Unit, f.Suggested(), sys.Lead())
	case f.Unit == "1":
		v.Number, v.Low, v.High = fmt.Sprintf("%.0f", f.Value), fmt.Sprintf("%.0f", f.Low), fmt.Sprintf("%.0f", f.High)
	default:
		v.Number, v.Low, v.High = quantity.Ends(f.Value, f.Low, f.High, f.Unit, sys.Lead())
	}
	if f.Low == f.High {
		v.Low, v.High = "", ""
	}
	return v
}

// String is the number with its unit.
func (v Value) String() string {
	if v.Unit == "" {
		return v.Number
	}
	return v.Number + " " + v.Unit
}

// Band is the band without its unit, "" for none.
func (v Value) Band() string {
	if v.Low == "" {
		return ""
	}
	return quantity.Interval(v.Low, v.High)
}

// In is a value in the leading units of a system.
func In(v float64, unit string, sys quantity.System) float64 {
	v, _ = quantity.Convert(v, unit, sys.Lead())
	return v
}

// Meaning is the meaning of a figure's band.
type Meaning int

// The meanings: the interval of an uncertain figure; the good range of a setting; the usual range of a setting that was
// not judged; the range in which a time works; and the range nearest to good if nothing is good.
const (
	Interval Meaning = iota
	GoodBetween
	UsualBetween
	Working
	Miss
)

// Row is a figure as it is shown. Other is the same figure in inches if both systems are shown and differ, otherwise
// empty.
type Row struct {
	Figure       *calc.Figure
	Of           Table
	Label        string
	Value, Other Value
	Range        Meaning
	Long, Short  string // a remark that the user must know; Short is for little room and may be empty
	Assumed      bool   // nobody gave it
	Rests        bool   // it depends on something that nobody gave
}

// RowOf is a figure as a row of a table.
func RowOf(card *calc.Card, f *calc.Figure, of Table, sys quantity.System) Row {
	r := Row{Figure: f, Of: of, Label: calc.FigureLabel(f.Name), Value: ValueOf(f, sys)}
	if of == OfKept {
		return r
	}
	if sys == quantity.Both && quantity.Label(f.Unit, quantity.Inch) != quantity.Label(f.Unit, quantity.Metric) {
		said := *f
		if f.Low != f.High || quantity.Dialable(f.Name) { // otherwise the value has enough digits
			said.Value = quantity.ShownValue(r.Value.Number, f.Value)
		}
		if f.Low == f.High {
			said.Low, said.High = said.Value, said.Value
		}
		r.Other = ValueOf(&said, quantity.Inch)
	}
	switch {
	case f.Suggested():
		r.Range = GoodBetween
	case f.Missed():
		r.Range = Miss
	case f.Usual():
		r.Range = UsualBetween
	case of == OfTimed && r.Value.Low != "" && (f.Name == "arc_on" || f.Name == "arc_off"):
		r.Range = Working
	}
	r.Assumed = card.AssumedWhy(f.Name) != "" || f.Name == "seam_length" && !card.Job.Length.Set
	for field, names := range restsOn {
		r.Rests = r.Rests || of == OfPage && slices.Contains(names, f.Name) && notGiven(card, field)
	}
	r.Long, r.Short = remark(card, f, sys)
	if r.Range == Working {
		r.Short = r.Range.Words()
	}
	return r
}

// Words name the meaning of a row's band, "" for an interval.
func (r Meaning) Words() string {
	return [...]string{"", "good between", "usual; not judged", "working range", "nearest miss, not good"}[r]
}

// Remark is the meaning of a row's band together with its remark. The short form may be empty.
func (r *Row) Remark() (long, short string) {
	band := r.Range.Words()
	switch {
	case r.Range == UsualBetween && r.Long != "":
		band = "usual"
	case r.Range == Miss && r.Long != "":
		band = "nearest miss"
	}
	return joined(band, r.Long), r.Short
}

// Beside is the remark that fits into this room, after the word "assumed" for a value that nobody gave. If not even the
// short form fits, only that word is left.
func (r *Row) Beside(room int, width func(string) int) string {
	long, short := r.Remark()
	assumed := ""
	if r.Assumed {
		assumed = "assumed"
	}
	for _, remark := range [...]string{long, short} {
		if text := joined(assumed, remark); width(text) <= room {
			return text
		}
	}
	return assumed
}

// joined joins the parts that are not empty, with semicolons.
func joined(parts ...string) string {
	return strings.Join(slices.DeleteFunc(parts, func(s string) bool { return s == "" }), "; ")
}

// remark is what the user must know about a figure; short is for little room.
func remark(card *calc.Card, f *calc.Figure, sys quantity.System) (long, short string) {
	name, _ := strings.CutSuffix(f.Name, "_2")
	switch name {
	case "travel":
		return Pace(f.Value, sys), Pace(f.Value, sys.Lead())
	case "arc_on", "arc_off":
		long, short = "for a closed joint", "no gap"
		if card.Used.Gap.V > 0 {
			gap := quantity.Show(card.Used.Gap.V, "mm", sys.Lead())
			long, short = "for a gap of "+gap, "gap "+gap
		}
		if name == "arc_off" { // the row above shows it
			short = ""
		}
		return long, short
	case "gas_flow":
		return card.Setup.Gas.Name + nozzle(card, f, sys), card.Setup.Gas.ID
	}
	r, ok := remarks[f.Name]
	if !ok {
		r = remarks[name]
	}
	return quantity.Sentence(r[0], sys), quantity.Sentence(r[1], sys.Lead())
}

// restsOn are the figures of pages that depend on a choice which is not the card's own.
var restsOn = map[string][]string{
	"length": {"seam_length", "throat_capacity", "bond_capacity", "sheet_capacity", "allowable_load", "arc_time",
		"wire_used", "gas_used", "wire_cost", "gas_cost", "labour_time", "labour_cost", "total_cost", "steel_cost",
		"zinc_repair_time", "zinc_repair_cost", "pulled_bound", "pulled_allowable", "tacks", "seam_pieces",
		"layer_temperature", "interpass_hold"},
	"operating": {"labour_time", "labour_cost", "total_cost", "steel_cost", "capture_needed"},
}

// notGiven reports whether nobody gave a choice, so that a page assumed it.
func notGiven(card *calc.Card, field string) bool {
	return card.AssumedWhy(field) != "" || field == "length" && !card.Used.Length.Set
}

// assumedLine names the assumed choices that the figures with a ~ depend on; "" for none.
func assumedLine(f *Figures, sys quantity.System) string {
	var list []string
	for _, field := range [...]string{"length", "operating"} {
		rests := func(x calc.Figure) bool { return slices.Contains(restsOn[field], x.Name) }
		if !notGiven(f.Card, field) || !slices.ContainsFunc(f.List, rests) {
			continue
		}
		text := field
		for _, a := range f.Card.Assumed {
			if a.Field == field {
				text = field + " " + Typed(a.Field, a.Value, sys)
			}
		}
		list = append(list, text)
	}
	if len(list) == 0 {
		return ""
	}
	return "depends on what nobody gave: " + strings.Join(list, ", ")
}
