package calc

import (
	"cmp"
	"fmt"
	"math"
	"strconv"

	"brazebooth/internal/mistake"
	"brazebooth/internal/quantity"
	"brazebooth/tables"
)

// Defaults of a job in which nothing is chosen: the most common booth job. They are choices, not physical figures,
// and each is marked as assumed on the card.
const (
	defaultMetal    = "galvanized"
	defaultGauge    = 16
	defaultJoint    = "lap"
	defaultMode     = "dip"
	defaultPosition = "flat"
	defaultGas      = "argon"
	defaultWire     = 0.889 // mm: .035 in
	timedGap        = 1.5   // mm, of a timed butt whose root opening was not given
	usualSeam       = 300   // mm, of a seam that warms its part
)

// resolution is a job while it is being completed.
type resolution struct {
	card *Card
	used Job
}

// assume notes on the card that a field was not given.
func (r *resolution) assume(field, value, why string) {
	r.card.Assumed = append(r.card.Assumed, Assumption{field, value, why})
}

// open assumes a choice that was not made.
func (r *resolution) open(field string, choice *string, usual, why string) {
	if *choice == "" {
		*choice = usual
		r.assume(field, usual, why)
	}
}

// openNumber assumes a number that was not given.
func (r *resolution) openNumber(field string, o *Opt, usual float64, unit, why string) {
	if !o.Set {
		*o = Some(usual)
		r.assume(field, Number(usual)+unit, why)
	}
}

// resolve completes the job with marked assumptions and looks up its table rows. It leaves the suggested settings
// (feed, travel, arc times) open.
func resolve(job Job, card *Card) error {
	if err := cmp.Or(checkNumbers(&job), checkDials(&job)); err != nil {
		return err
	}
	card.Job = job
	card.Assumed = make([]Assumption, 0, 16)
	r := resolution{card, job}
	for _, step := range [...]func(*resolution) error{
		(*resolution).joint, (*resolution).backing, (*resolution).first, (*resolution).second, (*resolution).filler,
		(*resolution).process, (*resolution).extension, (*resolution).solidZinc, (*resolution).aim,
	} {
		if err := step(&r); err != nil {
			return err
		}
	}
	card.Used = forThisWire(r.used)
	card.Used.read(&card.Setup.Filler)
	return nil
}

// Complete returns a job with assumptions for what was left open, except for what is suggested: feed, travel, on and
// off times.
func Complete(job Job) (Job, error) {
	var card Card
	err := resolve(job, &card)
	return card.Used, err
}

func (r *resolution) joint() error {
	if u := &r.used; u.Mode == "timed" && u.Gap.V > 0 {
		r.open("joint", &u.Joint, "butt", "an open root under a timed arc lies between edges that face each other")
	}
	r.open("joint", &r.used.Joint, defaultJoint, "the usual sheet joint")
	r.card.Setup.One = r.used.Joint == "overlay"
	_, err := row("joint", r.used.Joint, tables.Joints.ByID, tables.FindJoint)
	return err
}

func (r *resolution) first() error {
	u := &r.used
	metal := defaultMetal
	if r.card.Setup.One { // an overlay is never laid on zinc
		metal = "mild-steel"
	}
	r.open("metal", &u.Metal, metal, "nothing chosen yet")
	if r.card.Setup.One && u.ShaftDia.Set && u.Gauge == 0 && !u.Thickness.Set {
		r.openNumber("thickness", &u.Thickness, u.ShaftDia.V/2, "mm",
			"half of the shaft's diameter: what lies under the bead")
	}
	if u.Gauge == 0 && !u.Thickness.Set {
		u.Gauge = defaultGauge
		r.assume("gauge", strconv.Itoa(defaultGauge)+"ga", "nothing chosen yet")
	}
	m, err := r.member("", u.Metal, u.Gauge, u.Thickness, &u.Coating)
	r.card.Setup.Members[0] = m
	return err
}

func (r *resolution) second() error {
	u := &r.used
	if r.card.Setup.One {
		u.Metal2, u.Gauge2, u.Thickness2, u.Coating2 = "", 0, Opt{}, ""
		return nil
	}
	given := u.Metal2 != ""
	if !given {
		u.Metal2 = u.Metal
		if u.Coating2 == "" {
			u.Coating2 = u.Coating
		}
	}
	if u.Gauge2 == 0 && !u.Thickness2.Set {
		u.Gauge2, u.Thickness2 = u.Gauge, u.Thickness
		if given && !u.Thickness2.Set && !sameSystem(u.Metal, u.Metal2) {
			u.Gauge2, u.Thickness2 = 0, Some(r.card.Setup.Members[0].Thickness)
		}
		r.assume("gauge2", "as the first", "the second member's thickness was not given")
	}
	m, err := r.member("2", u.Metal2, u.Gauge2, u.Thickness2, &u.Coating2)
	r.card.Setup.Members[1] = m
	return err
}

func sameSystem(a, b string) bool {
	ma, okA := tables.Metals.ByID(a)
	mb, okB := tables.Metals.ByID(b)
	return okA && okB && ma.System == mb.System
}

// member looks up one member of the joint; suffix "2" names the second member's fields.
func (r *resolution) member(suffix, metal string, gauge int, thickness Opt, coating *string) (Member, error) {
	sheet, err := row("metal"+suffix, metal, tables.Metals.ByID, tables.FindMetal)
	if err != nil {
		return Member{}, err
	}
	if *coating == "" {
		*coating = sheet.Coating
		if sheet.Coating != "none" {
			r.assume("coating"+suffix, sheet.Coating, "the usual coat of this sheet; read the mill tag")
		}
	}
	coat, err := row("coating"+suffix, *coating, tables.Coatings.ByID, tables.FindCoating)
	if err != nil {
		return Member{}, err
	}
	m := Member{Metal: sheet, Coating: coat, Gauge: gauge, Thickness: thickness.V}
	if thickness.Set {
		m.Gauge = 0
	} else {
		in, ok := tables.GaugeThickness(gauge, sheet.System)
		if !ok {
			return m, mistake.In("gauge"+suffix, fmt.Sprintf("the %s system has no %d ga", sheet.System, gauge),
				"type 8ga to 30ga, or the thickness as .060 or 1.5mm")
		}
		m.Thickness = in * quantity.MMPerInch
	}
	m.Core = m.Thickness - 2*CoatDepth(coat)
	if !(m.Core >= thinnest) {
		return m, mistake.In("thickness"+suffix,
			fmt.Sprintf("under the coat %s no steel is left of %s mm", coat.ID, Number(m.Thickness)),
			fmt.Sprintf("type a thickness from %s mm, or another coating",
				Number(math.Ceil(1000*(thinnest+2*CoatDepth(coat)))/1000)))
	}
	return m, nil
}

func (r *resolution) filler() error {
	u := &r.used
	r.open("filler", &u.Filler, usualFiller(&r.card.Setup, u.Use), "the usual filler for these metals")
	if !u.Wire.Set {
		u.Wire = Some(defaultWire)
		r.assume("wire", ".035in", "the usual size for sheet")
	}
	var err error
	r.card.Setup.Filler, err = row("filler", u.Filler, tables.Fillers.ByID, tables.FindFiller)
	return err
}

// Joined are the members that the joint has.
func (s *Setup) Joined() []Member {
	if s.One {
		return s.Members[:1]
	}
	return s.Members[:]
}

func (r *resolution) process() error {
	u := &r.used
	r.open("mode", &u.Mode, defaultMode, "runs on every power source")
	if _, err := row("mode", u.Mode, tables.Modes.ByID, tables.FindMode); err != nil {
		return err
	}
	r.open("position", &u.Position, defaultPosition, "the easiest")
	if _, err := row("position", u.Position, tables.Positions.ByID, tables.FindPosition); err != nil {
		return err
	}
	r.open("gas", &u.Gas, defaultGas, "the usual gas for bronze")
	if u.Hazard != "" {
		ids, err := HazardIDs(u.Hazard)
		if err != nil {
			return err
		}
		u.Hazard = ids
	}
	g, err := row("gas", u.Gas, tables.Gases.ByID, tables.FindGas)
	r.card.Setup.Gas = g
	if err == nil && !u.Flow.Set {
		u.Flow = Some(usualGas(u, &g).Value)
	}
	return err
}

func (r *resolution) extension() error {
	u := &r.used
	r.openNumber("stickout", &u.StickOut, tables.DefaultStickOut.V, "mm", "tip to arc; not measured yet")
	warm, why := tables.RoomTemperature.V, "parts at room temperature"
	switch iron := Applies(string(tables.CastIron), r.card); {
	case iron && Applies("zinc", r.card):
		why = "cast iron is warmed, but never with zinc on: strip it"
	case iron:
		warm, why = tables.IronPreheat.V, "cast iron is warmed through before the arc"
	}
	r.openNumber("preheat", &u.Preheat, warm, "C", why)
	gap := 0.0
	if u.Mode == "timed" && u.Joint == "butt" {
		gap = timedGap
	}
	r.openNumber("gap", &u.Gap, gap, "mm", "root opening not given")
	if u.PartWidth.Set || u.PartMass.Set {
		r.openNumber("length", &u.Length, usualSeam, "mm", "seam's length not given")
	}
	return nil
}
