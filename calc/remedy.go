package calc

import (
	"context"

	"brazebooth/tables"
)

// Remedy is a change that might open a good zone.
type Remedy struct {
	Change string  `json:"change"`
	Tried  bool    `json:"tried"` // by computation; false: the model has no equations for it
	Opens  bool    `json:"opens"`
	Margin float64 `json:"margin,omitzero"` // %, at the setting it would then suggest
}

// remedies tries what a shop would try where no setting is good, each by computation, and lists what the
// model cannot try.
func remedies(ctx context.Context, job Job) ([]Remedy, error) {
	var list []Remedy
	try := func(change string, alter func(*Job)) error {
		if err := ctx.Err(); err != nil {
			return err
		}
		j := job
		alter(&j)
		card, err := Solve(j)
		if err != nil {
			return nil // a change that cannot be made is no remedy
		}
		r := Remedy{Change: change, Tried: true, Opens: card.Zone == "good" && allMet(card.Edges)}
		if f, ok := card.Figure("margin"); ok && r.Opens {
			r.Margin = f.Value
		}
		list = append(list, r)
		return nil
	}
	for _, t := range candidates(&job) {
		if err := try(t.change, t.alter); err != nil {
			return nil, err
		}
	}
	timed, err := timedRemedy(ctx, job)
	if err != nil {
		return nil, err
	}
	return append(list, timed, Remedy{Change: "a backing bar"}, Remedy{Change: "a vent gap between coated sheets"}), nil
}

// timedRemedy tries whether the arc's pauses would do what no steady heat does.
func timedRemedy(ctx context.Context, job Job) (Remedy, error) {
	r := Remedy{Change: "timed arc (see gap)", Tried: true}
	job.Mode = "timed"
	g, err := runGap(ctx, job, true, nil)
	if ctx.Err() != nil {
		return r, ctx.Err()
	}
	if err == nil && g.rhythmic() && g.times.OnMin > 0 {
		r.Opens, r.Margin = true, 100*(g.times.OnMax/g.times.OnMin-1)/2
	}
	return r, nil
}

func allMet(edges []Edge) bool {
	for _, e := range edges {
		if !e.Met {
			return false
		}
	}
	return true
}

type candidate struct {
	change string
	alter  func(*Job)
}

// candidates are the changes worth trying for a job.
func candidates(job *Job) []candidate {
	wire := job.Wire.Or(defaultWire)
	var list []candidate
	for _, id := range [...]string{".030", ".035", ".045"} {
		w, err := tables.FindWire(id)
		if err != nil || w.Diameter.V == wire {
			continue
		}
		list = append(list, candidate{id + " in wire", func(j *Job) { j.Wire = Some(w.Diameter.V) }})
	}
	if job.Mode != "pulsed" {
		list = append(list, candidate{"pulsed", func(j *Job) { j.Mode = "pulsed" }})
	}
	if job.Mode == "pulsed" {
		list = append(list, candidate{"short arc (dip)", func(j *Job) { j.Mode = "dip" }})
	}
	for _, id := range [...]string{"cusi3", "cual8"} {
		if job.Filler != id {
			list = append(list, candidate{"filler " + id, func(j *Job) { j.Filler = id }})
		}
	}
	list = append(list, candidate{"parts warmed to 150 °C", func(j *Job) { j.Preheat = Some(150) }})
	if job.Gauge > 10 {
		list = append(list, candidate{"sheet two gauges thicker", func(j *Job) {
			j.Gauge -= 2
			if j.Gauge2 > 10 {
				j.Gauge2 -= 2
			}
		}})
	}
	return list
}
