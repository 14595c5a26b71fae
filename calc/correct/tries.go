package correct

import (
	"math"
	"strconv"
	"strings"

	"brazebooth/calc"
	"brazebooth/internal/mistake"
	"brazebooth/tables"
)

// Try is one test bead: its job and its look, as ids of tables.Sights in their order with commas.
type Try struct {
	Job  calc.Job
	Seen string
}

// SeenIDs turns a typed description of a bead's look into ids in the order of tables.Sights, each once. The
// error for an unknown word names what may be typed.
func SeenIDs(text string) (string, error) {
	given := map[string]bool{}
	for _, word := range calc.TypedWords(text) {
		if _, ok := tables.Sights.ByID(word); !ok {
			return "", mistake.In("seen", "nothing that a bead shows is called "+strconv.QuoteToASCII(word),
				"type any of "+strings.Join(SightIDs(), ", ")+", with commas")
		}
		given[word] = true
	}
	var ids []string
	for _, id := range SightIDs() {
		if given[id] {
			ids = append(ids, id)
		}
	}
	switch {
	case len(ids) == 0:
		return "", mistake.In("seen", "nothing is named",
			"type what the bead shows, as rolled-edge or burn-through,pores")
	case given["good"] && len(ids) > 1:
		return "", mistake.In("seen", "good cannot stand beside a fault", "type the faults alone, or good alone")
	}
	return strings.Join(ids, ","), nil
}

// SightIDs lists the ids of tables.Sights in their order.
func SightIDs() []string {
	var ids []string
	for _, s := range tables.Sights {
		ids = append(ids, s.ID)
	}
	return ids
}

// SameBead reports whether two jobs differ in the machine's settings only: then one bead says something about
// the next.
func SameBead(a, b calc.Job) bool {
	for _, j := range [...]*calc.Job{&a, &b} {
		*j = calc.Unlearned(*j) // readings taken meanwhile do not make it another job
		for i := range levers {
			*levers[i].opt(j) = calc.Opt{}
		}
		j.Amps, j.SpotStep, j.Aim, j.Flow = calc.Opt{}, calc.Opt{}, calc.Opt{}, calc.Opt{}
		// Choices that only the pages use do not affect a bead.
		j.Use, j.Hazard, j.Currency = "", "", ""
		for _, o := range [...]*calc.Opt{&j.ServiceTemp, &j.Load, &j.Safety, &j.Leg, &j.Throat, &j.Length, &j.Count,
			&j.ShaftDia, &j.Layer, &j.NozzleBore, &j.RatedAmps, &j.RatedDuty,
			&j.WirePrice, &j.GasPrice, &j.LabourRate, &j.Operating, &j.SteelPrice, &j.Grinding, &j.ZincRepair,
			&j.ZincLimit} {
			*o = calc.Opt{}
		}
	}
	return a == b
}

// AsSet is a job with the machine's settings fixed as a bead was laid: wire feed, travel, and a timed arc's
// times. Mere assumptions, and volts that follow from the current, stay open.
func AsSet(given calc.Job, laid *calc.Job) calc.Job {
	if !given.Amps.Set && !given.Feed.Set {
		given.Feed = laid.Feed
	}
	if given.Mode == "timed" {
		given.ArcOn, given.ArcOff, given.SpotStep = laid.ArcOn, laid.ArcOff, laid.SpotStep
	} else {
		given.Travel = laid.Travel
	}
	return given
}

// RoundSetting rounds every setting to a value that can be set.
func RoundSetting(j *calc.Job) {
	for i := range levers {
		if o := levers[i].opt(j); o.Set {
			o.V = math.Round(math.Round(o.V/levers[i].quantum)*levers[i].quantum*1000) / 1000
		}
	}
	if j.SpotStep.Set {
		j.SpotStep.V = math.Round(10*j.SpotStep.V) / 10
	}
	if j.Mode == "timed" {
		j.Travel = calc.Opt{} // follows from the times
	}
}
