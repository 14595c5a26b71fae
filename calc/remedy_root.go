package calc

import (
	"cmp"
	"context"
	"slices"

	"brazebooth/calc/effort"
	"brazebooth/calc/thinsheet"
	"brazebooth/tables"
)

// openRoot reports a butt with an opening and nothing behind it.
func (j *Job) openRoot() bool {
	return j.Joint == "butt" && j.Gap.V > 0 && (j.Backing == "" || j.Backing == noBacking)
}

// backingTries are the backings worth trying for a butt: each of them over an open root, a copper bar behind a closed
// one.
func backingTries(job *Job) []candidate {
	var list []candidate
	for _, b := range tables.Backings {
		open := job.Gap.V > 0 || b.ID == copperBar
		if job.Joint != "butt" || b.ID == noBacking || b.ID == job.Backing || !open {
			continue
		}
		change := b.Name + " behind"
		if b.ID == patchBehind {
			change += ", two beads"
		}
		list = append(list, candidate{change, func(j *Job) { j.Backing = b.ID }})
	}
	return list
}

// weighed notes, on a remedy over an open root, the heat that a millimetre of the joint takes, J/mm: for a patch that
// of both beads.
func (r *Remedy) weighed(card *Card) {
	if f, ok := card.Figure("net_heat"); ok && r.Opens {
		if r.Heat = f.Value; card.Used.Backing == patchBehind {
			r.Heat *= 2
		}
	}
}

// timedInstead is the remedy of a timed arc, as SolveTimed answers it. Its margin is that of on: half of the way from
// the shortest to the longest. None where no timed arc is judged.
func timedInstead(e *effort.Account, job Job) []Remedy {
	r := Remedy{Change: "timed arc (gap, key t)"}
	job.Mode = "timed"
	g, err := bestTimed(e, job)
	if err == nil {
		err = g.goOn(e, (*thinsheet.Run).Settle)
	}
	if err != nil || g.unjudged() {
		return nil
	}
	r.Tried, r.Opens = true, g.rhythmic()
	if !r.Opens {
		return []Remedy{r}
	}
	if t := &g.times; t.OnMin > 0 {
		r.Margin = 100 * (t.OnMax/t.OnMin - 1) / 2
	}
	if b := &g.times.OnOff; job.Joint == "butt" && b.Step > 0 {
		r.Heat = g.in.Power * b.On / b.Step
	}
	return []Remedy{r}
}

// leastHeatFirst puts remedies that open a zone first, those with the least heat before others. The rest stay in the
// order in which they were tried.
func leastHeatFirst(list []Remedy) {
	slices.SortStableFunc(list, func(a, b Remedy) int {
		switch {
		case a.Opens != b.Opens:
			return map[bool]int{true: -1, false: 1}[a.Opens]
		case a.Opens && a.Heat > 0 && b.Heat > 0:
			return cmp.Compare(a.Heat, b.Heat)
		}
		return 0
	})
}

// steadyWays are the ways over a timed job's open root without a timed arc: as it is, and with each backing. Settings
// that depend on the arc's times are left open, as a window leaves them.
func steadyWays(e *effort.Account, job Job) []Remedy {
	var list []candidate
	if job.openRoot() || job.backed() != "" {
		list = append(list, candidate{"arc without pauses", func(*Job) {}})
	}
	job = withoutTimes(job)
	job.Mode = ""
	list = append(list, backingTries(&job)...)
	found := tryAll(e, list, job, (*candidate).steady)
	for i := range found {
		found[i].Steady = true
	}
	return found
}

// RootWays compares the ways over an open root: the arc without pauses as it is and over each backing, and the timed
// arc. Ways that work come first, by the heat that they take; ways that nothing here judges are left out. There are
// none for a joint that is no open butt. Errors are the context's.
func RootWays(ctx context.Context, job Job) ([]Remedy, error) {
	if !job.openRoot() {
		return nil, nil
	}
	e := effort.New(ctx)
	list := append(steadyWays(e, job), timedInstead(e, withoutTimes(job))...)
	leastHeatFirst(list)
	return list, e.Over()
}

// withoutTimes leaves open what the program suggests for a timed arc.
func withoutTimes(job Job) Job {
	job.Feed, job.Amps, job.Travel, job.ArcOn, job.ArcOff, job.SpotStep = Opt{}, Opt{}, Opt{}, Opt{}, Opt{}, Opt{}
	return job
}
