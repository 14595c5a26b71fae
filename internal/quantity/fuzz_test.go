package quantity

import (
	"math"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"brazebooth/internal/mistake"
)

// parser is one parser with its field; its result is a plain number.
type parser struct {
	field Field
	parse func(string) (float64, error)
}

func of(f Field) parser {
	return parser{f, func(s string) (float64, error) { return Read(f, s) }}
}

// parsers are all parsers, for the tests that hold for each of them. A gauge counts as its number.
var parsers = map[string]parser{
	"size": {FieldSize, func(s string) (float64, error) {
		v, err := ParseSize(s)
		return v.MM + float64(v.Gauge), err
	}},
	"price": {FieldPrice, func(s string) (float64, error) {
		v, _, err := ParsePrice(FieldPrice, s)
		return v, err
	}},
	"gas price": {FieldGasPrice, func(s string) (float64, error) {
		v, _, err := ParsePrice(FieldGasPrice, s)
		return v, err
	}},
	"rate": {FieldRate, func(s string) (float64, error) {
		v, _, err := ParsePrice(FieldRate, s)
		return v, err
	}},
	"per length":  of(FieldPerLength),
	"wire":        of(FieldWire),
	"gap":         of(FieldGap),
	"stickout":    of(FieldStickOut),
	"length":      of(FieldLength),
	"offset":      of(FieldOffset),
	"feed":        of(FieldFeed),
	"travel":      of(FieldTravel),
	"current":     of(FieldCurrent),
	"voltage":     of(FieldVoltage),
	"temperature": of(FieldTemperature),
	"flow":        of(FieldFlow),
	"force":       of(FieldForce),
	"duration":    of(FieldDuration),
	"percent":     of(FieldPercent),
	"mass":        of(FieldMass),
	"number":      of(FieldNumber),
	"count":       of(FieldCount),
}

// fuzz checks a parser on any text: it does not panic, an accepted value is in the field's range, and a refusal gives
// its reason and what to type instead, in text that is safe to print.
func fuzz(f *testing.F, name string) {
	p := parsers[name]
	sp := specs[p.field]
	for _, s := range seeds {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		v, err := p.parse(text)
		if err == nil {
			if !sp.holds(v) || math.Signbit(v) && !sp.signed {
				t.Fatalf("%q gave %g, outside %g to %g", text, v, sp.low, sp.high)
			}
			return
		}
		e, ok := err.(*mistake.Error)
		if !ok || !printable(e.What) || !printable(e.Hint) || !strings.HasPrefix(e.Hint, "type ") || len(e.What) > 200 {
			t.Fatalf("%q gave the error %#v", text, err)
		}
	})
}

func printable(s string) bool {
	return s != "" && utf8.ValidString(s) &&
		strings.IndexFunc(s, func(r rune) bool { return unicode.In(r, unicode.C) }) < 0
}

var seeds = []string{"16ga", "#16", ".035", "3/32\"", "1-1/4in", "1½ in", "250ipm", "6,3 m/min", "1,500", "16s/100mm",
	"½ s per 4in", "$12/lb", "25 EUR per kg",
	"-4F", "95°", "25 ft³/h", "50 N/mm²", "\x1b[2J", "\u202e1", "\u0530", "0\U000780c1", "1e9", "NaN", "0x1p4", "-0",
	"9999999999", "1/0", "000000/1"}

func FuzzParseSize(f *testing.F)        { fuzz(f, "size") }
func FuzzParseWire(f *testing.F)        { fuzz(f, "wire") }
func FuzzParseGap(f *testing.F)         { fuzz(f, "gap") }
func FuzzParseStickOut(f *testing.F)    { fuzz(f, "stickout") }
func FuzzParseLength(f *testing.F)      { fuzz(f, "length") }
func FuzzParseOffset(f *testing.F)      { fuzz(f, "offset") }
func FuzzParseFeed(f *testing.F)        { fuzz(f, "feed") }
func FuzzParseTravel(f *testing.F)      { fuzz(f, "travel") }
func FuzzParseCurrent(f *testing.F)     { fuzz(f, "current") }
func FuzzParseVoltage(f *testing.F)     { fuzz(f, "voltage") }
func FuzzParseTemperature(f *testing.F) { fuzz(f, "temperature") }
func FuzzParseFlow(f *testing.F)        { fuzz(f, "flow") }
func FuzzParseForce(f *testing.F)       { fuzz(f, "force") }
func FuzzParseDuration(f *testing.F)    { fuzz(f, "duration") }
func FuzzParsePrice(f *testing.F)       { fuzz(f, "price") }
func FuzzParsePercent(f *testing.F)     { fuzz(f, "percent") }
func FuzzParseNumber(f *testing.F)      { fuzz(f, "number") }
