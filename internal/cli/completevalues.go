package cli

import (
	"fmt"

	"brazebooth/calc/advice"
	"brazebooth/internal/config"
	"brazebooth/internal/quantity"
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

// values are what a setting can be.
func values(key string) []string {
	k, err := config.Find(key)
	if err != nil {
		return nil
	}
	return k.Values
}

func metals() []string {
	var list []string
	for _, m := range tables.Metals() {
		list = append(list, m.ID+"\t"+m.Name)
	}
	return list
}

func fillers() []string {
	var list []string
	for _, f := range tables.Fillers() {
		list = append(list, f.ID+"\t"+f.Name)
	}
	return list
}

func wires() []string {
	var list []string
	for _, w := range tables.Wires() {
		list = append(list, w.ID+"\t"+w.Spools)
	}
	return list
}

func options(rows []tables.Option) []string {
	var list []string
	for _, o := range rows {
		list = append(list, o.ID+"\t"+o.Line)
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

// gaugeWords are the gauges as a flag takes them, each with its thickness as uncoated sheet.
func gaugeWords() []string {
	var list []string
	for _, g := range tables.Gauges() {
		if in, ok := tables.GaugeThickness(g.N, tables.MSG); ok {
			list = append(list, fmt.Sprintf("%dga\t%.4f in, %.2f mm of uncoated steel", g.N, in, in*quantity.MMPerInch))
		}
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
