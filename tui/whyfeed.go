package tui

import (
	"fmt"

	"brazebooth/calc"
	"brazebooth/internal/choice"
	"brazebooth/internal/quantity"
	"brazebooth/internal/report"
)

// feedSentence says how wire feed and travel come about: from the sheet to the heat, from the heat to the feed.
func feedSentence(b *block, th *theme, name string, c *calc.Card, sys quantity.System, w int) {
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
	b.say(th.bold, 0, fmt.Sprintf("%s is %s of metal that takes up the heat. %s of %s wire draws %s; at a travel of "+
		"%s that puts %s into the sheet.",
		choice.ByName("gauge").Shown(c, sys), quantity.Show(c.Setup.Members[0].Core, "mm", sys.Lead()), feed,
		choice.ByName("wire").Shown(c, sys), amps, travel, heat), w)
	b.skip()
}

// limitBars show how near wire feed and travel bring each limit: that is what they were chosen by.
func limitBars(b *block, th *theme, name string, c *calc.Card, w int) {
	if name != "wire_feed" && name != "travel" || len(c.Edges) == 0 {
		return
	}
	b.skip()
	b.say(th.quiet, 0, "The limits, nearest first: how much more or less feed or travel each allows.", w)
	b.addAll(block(edgesOf(c).Draw(th.Theme, min(w, 56), len(c.Edges)+len(c.Unjudged))))
}
