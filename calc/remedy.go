package calc

import (
	"fmt"
	"slices"

	"brazebooth/calc/effort"
	"brazebooth/internal/crew"
	"brazebooth/tables"
)

// Remedy is a change that might open a good zone.
type Remedy struct {
	Change string  `json:"change"`
	Tried  bool    `json:"tried"` // computed; false where nothing here judges it, or see Late
	Opens  bool    `json:"opens"`
	Margin float64 `json:"margin,omitzero"` // %, at the setting it would then suggest
	Heat   float64 `json:"heat,omitzero"`   // net, J/mm, where ways over an open root are compared
	Steady bool    `json:"steady,omitzero"` // of a timed arc: an arc without pauses instead
	Late   bool    `json:"late,omitzero"`   // not tried, since the remedies before it took all the work
}

// remedies tries what a shop would try where no setting is good, each by computation and in parallel, as many as there
// is work left for; it also lists remedies that the model cannot try. each is about the work of one remedy.
func remedies(e *effort.Account, each int64, job Job, card *Card) ([]Remedy, error) {
	tries := candidates(&job, card)
	var list []Remedy
	for from, before := 0, e.Work(); from < len(tries); {
		if from > 0 { // some take more work than the job itself
			each = max(each, (e.Work()-before)/int64(from))
		}
		to := min(len(tries), from+int(min(sideBySide, max(0, effort.Most-timedWork-e.Work())/max(1, each))))
		if from == 0 { // two show how much work one takes
			to = min(to, 2)
		}
		if to == from {
			list = append(list, late(tries[from:])...)
			break
		}
		list = append(list, tryAll(e, tries[from:to], job, (*candidate).steady)...)
		from = to
	}
	if err := e.Over(); err != nil {
		return nil, err
	}
	list = append(list, timedInstead(e, job)...)
	if err := e.Over(); err != nil {
		return nil, err
	}
	if job.openRoot() {
		leastHeatFirst(list)
	}
	if ventable(card) {
		list = append(list, Remedy{Change: "a vent gap between coated sheets"})
	}
	return list, nil
}

// tryAll computes changes of a job side by side, each by try, which returns nil for a change that is not judged.
func tryAll(e *effort.Account, tries []candidate, job Job,
	try func(*candidate, *effort.Account, Job) *Remedy) (list []Remedy) {
	tried := make([]*Remedy, len(tries))
	var wg crew.Crew
	for i := range tries {
		wg.Go(func() { tried[i] = try(&tries[i], e, job) })
	}
	wg.Wait()
	for _, r := range tried {
		if r != nil {
			list = append(list, *r)
		}
	}
	return list
}

// late are the remedies of changes that are not tried.
func late(tries []candidate) (list []Remedy) {
	for _, c := range tries {
		list = append(list, Remedy{Change: c.change, Late: true})
	}
	return list
}

// ventable reports a closed lap with zinc on both sheets, whose vapour a gap would let out.
func ventable(card *Card) bool {
	m := &card.Setup.Members
	return card.Used.Joint == "lap" && card.Used.Gap.V == 0 && m[0].Coating.Zinc && m[1].Coating.Zinc
}

// timedWork is the work reserved for the timed arc, which is tried last.
const timedWork int64 = effort.Most / 4

// sideBySide is how many remedies are started before their work is counted.
const sideBySide = 4

// steady is the remedy that the change gives for a job with an arc without pauses; nil where the job does not allow it
// or nothing then judges it.
func (c *candidate) steady(e *effort.Account, job Job) *Remedy {
	if effort.Acquire(e.Context()) != nil {
		return nil
	}
	defer effort.Release()
	c.alter(&job)
	card, err := solve(e, job)
	if err != nil || card.Zone == "not-modelled" {
		return nil
	}
	r := Remedy{Change: c.change, Tried: true, Opens: card.Verdict() == "good"}
	if f, ok := card.Figure("margin"); ok && r.Opens {
		r.Margin = f.Value
	}
	if job.Joint == "butt" {
		r.weighed(&card)
	}
	return &r
}

// littleMore is how much warmer parts are made than they must be to be wetted, K: at the least preheat no other feed or
// travel wets.
const littleMore = 40

// candidate is a change of a job; change names it.
type candidate struct {
	change string
	alter  func(*Job)
}

// candidates are the changes worth trying for a job with that card; fillers that a rule of the trade or a melting point
// rules out are not tried.
func candidates(job *Job, card *Card) []candidate {
	list := backingTries(job)
	for _, w := range OtherWires(job.Wire.Or(defaultWire)) {
		list = append(list, candidate{w.ID + " in wire", func(j *Job) { j.Wire = Some(w.Diameter.V) }})
	}
	other := candidate{"pulsed", func(j *Job) { j.Mode = "pulsed" }}
	if job.Mode == "pulsed" {
		other = candidate{"short arc (dip)", func(j *Job) { j.Mode = "dip" }}
	}
	list = append(list, other)
	for _, f := range tables.Fillers {
		if f.ID != card.Used.Filler && !f.Comparison() && !RuledOut(&f, card) {
			list = append(list, candidate{"filler " + f.ID, func(j *Job) { j.Filler = f.ID }})
		}
	}
	list = append(list, heavyTries(card)...)
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

// OtherWires are the usual sizes for sheet beside a wire of so many millimetres.
func OtherWires(wire float64) []tables.Wire {
	return slices.DeleteFunc(slices.Clone(tables.Wires), func(w tables.Wire) bool {
		return w.Diameter.V == wire || !slices.Contains([]string{".030", ".035", ".045"}, w.ID)
	})
}

// heavyTries are warmer parts, unless zinc is on them, and for plate a thicker wire.
func heavyTries(card *Card) (list []candidate) {
	zinc := Applies("zinc", card)
	warm := 150.0
	if f, ok := card.Figure("least_preheat"); ok && f.Value+littleMore > warm {
		warm = tens(f.Value + littleMore)
	}
	warm = mostWarm(card, warm)
	if !zinc {
		list = append(list, candidate{fmt.Sprintf("parts warmed to %.0f °C", warm),
			func(j *Job) { j.Preheat = Some(warm) }})
	}
	if maxCore(card.Setup.Joined()) > tables.SheetThickest.V {
		thick := func(j *Job) { w, _ := tables.Wires.ByID("1/16"); j.Wire = Some(w.Diameter.V) }
		list = append(list, candidate{"1/16 in wire", thick})
		if !zinc {
			usual := mostWarm(card, tables.PreheatUsual.V)
			list = append(list, candidate{fmt.Sprintf("1/16 in wire, parts warmed to %.0f °C", usual),
				func(j *Job) { thick(j); j.Preheat = Some(usual) }})
		}
	}
	return list
}
