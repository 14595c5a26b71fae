package thinsheet

import "errors"

// Reason says what ends a range or why there is none.
type Reason string

// The reasons.
const (
	EdgeCold     Reason = "edge-cold"      // if shorter, a root edge is not wetted through
	JointCold    Reason = "joint-cold"     // if shorter, the joint's line is not wetted
	EdgeMelts    Reason = "edge-melts"     // if longer, the base metal melts at the root edge
	Patience     Reason = "patience"       // longer is impractical, although nothing melts
	CentreLiquid Reason = "centre-liquid"  // if shorter, the arc strikes a fully liquid puddle
	Frozen       Reason = "frozen"         // if longer, the puddle freezes
	NextCold     Reason = "next-cold"      // if longer, the next spot does not wet both edges
	StepFill     Reason = "fill"           // if further apart, the gap is not filled
	StepOverlap  Reason = "overlap"        // if further apart, the spots do not overlap the puddle
	NeverWets    Reason = "never-wets"     // the edges never reach the filler's liquidus
	MeltsFirst   Reason = "melts-first"    // the edge melts before its back face is wetted
	TooHot       Reason = "too-hot"        // too hot even at the shortest on time
	TwoSettings  Reason = "two-settings"   // a cold first spot needs longer than a warm one allows
	WideGap      Reason = "wide-gap"       // too little of the arc falls on the sheet
	TooThick     Reason = "too-thick"      // heat flows in three dimensions
	NoCycle      Reason = "does-not-cycle" // the cycle did not repeat within its limit
	Falls        Reason = "falls"          // the puddle does not stay in the joint
	NoPause      Reason = "no-pause"       // the puddle freezes with the arc's end: there is no off to keep
)

// Rhythm is the input for a timed arc: a joint, the metal that a step must lay and the limits of a hand.
type Rhythm struct {
	Input
	Section   float64 // metal that a millimetre of seam takes, mm2; 0: nothing to fill
	Surface   bool    // wetting the face is enough (lap, tee, overlay); otherwise the root edges must be wetted through
	MeltDepth float64 // share of the base metal that may be molten at the root edge
	LongestOn float64 // s
	Longest   float64 // off, s
	Shortest  float64 // on, s
	LeastOff  float64 // the shortest off that counts as a pause, s
	Step      float64 // macro step while the arc burns, s; 0 means 8 ms, longer for slow cycles
	FixedOn   float64 // s; 0: to be found
	FixedOff  float64
	FixedStep float64 // mm

	// Stays is the margin by which a cycle's puddle stays: zero when it begins to fall and positive inside; nil
	// if nothing can fall. It is called from one goroutine.
	Stays func(*OnOff) float64
}

// OnOff is one repeating cycle.
type OnOff struct {
	On, Off, Step     float64 // s, s, mm
	StepBy            Reason
	Puddle            float64    // mm, at the end of on
	Wide              [2]float64 // mm, of liquid filler from the root edge of each lit arm, at the end of on
	StepMost          float64    // mm, the longest that fill and overlap allow
	Wet               float64    // K, of the joint over its limit of wetting at the end of on
	EdgePeak          float64    // C, of the cooler root edge at the end of on
	HotPeak           float64    // C, of the hotter one
	DriftOn, DriftOff float64    // relative changes from the cycle before
	Converged         bool
	Reached           bool // on was ended by its criterion, not by its limit
	Cooled            bool // the same for off
}

// Point is one moment of a trace.
type Point struct {
	Time   float64 // s
	On     bool
	Edge   float64 // C, cooler root edge, mean through the sheet
	Centre float64 // C, on the joint's line
	Back   float64 // C, back face at the root edge
}

// Times are the on and off times of a joint with the reason for each end.
type Times struct {
	Reason   Reason  // why there is no rhythm; "" if there is one
	FirstOn  float64 // s, until a cold first spot has wetted both root edges through; 0: never
	OnMin    float64 // s, the same in the repeating cycle
	OnMax    float64
	OnMaxBy  Reason
	OffMin   float64
	OffMax   float64
	OffMaxBy Reason
	OnOff    OnOff   // at the suggested setting
	Kept     float64 // share of the logarithmic range of on in which the puddle stays, from 0 to 1
	Trace    []Point
	Residual float64 // of the energy balance in the suggested cycle's run, relative
	settled  bool    // every cycle repeated
	Work     int64   // cells times stages of all runs so far, the same on every machine
	Grid     float64 // relative difference of FirstOn on cells of half the side
}

// ErrStopped is returned if stop ended the run.
var ErrStopped = errors.New("stopped")
