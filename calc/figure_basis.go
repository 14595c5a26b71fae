package calc

import (
	"cmp"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"brazebooth/tables"
)

// OwnBasis is the basis of a figure that this program computes.
func OwnBasis(formula, source string, inputs ...Input) Basis {
	return Basis{Formula: formula, Inputs: inputs, Source: source, Known: OwnCalc}
}

// RowBasis is the basis of a figure from a row of tables.
func RowBasis(formula string, o tables.Origin, inputs ...Input) Basis {
	return Basis{Formula: formula, Inputs: inputs, Source: o.Source, Known: string(o.Known)}
}

// NewFigure is a figure with its interval.
func NewFigure(name, unit string, v, low, high float64, b Basis) Figure {
	return Figure{name, v, low, high, unit, b}
}

// As turns the figure into an input of another figure.
func (f *Figure) As(symbol string) Input {
	return Derived(symbol, FigureLabel(f.Name), f.Value, f.Unit)
}

// In is an input of a formula by its symbol there.
func In(symbol, name string, v float64, unit string) Input {
	return Input{Symbol: symbol, Name: name, Value: v, Unit: unit}
}

// Derived is an input that was computed on the way.
func Derived(symbol, name string, v float64, unit string) Input {
	return Input{Symbol: symbol, Name: name, Value: v, Unit: unit, Derived: true}
}

// Assumed is an input that nobody gave.
func Assumed(symbol, name string, v float64, unit string) Input {
	return Input{Symbol: symbol, Name: name, Value: v, Unit: unit, Assumed: true}
}

// symbols are formula symbols that are typed in plain letters and shown in others.
var symbols = map[string]string{"rho_e": "ρe", "rhoc": "ρc", "rho": "ρ", "eta_d": "ηd", "eta": "η", "phi": "φ",
	"sigma": "σ",
	"pi":    "π", "v_w": "vw", "H_liq": "Hliq", "T_toe": "Ttoe", "T_liq": "Tliq", "T_sol": "Tsol", "t_on": "ton",
	"t_off": "toff"}

// Words of a formula may be symbols, in braces where they stand for an input.
var (
	word, wordOrSymbol = regexp.MustCompile(`[A-Za-z_]+`), regexp.MustCompile(`\{[^}]*\}|[A-Za-z_]+`)
	unbraced           = strings.NewReplacer("{", "", "}", "")
)

// written replaces whole symbols by their shown form; letters inside a word are left alone.
func written(s string) string {
	return word.ReplaceAllStringFunc(s, func(w string) string { return cmp.Or(symbols[w], w) })
}

// Plain is the formula for a reader: without the braces about its symbols.
func (b *Basis) Plain() string { return written(unbraced.Replace(b.Formula)) }

// Substituted is the formula with the numbers put in, each with its unit: "0.84·15.2 V·96.5 A/5.87 mm/s".
// A symbol that no input carries stays as it is.
func (b *Basis) Substituted() string {
	return b.Filled(func(number, unit string) string {
		if unit == "" {
			return number
		}
		return "(" + number + " " + unit + ")"
	})
}

// Filled is the formula with each symbol in braces replaced by what put makes of its number and unit ("" for none).
func (b *Basis) Filled(put func(number, unit string) string) string {
	return wordOrSymbol.ReplaceAllStringFunc(b.Formula, func(s string) string {
		if s[0] != '{' {
			return cmp.Or(symbols[s], s)
		}
		symbol := strings.Trim(s, "{}")
		i := slices.IndexFunc(b.Inputs, func(in Input) bool { return in.Symbol == symbol })
		if i < 0 {
			return written(symbol)
		}
		v, unit := b.Inputs[i].Value, b.Inputs[i].Unit
		if unit == "1" {
			unit = ""
		}
		if a := math.Abs(v); a >= 9999.5 && a < 1e7 { // else four figures would need a power of ten
			return put(strconv.FormatFloat(v, 'f', 0, 64), unit)
		}
		return put(strconv.FormatFloat(v, 'g', 4, 64), unit)
	})
}

// Warned reports whether the card has a warning with that code.
func (c *Card) Warned(code string) bool { return c.Said(code) != "" }

// Said is the text of the card's warning with that code, "" for none.
func (c *Card) Said(code string) string {
	for i := range c.Warnings {
		if c.Warnings[i].Code == code {
			return c.Warnings[i].Text
		}
	}
	return ""
}

// Telling are the inputs that move a figure by half a per cent or more, the strongest first. Inputs that were computed
// on the card are left out, since their own inputs are in the list.
func (b *Basis) Telling() []Input {
	list := slices.DeleteFunc(slices.Clone(b.Inputs),
		func(in Input) bool { return in.Derived || math.Abs(in.Sensitivity) < 0.5 })
	slices.SortStableFunc(list, func(a, b Input) int { return cmpMagnitude(b.Sensitivity, a.Sensitivity) })
	return list
}

// AssumedWhy is the reason for the assumption of a field, by its JSON name; "" for a field that was chosen.
func (c *Card) AssumedWhy(field string) string {
	for i := range c.Assumed {
		if c.Assumed[i].Field == field {
			return c.Assumed[i].Why
		}
	}
	return ""
}

// givenBasis is the basis of what the user gave.
var givenBasis = Basis{Formula: GivenFormula, Source: "user", Known: "given"}

// GivenFigure is a setting that the user gave, exact.
func GivenFigure(name string, v float64, unit string) Figure {
	return Figure{name, v, v, v, unit, givenBasis}
}

// RowFigure is a figure that a row of tables gives.
func RowFigure(name string, d tables.Datum, formula string) Figure {
	return NewFigure(name, d.Unit, d.V, d.Low, d.High, RowBasis(formula, d.Origin))
}
