package cli

import (
	"fmt"
	"reflect"
	"regexp"
	"strings"
	"sync"

	"brazebooth/calc"
	"brazebooth/internal/quantity"
	"brazebooth/tables"
)

var (
	datumType  = reflect.TypeFor[tables.Datum]()
	originType = reflect.TypeFor[tables.Origin]()
)

// writeRow prints one row of a table: its name, then each field with band and source.
func writeRow(b *strings.Builder, row reflect.Value) {
	first := true
	eachField(row, func(name string, v reflect.Value) {
		text := fieldText(v)
		switch {
		case text == "":
		case first:
			fmt.Fprintf(b, "%s\n", text)
			first = false
		default:
			fmt.Fprintf(b, "  %-21s %s\n", strings.ReplaceAll(name, "_", " "), text)
		}
	})
	b.WriteByte('\n')
}

// eachField visits a row's fields under their JSON names. An embedded figure is visited as "value", an embedded origin
// as "source".
func eachField(row reflect.Value, visit func(name string, v reflect.Value)) {
	for f, v := range row.Fields() {
		switch {
		case v.Type() == datumType && f.Anonymous:
			visit("value", v)
		case v.Type() == originType && f.Anonymous:
			visit("source", v)
		case f.IsExported():
			visit(snake(f.Name), v)
		}
	}
}

func fieldText(v reflect.Value) string {
	switch x := v.Interface().(type) {
	case []string:
		return "\n      " + strings.Join(x, "\n      ")
	case tables.Datum:
		return datumText(x)
	case tables.Origin:
		return x.Source + " (" + string(x.Known) + ")"
	case []tables.Limit:
		return limitsText(x)
	case bool:
		if x {
			return "yes"
		}
		return "no"
	case float64:
		return calc.Number(x)
	default:
		return fmt.Sprint(x)
	}
}

func datumText(d tables.Datum) string {
	text := calc.Number(d.V)
	if d.Low != d.High {
		text += " (" + calc.Number(d.Low) + " to " + calc.Number(d.High) + ")"
	}
	if label := quantity.Label(d.Unit, quantity.Metric); label != "" {
		text += " " + label
	}
	return text + "; " + d.Source + " (" + string(d.Known) + ")"
}

func limitsText(limits []tables.Limit) string {
	return strings.Join(column(limits, func(l *tables.Limit) string {
		if l.Min == 0 {
			return l.Element + " at most " + calc.Number(l.Max)
		}
		return l.Element + " " + calc.Number(l.Min) + " to " + calc.Number(l.Max)
	}), ", ") + " %"
}

// jsonValue turns rows into values that encoding/json prints with the names of eachField.
func jsonValue(v reflect.Value) any {
	switch {
	case v.Type() == datumType:
		d := v.Interface().(tables.Datum)
		return map[string]any{"value": d.V, "low": d.Low, "high": d.High, "unit": d.Unit, "source": d.Source,
			"known": d.Known}
	case v.Kind() == reflect.Slice:
		list := make([]any, 0, v.Len())
		for i := range v.Len() {
			list = append(list, jsonValue(v.Index(i)))
		}
		return list
	case v.Kind() == reflect.Struct:
		row := map[string]any{}
		eachField(v, func(name string, f reflect.Value) { row[name] = jsonValue(f) })
		return row
	}
	return v.Interface()
}

// snake turns a field's Go name into its JSON name: HLiq h_liq, ID id, GSGMin gsg_min.
func snake(name string) string {
	return strings.ToLower(humps().ReplaceAllString(name, "${1}${3}_${2}${4}"))
}

var humps = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`([a-z])([A-Z])|([A-Z])([A-Z][a-z])`) })
