package calc_test

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"unicode"

	"brazebooth/calc"
)

// reckons tells a formula that can be computed from one in words: it has an arithmetic sign that no sentence has, or a
// slash, plus, minus or bracket beside a symbol, or the word for one.
var reckons = regexp.MustCompile(`[·√²³⁵^=]|[/+−(] ?\{|\} ?[/+−)]|\btimes\b`)

// endings are words behind a formula that ask for rounding.
var endings = []struct {
	text  string
	round func(float64) float64
}{
	{", rounded up, and one", func(v float64) float64 { return math.Ceil(v-1e-9) + 1 }},
	{", rounded up", func(v float64) float64 { return math.Ceil(v - 1e-9) }},
	{", rounded down to two figures", func(v float64) float64 {
		unit := math.Pow(10, math.Floor(math.Log10(v))-1)
		return math.Floor(v/unit*(1+1e-12)) * unit
	}},
}

// reckon computes a figure's formula with the values of its inputs: "main, a = ..., b = ..., rounded up".
func reckon(b *calc.Basis) (v float64, err error) {
	defer func() {
		if r := recover(); r != nil {
			err = fmt.Errorf("%v in %q", r, b.Formula)
		}
	}()
	text, round := b.Formula, func(v float64) float64 { return v }
	for _, e := range endings {
		if rest, ok := strings.CutSuffix(text, e.text); ok {
			text, round = rest, e.round
			break
		}
	}
	e := evaluator{names: map[string]string{}, inputs: b.Inputs}
	parts := regexp.MustCompile(`, ([A-Za-z]\w*) = `).Split(text, -1)
	for i, m := range regexp.MustCompile(`, ([A-Za-z]\w*) = `).FindAllStringSubmatch(text, -1) {
		e.names[m[1]] = parts[i+1]
	}
	return round(e.whole(parts[0])), nil
}

// evaluator computes products, sums, powers, roots and a few functions; a name stands for its text.
type evaluator struct {
	names  map[string]string
	inputs []calc.Input
	rest   []rune
}

func (e evaluator) whole(text string) float64 {
	e.rest = []rune(text)
	v := e.sum()
	if e.skip(); len(e.rest) > 0 {
		panic(fmt.Sprintf("%q is left over", string(e.rest)))
	}
	return v
}

func (e *evaluator) skip() {
	for len(e.rest) > 0 && e.rest[0] == ' ' {
		e.rest = e.rest[1:]
	}
}

// take reads one of the signs if it comes next.
func (e *evaluator) take(signs string) rune {
	e.skip()
	if len(e.rest) == 0 || !strings.ContainsRune(signs, e.rest[0]) {
		return 0
	}
	r := e.rest[0]
	e.rest = e.rest[1:]
	return r
}

func (e *evaluator) sum() float64 {
	v := 0.0
	if e.take("−") != 0 {
		v = -e.product()
	} else {
		v = e.product()
	}
	for {
		switch e.take("+−") {
		case '+':
			v += e.product()
		case '−':
			v -= e.product()
		default:
			return v
		}
	}
}

func (e *evaluator) product() float64 {
	v := e.power()
	for {
		switch e.take("·/") {
		case '·':
			v *= e.power()
		case '/':
			v /= e.power()
		default:
			return v
		}
	}
}

func (e *evaluator) power() float64 {
	v := e.value()
	for {
		switch e.take("²³⁵^") {
		case '²':
			v *= v
		case '³':
			v *= v * v
		case '⁵':
			v = math.Pow(v, 5)
		case '^':
			v = math.Pow(v, e.value())
		default:
			return v
		}
	}
}

func (e *evaluator) value() float64 {
	switch {
	case e.take("√") != 0:
		return math.Sqrt(e.value())
	case e.take("(") != 0:
		v := e.sum()
		e.must(")")
		return v
	case e.take("{") != 0:
		symbol := e.word(func(r rune) bool { return r != '}' })
		e.must("}")
		for _, in := range e.inputs {
			if in.Symbol == symbol {
				return in.Value
			}
		}
		panic(fmt.Sprintf("no input for {%s}", symbol))
	}
	if number := e.word(func(r rune) bool { return unicode.IsDigit(r) || r == '.' }); number != "" {
		v, err := strconv.ParseFloat(number, 64)
		if err != nil {
			panic(err)
		}
		return v
	}
	return e.named(e.word(func(r rune) bool { return unicode.IsLetter(r) || unicode.IsDigit(r) || r == '_' }))
}

func (e *evaluator) must(sign string) {
	if e.take(sign) == 0 {
		panic(fmt.Sprintf("%s is missing before %q", sign, string(e.rest)))
	}
}

func (e *evaluator) word(in func(rune) bool) string {
	e.skip()
	n := 0
	for n < len(e.rest) && in(e.rest[n]) {
		n++
	}
	w := string(e.rest[:n])
	e.rest = e.rest[n:]
	return w
}

// named is a constant, a function of the bracket behind it (an angle in degrees), or a name's own text.
func (e *evaluator) named(name string) float64 {
	switch name {
	case "pi":
		return math.Pi
	case "e":
		return math.E
	case "min", "max", "tan":
		return e.call(name)
	}
	text, ok := e.names[name]
	if !ok {
		panic(fmt.Sprintf("%q before %q has no value", name, string(e.rest)))
	}
	return evaluator{names: e.names, inputs: e.inputs}.whole(text)
}

func (e *evaluator) call(name string) float64 {
	e.must("(")
	v := e.sum()
	if name == "tan" {
		v = math.Tan(v * math.Pi / 180)
	}
	for e.take(",") != 0 {
		switch next := e.sum(); name {
		case "min":
			v = math.Min(v, next)
		case "max":
			v = math.Max(v, next)
		}
	}
	e.must(")")
	return v
}
