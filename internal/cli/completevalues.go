package cli

import (
	"strconv"
	"strings"

	"brazebooth/calc/advice"
	"brazebooth/internal/book"
	"brazebooth/internal/choice"
	"brazebooth/internal/config"
	"brazebooth/internal/near"
	"brazebooth/tables"
)

// Values that a shell may offer: after a tab comes what each is.

// column is one text of each row.
func column[T any](rows []T, text func(*T) string) []string {
	list := make([]string, len(rows))
	for i := range rows {
		list[i] = text(&rows[i])
	}
	return list
}

func settingNames() []string {
	return column(config.Keys(), func(k *config.Key) string { return k.Name + "\t" + k.Usage })
}

// settingValues are what a setting can be.
func settingValues(key string) []string {
	k, _ := config.Find(key) // it is one
	return k.Values
}

// completions are rows as a shell takes them.
func completions(rows []choice.Row) []string {
	return column(rows, func(r *choice.Row) string { return strings.TrimSuffix(r.ID+"\t"+r.Tip, "\t") })
}

// kindUsage is how a kind is asked for.
var kindUsage = near.Or(kinds())

// kinds are the kinds of records that a book keeps.
func kinds() []string { return column(book.Kinds[:], func(k *book.Kind) string { return string(*k) }) }

func sights() []string {
	return column(tables.Sights(), func(s *tables.Sight) string { return s.ID + "\t" + s.Name })
}

func pageNames() []string {
	list := []string{"all"}
	for _, p := range advice.Contents() {
		if p.Of != nil {
			list = append(list, p.Name)
		}
	}
	return list
}

func gaugeNumbers() []string {
	return column(tables.Gauges(), func(g *tables.Gauge) string { return strconv.Itoa(g.N) })
}

func termWords() []string {
	return column(tables.Terms(), func(t *tables.Term) string { return t.Word })
}
