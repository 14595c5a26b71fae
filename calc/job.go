package calc

import (
	"encoding/json"
	"fmt"
	"math"

	"brazebooth/calc/formula"
	"brazebooth/calc/learned"
)

// Opt is a number that may be left out of a Job.
type Opt struct {
	Set bool
	V   float64
}

// Some returns v as given.
func Some(v float64) Opt { return Opt{true, v} }

// Or returns the number, or other where none was given.
func (o Opt) Or(other float64) float64 {
	if o.Set {
		return o.V
	}
	return other
}

// IsZero lets encoding/json leave an absent number out.
func (o Opt) IsZero() bool { return !o.Set }

// MarshalJSON writes the bare number, or null.
func (o Opt) MarshalJSON() ([]byte, error) {
	if !o.Set {
		return []byte("null"), nil
	}
	if math.IsNaN(o.V) || math.IsInf(o.V, 0) {
		return nil, fmt.Errorf("%w: %g is no number", formula.ErrRange, o.V)
	}
	return json.Marshal(o.V)
}

// UnmarshalJSON reads a number or null.
func (o *Opt) UnmarshalJSON(b []byte) error {
	*o = Opt{}
	if string(b) == "null" {
		return nil
	}
	if err := json.Unmarshal(b, &o.V); err != nil {
		return err
	}
	o.Set = true
	return nil
}

// Job is what was chosen: everything that changes a figure on the Card. It is comparable and holds no references, so
// that it can be the key of a cache and a saved record. An empty string, a zero Gauge or an unset Opt means "not
// chosen": Solve assumes a value and says so on the Card.
type Job struct {
	// First member: the standing sheet of a tee, the upper sheet of a lap, the part of an overlay.
	Metal     string `json:"metal,omitzero"`
	Gauge     int    `json:"gauge,omitzero"`     // 7 to 30 in the metal's own system; Thickness overrides it
	Thickness Opt    `json:"thickness,omitzero"` // mm, as measured with its coating
	Coating   string `json:"coating,omitzero"`   // tables id; "none"
	// Second member; what is not chosen is taken from the first.
	Metal2     string `json:"metal2,omitzero"`
	Gauge2     int    `json:"gauge2,omitzero"`
	Thickness2 Opt    `json:"thickness2,omitzero"` // mm
	Coating2   string `json:"coating2,omitzero"`

	Joint    string `json:"joint,omitzero"`   // lap butt tee corner edge plug overlay
	Gap      Opt    `json:"gap,omitzero"`     // root opening; of a lap or tee under the member that ends there, mm
	Backing  string `json:"backing,omitzero"` // behind a butt: none copper-bar steel-strip patch
	Filler   string `json:"filler,omitzero"`
	Wire     Opt    `json:"wire,omitzero"` // diameter, mm
	Mode     string `json:"mode,omitzero"` // dip pulsed timed
	Gas      string `json:"gas,omitzero"`
	Position string `json:"position,omitzero"` // flat horizontal vertical-up vertical-down overhead

	Feed     Opt `json:"feed,omitzero"`      // m/min
	Amps     Opt `json:"amps,omitzero"`      // A; with Feed it counts as a reading
	Volts    Opt `json:"volts,omitzero"`     // V at the arc
	Travel   Opt `json:"travel,omitzero"`    // mm/s
	StickOut Opt `json:"stickout,omitzero"`  // contact tip to arc, mm
	Aim      Opt `json:"aim,omitzero"`       // arc's offset toward the second member, mm
	ArcOn    Opt `json:"arc_on,omitzero"`    // s, timed mode
	ArcOff   Opt `json:"arc_off,omitzero"`   // s
	SpotStep Opt `json:"spot_step,omitzero"` // mm
	RunIn    Opt `json:"run_in,omitzero"`    // from the timer's start to the arc's, s
	Flow     Opt `json:"flow,omitzero"`      // gas, L/min
	Preheat  Opt `json:"preheat,omitzero"`   // temperature of the parts before the arc, C

	// The whole part, where it is so small that it warms up while its seam is laid.
	PartWidth Opt `json:"part_width,omitzero"` // across the seam, both members together, mm
	PartMass  Opt `json:"part_mass,omitzero"`  // kg

	// What the booth's readings taught (both or none of a pair).
	Phi             Opt `json:"phi,omitzero"`         // V
	PhiSigma        Opt `json:"phi_sigma,omitzero"`   // V, one standard deviation
	VoltFactor      Opt `json:"volt_factor,omitzero"` // measured over modelled volts
	VoltFactorSigma Opt `json:"volt_factor_sigma,omitzero"`
	Readings        Opt `json:"readings,omitzero"`  // how many it was learned from
	Eta             Opt `json:"eta,omitzero"`       // arc efficiency
	EtaSigma        Opt `json:"eta_sigma,omitzero"` // one standard deviation

	// LearnedFor is the filler, wire and mode that Phi to Readings were learned with, by LearnedKey; they are left
	// out where the job has others. "" fits every job.
	LearnedFor string `json:"learned_for,omitzero"`

	// What the dials of the booth's power source give, by its readings.
	FeedDial  learned.Dial `json:"feed_dial,omitzero"`  // m/min
	VoltsDial learned.Dial `json:"volts_dial,omitzero"` // V
	// What the shop's own pulled pieces of this joint taught (all or none).
	Pulled      Opt    `json:"pulled,omitzero"`       // how many
	PulledMean  Opt    `json:"pulled_mean,omitzero"`  // mean of ln(load over length), N/mm
	PulledSigma Opt    `json:"pulled_sigma,omitzero"` // its standard deviation
	PulledFor   string `json:"pulled_for,omitzero"`   // the pieces' joint, by PulledKey; of others they teach nothing
	// Rhythm is what trials of a timed arc taught; it is left out where the job has another filler or wire.
	Rhythm learned.Rhythm `json:"rhythm,omitzero"`

	ZincLimit   Opt    `json:"zinc_limit,omitzero"`   // widest zinc-boiled half-width accepted, mm
	ServiceTemp Opt    `json:"service_temp,omitzero"` // C
	Use         string `json:"use,omitzero"`          // decorative seal load wear bearing
	Hazard      string `json:"hazard,omitzero"`       // sorted, comma-separated ids, or "none"
	Load        Opt    `json:"load,omitzero"`         // kN
	Safety      Opt    `json:"safety,omitzero"`       // factor on the low edge
	Leg         Opt    `json:"leg,omitzero"`          // mm
	Throat      Opt    `json:"throat,omitzero"`       // mm
	Length      Opt    `json:"length,omitzero"`       // seam or overlay length, mm
	Count       Opt    `json:"count,omitzero"`        // pieces
	Hole        Opt    `json:"hole,omitzero"`         // of a plug, mm
	ShaftDia    Opt    `json:"shaft_dia,omitzero"`    // mm
	Layer       Opt    `json:"layer,omitzero"`        // wanted build-up, mm
	NozzleBore  Opt    `json:"nozzle_bore,omitzero"`  // mm
	RatedAmps   Opt    `json:"rated_amps,omitzero"`   // plate current at RatedDuty, A
	RatedDuty   Opt    `json:"rated_duty,omitzero"`   // plate duty, %

	WirePrice  Opt    `json:"wire_price,omitzero"`  // per kg
	GasPrice   Opt    `json:"gas_price,omitzero"`   // per m3
	LabourRate Opt    `json:"labour_rate,omitzero"` // per hour
	Operating  Opt    `json:"operating,omitzero"`   // operating factor, %
	SteelPrice Opt    `json:"steel_price,omitzero"` // steel wire, per kg
	Grinding   Opt    `json:"grinding,omitzero"`    // of a steel bead, min/m
	ZincRepair Opt    `json:"zinc_repair,omitzero"` // beside a bead, min/m
	Currency   string `json:"currency,omitzero"`
}

// Laid is a card's job with every setting fixed at the card's values, so that one of them can be changed alone.
func Laid(card *Card) Job {
	j := card.Used
	for _, f := range [...]struct {
		name string
		opt  *Opt
	}{{"wire_feed", &j.Feed}, {"volts", &j.Volts}} {
		if g, ok := card.Figure(f.name); ok && !f.opt.Set {
			*f.opt = Some(g.Value)
		}
	}
	j.Amps = Opt{}
	return j
}
