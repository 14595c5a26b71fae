package tui

import (
	"fmt"
	"slices"

	"brazebooth/calc"
	"brazebooth/internal/choice"
	"brazebooth/internal/quantity"
	"brazebooth/internal/report"
)

// feedReasons says what wire feed and travel do together, and how near they bring each limit: that is what they were chosen by.
func feedReasons(b *block, th *theme, name string, c *calc.Card, sys quantity.System, w int) {
	if name != "wire_feed" && name != "travel" {
		return
	}
	said := func(name string) string {
		f, ok := c.Figure(name)
		if !ok {
			return ""
		}
		x := report.ValueOf(&f, sys)
		if x.Low == "" || f.Name == "wire_feed" || f.Name == "travel" { // these have no doubt of their own
			return x.String()
		}
		return x.String() + " (" + x.Band() + ")"
	}
	feed, travel, amps, heat := said("wire_feed"), said("travel"), said("current"), said("net_heat")
	if feed == "" || travel == "" || amps == "" || heat == "" {
		return
	}
	b.skip()
	b.say(th.plain, 0, fmt.Sprintf("%s of %s wire draws %s; at a travel of %s that puts %s into the sheet.", feed, choice.ByName("wire").Shown(c, sys), amps, travel, heat), w)
	if len(c.Edges) == 0 {
		return
	}
	b.say(th.plain, 0, "The limits, nearest first:", w)
	nearest := calc.Card{Edges: slices.SortedFunc(slices.Values(c.Edges), nearer)}
	lines := report.Words([]report.Block{report.Edges{Card: &nearest}}, report.Options{})
	for i := range lines {
		th.edge(b, &lines[i], w)
	}
}

// nearer sorts what is not met first, then by how little is left.
func nearer(a, b calc.Edge) int {
	switch {
	case a.Met != b.Met && !a.Met, a.Met == b.Met && a.Margin < b.Margin:
		return -1
	case a.Met == b.Met && a.Margin == b.Margin:
		return 0
	}
	return 1
}
