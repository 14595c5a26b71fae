package calc

import (
	"math"
	"strconv"
	"strings"

	"brazebooth/internal/mistake"
	"brazebooth/internal/quantity"
)

// span is the range of a number of a Job; a number outside it is refused, not clamped.
type span struct {
	field     string
	opt       Opt
	low, high float64
	unit      string
}

// thinnest is the least thickness of a sheet, and of the steel under a coating, mm.
const thinnest = 0.05

// spans lists every number of a job with the range that can be computed. It is wider than the range that makes sense,
// which warnings look after.
func spans(j *Job) [51]span {
	return [...]span{
		{"thickness", j.Thickness, thinnest, 150, "mm"},
		{"thickness2", j.Thickness2, thinnest, 150, "mm"},
		{"gap", j.Gap, 0, 25, "mm"},
		{"wire", j.Wire, 0.4, 2.4, "mm"},
		{"feed", j.Feed, 0.3, 40, "m/min"},
		{"amps", j.Amps, 5, 600, "A"},
		{"volts", j.Volts, 5, 60, "V"},
		{"travel", j.Travel, 0.3, 60, "mm/s"},
		{"stickout", j.StickOut, 3, 50, "mm"},
		{"aim", j.Aim, -10, 10, "mm"},
		{"arc_on", j.ArcOn, 0.02, 10, "s"},
		{"arc_off", j.ArcOff, 0.02, 20, "s"},
		{"spot_step", j.SpotStep, 0.1, 50, "mm"},
		{"run_in", j.RunIn, 0, 1, "s"},
		{"flow", j.Flow, 1, 60, "L/min"},
		{"preheat", j.Preheat, -40, 700, "C"},
		{"part_width", j.PartWidth, 1, 1e5, "mm"},
		{"part_mass", j.PartMass, 0.001, 1e5, "kg"},
		{"phi", j.Phi, 1, 8, "V"},
		{"phi_sigma", j.PhiSigma, 0.001, 2, "V"},
		{"volt_factor", j.VoltFactor, 0.5, 2, ""},
		{"volt_factor_sigma", j.VoltFactorSigma, 0.001, 0.5, ""},
		{"eta", j.Eta, 0.3, 1, ""},
		{"eta_sigma", j.EtaSigma, 0.001, 0.2, ""},
		{"readings", j.Readings, 0, 1e6, ""},
		{"pulled", j.Pulled, 0, 1e6, ""},
		{"pulled_mean", j.PulledMean, -10, 20, ""},
		{"pulled_sigma", j.PulledSigma, 0, 5, ""},
		{"zinc_limit", j.ZincLimit, 0.5, 100, "mm"},
		{"service_temp", j.ServiceTemp, -270, 1500, "C"},
		{"load", j.Load, 0, 10000, "kN"},
		{"safety", j.Safety, 1, 100, ""},
		{"leg", j.Leg, 0.2, 50, "mm"},
		{"throat", j.Throat, 0.2, 50, "mm"},
		{"length", j.Length, 1, 1e6, "mm"},
		{"count", j.Count, 1, 1e6, ""},
		{"hole", j.Hole, 1, 100, "mm"},
		{"shaft_dia", j.ShaftDia, 3, 3000, "mm"},
		{"layer", j.Layer, 0.2, 100, "mm"},
		{"nozzle_bore", j.NozzleBore, 5, 40, "mm"},
		{"rated_amps", j.RatedAmps, 10, 2000, "A"},
		{"rated_duty", j.RatedDuty, 5, 100, "%"},
		{"wire_price", j.WirePrice, 0, 1e6, "per kg"},
		{"gas_price", j.GasPrice, 0, 1e6, "per m3"},
		{"labour_rate", j.LabourRate, 0, 1e6, "per hour"},
		{"steel_price", j.SteelPrice, 0, 1e6, "per kg"},
		{"grinding", j.Grinding, 0, 1000, "min/m"},
		{"zinc_repair", j.ZincRepair, 0, 1000, "min/m"},
		{"operating", j.Operating, 1, 100, "%"},
		{"gauge", Opt{j.Gauge != 0, float64(j.Gauge)}, 7, 30, ""},
		{"gauge2", Opt{j.Gauge2 != 0, float64(j.Gauge2)}, 7, 30, ""},
	}
}

// Span is the range of a number of a Job, by its JSON name, and its unit ("" for none); ok is false where no number has
// that name.
func Span(name string) (low, high float64, unit string, ok bool) {
	for _, s := range spans(&Job{}) {
		if s.field == name {
			return s.low, s.high, s.unit, true
		}
	}
	return 0, 0, "", false
}

// checkNumbers refuses a number with which no card can be computed.
func checkNumbers(j *Job) error {
	if err := j.Rhythm.Check(); err != nil {
		return err
	}
	for _, s := range spans(j) {
		if !s.opt.Set {
			continue
		}
		if math.IsNaN(s.opt.V) || s.opt.V < s.low || s.opt.V > s.high {
			unit := quantity.Label(s.unit, quantity.Metric)
			return mistake.In(s.field, strings.TrimSpace(spelt(s.opt.V)+" "+unit)+" is out of range",
				"type a value "+quantity.Limits(s.low, s.high, s.unit))
		}
	}
	return nil
}

// Number prints v in as few digits as hold it, at most six.
func Number(v float64) string { return strconv.FormatFloat(v, 'g', 6, 64) }

// Digits prints v rounded to n significant digits, without an exponent however large or small it is.
func Digits(v float64, n int) string {
	rounded, _ := strconv.ParseFloat(strconv.FormatFloat(v, 'e', n-1, 64), 64)
	return strconv.FormatFloat(rounded, 'f', -1, 64)
}

// spelt is Number without an exponent, for a large number that a user typed.
func spelt(v float64) string {
	if a := math.Abs(v); a >= 1e6 && a < 1e15 {
		return strconv.FormatFloat(v, 'f', 0, 64)
	}
	return Number(v)
}

// row finds a row of tables by its id; if there is none, the error names the nearest.
func row[T any](field, id string, byID func(string) (T, bool), find func(string) (T, error)) (T, error) {
	found, ok := byID(id)
	if ok {
		return found, nil
	}
	_, err := find(id)
	if m := mistake.Of(err); m != nil {
		return found, mistake.In(field, m.What, m.Hint)
	}
	return found, mistake.In(field, "nothing is called "+strconv.QuoteToASCII(id), "see the lists: brazebooth tables")
}
