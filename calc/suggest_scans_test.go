package calc

import (
	"math"
	"slices"
	"strings"
	"testing"
)

// scan is a job that changes bit by bit: thickness by 0.02 mm, anything else by about 2 %.
type scan struct {
	name    string
	steps   int
	job     func(i int) Job
	thicker bool // each step is a thicker sheet, for which less heat would be wrong
}

// turns are the scans in which thicker sheet may get less than leastHeat of a thinner one's heat, and why. Each says
// that the travel is faster then, and that is tested.
var turns = map[string]string{
	"butt, horizontal":  "the metal stays up at faster travels only",
	"lap, horizontal":   "the metal stays up at faster travels only: over 1.74 mm the slow end of the zone is gone",
	"tee, CuAl8":        dwells,
	"tee, aluminized":   dwells,
	"tee, stick-out 18": dwells,
}

const dwells = "the longer the arc dwells the more a thick sheet carries away: more wire at a faster travel wets as " +
	"far with less heat for each millimetre"

// shortfall is what a scan is known not to hold, and why; docs/model.md names each. Whatever else it shows is an error.
type shortfall struct {
	step    float64 // the furthest that feed or travel moves, a logarithm; 0 where that holds
	outside bool    // a suggestion lies outside a zone that is wide enough
	heat    bool    // thicker sheet gets less than leastHeat
	ends    bool    // a range ends past a short stretch in which an edge is just missed
	why     string
}

var shortfalls = map[string]shortfall{
	"lap, volts given":                      {step: 0.10, why: "the chance along the ridge is flat"},
	"butt, volts given":                     {step: 0.065, why: voltsAreHeat},
	"tee, volts given":                      {step: 0.085, why: voltsAreHeat},
	"lap, horizontal":                       {step: 0.07, why: slowEndGoes},
	"tee, 0.8 wire":                         {step: 0.075, why: onePoint},
	"tee, 0.9 wire":                         {step: 0.055, why: onePoint},
	"lap, 0.9 wire":                         {outside: true, heat: true, why: zoneSplits},
	"lap, stick-out 8":                      {ends: true, why: shortStretch},
	"lap, mild-steel on 1 mm stainless-304": {ends: true, why: shortStretch},
}

const (
	slowEndGoes  = "13 to 35 beads in 100 are good, and the slow end of the zone goes"
	onePoint     = "one computed point of the map stops wetting a member at once"
	zoneSplits   = "17 beads in 100 are good, in a zone that splits"
	voltsAreHeat = "2 % of volts are 2 % of heat, and every edge of the zone moves by more than that"
	shortStretch = "stretches narrower than 4 % of a setting are searched for only near an edge"
)

// scans are the ways in which a job changes: its own thickness over joints and metals, the second member's, and what
// else a welder gives.
func scans() []scan {
	with := func(joint string, alter func(j *Job, i int)) func(int) Job {
		return func(i int) Job {
			j := Job{Metal: "mild-steel", Joint: joint, Thickness: Some(1.2)}
			alter(&j, i)
			return j
		}
	}
	list := []scan{
		{"lap, gap", 60, with("lap", func(j *Job, i int) { j.Gap = Some(0.02 * float64(i)) }), false},
		{"butt, gap", 60, with("butt", func(j *Job, i int) { j.Gap = Some(0.02 * float64(i)) }), false},
		{"lap, stick-out", 60, with("lap", func(j *Job, i int) { j.StickOut = Some(by(7, i)) }), false},
		{"lap, preheat", 120, with("lap", func(j *Job, i int) { j.Preheat = Some(by(25, i)) }), false},
	}
	for _, joint := range []string{"lap", "butt", "tee"} {
		list = append(list,
			scan{joint + ", wire feed given", 60, with(joint, func(j *Job, i int) { j.Feed = Some(by(2.5, i)) }),
				false},
			scan{joint + ", travel given", 60, with(joint, func(j *Job, i int) { j.Travel = Some(by(4, i)) }), false},
			scan{joint + ", amps given", 60, with(joint, func(j *Job, i int) { j.Amps = Some(by(45, i)) }), false},
			scan{joint + ", volts given", 40, with(joint, func(j *Job, i int) { j.Volts = Some(by(13, i)) }), false})
	}
	return append(list, thicker()...)
}

// thicker are the scans over the sheet's own thickness and over the second member's.
func thicker() (list []scan) {
	add := func(name string, steps int, base Job, alter func(j *Job, i int)) {
		list = append(list, scan{name, steps, func(i int) Job { j := base; alter(&j, i); return j }, true})
	}
	own := func(j *Job, i int) { j.Thickness = Some(0.6 + 0.02*float64(i)) }
	second := func(j *Job, i int) { j.Thickness2 = Some(0.6 + 0.02*float64(i)) }
	for _, joint := range []string{"lap", "butt", "tee", "corner"} {
		for name, job := range map[string]Job{"1.0 wire": {}, "0.8 wire": {Wire: Some(0.8)},
			"1.2 wire": {Wire: Some(1.2)}, "0.9 wire": {Wire: Some(0.889)}, "galvanized": {Metal: "galvanized"},
			"stainless":  {Metal: "stainless-304"},
			"aluminized": {Metal: "aluminized"}, "CuAl8": {Filler: "cual8"}, "CuSn6": {Filler: "cusn6"},
			"horizontal": {Position: "horizontal"}, "overhead": {Position: "overhead"},
			"stick-out 8": {StickOut: Some(8)}, "stick-out 18": {StickOut: Some(18)}, "pulsed": {Mode: "pulsed"}} {
			if job.Joint = joint; job.Metal == "" {
				job.Metal = "mild-steel"
			}
			if !job.Wire.Set {
				job.Wire = Some(1)
			}
			add(joint+", "+name, 120, job, own)
		}
		add(joint+", thick and hot", 70, Job{Metal: "mild-steel", Joint: joint, Preheat: Some(350)},
			func(j *Job, i int) { j.Thickness = Some(by(3, i)) })
	}
	for _, joint := range []string{"lap", "tee"} {
		for _, pair := range [][2]string{{"mild-steel", "mild-steel"}, {"stainless-304", "mild-steel"},
			{"mild-steel", "stainless-304"}, {"copper", "mild-steel"}, {"mild-steel", "copper"}} {
			add(joint+", "+pair[1]+" on 1 mm "+pair[0], 120, Job{Metal: pair[0], Metal2: pair[1], Joint: joint,
				Thickness: Some(1)}, second)
		}
	}
	slices.SortFunc(list, func(a, b scan) int { return strings.Compare(a.name, b.name) })
	return list
}

// by is a number after so many steps of 2 %.
func by(from float64, i int) float64 { return from * math.Pow(1.02, float64(i)) }

func TestShortfallsAreOfScans(t *testing.T) {
	names := map[string]bool{}
	for _, s := range scans() {
		names[s.name] = true
	}
	for name, known := range shortfalls {
		if !names[name] || known.why == "" {
			t.Errorf("%q is no scan, or has no reason", name)
		}
	}
}
