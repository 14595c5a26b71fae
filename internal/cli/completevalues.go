package cli

import (
	"fmt"
	"strings"

	"brazebooth/calc/advice"
	"brazebooth/internal/book"
	"brazebooth/internal/choice"
	"brazebooth/internal/config"
	"brazebooth/internal/near"
	"brazebooth/tables"
)

// Values that a shell may put: behind a tab stands what each is.

func settingNames() []string {
	var list []string
	for _, k := range config.Keys() {
		list = append(list, k.Name+"\t"+k.Usage)
	}
	return list
}

// settingValues are what a setting can be.
func settingValues(key string) []string {
	k, _ := config.Find(key) // it is one
	return k.Values
}

// completions are rows as a shell takes them.
func completions(rows []choice.Row) []string {
	list := make([]string, len(rows))
	for i := range rows {
		list[i] = strings.TrimSuffix(rows[i].ID+"\t"+rows[i].Tip, "\t")
	}
	return list
}

// kindUsage is how a kind is asked for.
var kindUsage = near.Or(kinds())

// kinds are the kinds of records that a book keeps.
func kinds() []string {
	var list []string
	for _, k := range book.Kinds {
		list = append(list, string(k))
	}
	return list
}

func sights() []string {
	var list []string
	for _, s := range tables.Sights() {
		list = append(list, s.ID+"\t"+s.Name)
	}
	return list
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
	var list []string
	for _, g := range tables.Gauges() {
		list = append(list, fmt.Sprint(g.N))
	}
	return list
}

func termWords() []string {
	var list []string
	for i := range tables.Terms() {
		list = append(list, tables.Terms()[i].Word)
	}
	return list
}
