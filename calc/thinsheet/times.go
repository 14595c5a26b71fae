package thinsheet

import "errors"

// Reason says what ends a range or why there is none.
type Reason string

// The reasons.
const (
	EdgeCold     Reason = "edge-cold"      // shorter leaves a root edge not wetted through
	JointCold    Reason = "joint-cold"     // shorter leaves the joint's line not wetted
	EdgeMelts    Reason = "edge-melts"     // longer melts the base metal at the root edge
	Patience     Reason = "patience"       // longer is no rhythm; nothing melts
	CentreLiquid Reason = "centre-liquid"  // shorter strikes into a puddle that is all liquid
	Frozen       Reason = "frozen"         // longer lets the puddle freeze
	NextCold     Reason = "next-cold"      // longer, and the next spot no longer wets both edges
	StepFill     Reason = "fill"           // further apart leaves the gap unfilled
	StepOverlap  Reason = "overlap"        // further apart does not overlap the puddle
	NeverWets    Reason = "never-wets"     // the edges never reach the filler's liquidus
	MeltsFirst   Reason = "melts-first"    // the edge melts before its back face is wet
	TooHot       Reason = "too-hot"        // under the shortest on time already
	TwoSettings  Reason = "two-settings"   // a first spot needs longer than a warm one bears
	WideGap      Reason = "wide-gap"       // the arc finds little sheet to land on
	TooThick     Reason = "too-thick"      // heat flows in three dimensions
	NoCycle      Reason = "does-not-cycle" // the cycle did not repeat within its limit
	Falls        Reason = "falls"          // the puddle does not stay in the joint
)

// Rhythm is what a timed arc needs: a joint, the metal a step must lay and the limits of a hand.
type Rhythm struct {
	Input
	Section   float64 // metal that a millimetre of seam takes, mm2; 0: nothing to fill
	Surface   bool    // wetting its face is enough (lap, tee, overlay); else the root edges must be wet through
	MeltDepth float64 // share of the base metal that may be molten at the root edge
	LongestOn float64 // s
	Longest   float64 // off, s
	Shortest  float64 // on, s
	Step      float64 // macro step while the arc burns, s; 0 means 8 ms, longer for slow cycles
	FixedOn   float64 // s; 0: found
	FixedOff  float64
	FixedStep float64 // mm

	// Stays is how far a cycle's puddle is from falling, zero on the edge and positive inside; nil where nothing can
	// fall. It is called from one goroutine.
	Stays func(*OnOff) float64
}

// OnOff is one repeating cycle.
type OnOff struct {
	On, Off, Step     float64 // s, s, mm
	StepBy            Reason
	Puddle            float64    // mm, at the end of on
	Wide              [2]float64 // mm, from the root edge of each lit arm as far as the filler is not frozen, then
	StepMost          float64    // mm, what fill and overlap allow
	Wet               float64    // K, how far over its limit the joint is wet at the end of on
	EdgePeak          float64    // C, of the cooler root edge at the end of on
	HotPeak           float64    // C, of the hotter one
	Cycles            int
	DriftOn, DriftOff float64 // relative changes from the cycle before
	Converged         bool
	Reached           bool // on was ended by its criterion, not by its limit
	Cooled            bool // the same of off
}

// Point is one moment of a trace.
type Point struct {
	Time   float64 // s
	On     bool
	Edge   float64 // C, cooler root edge, mean through the sheet
	Centre float64 // C, on the joint's line
	Back   float64 // C, back face at the root edge
}

// Times are the on and off times of a joint with what ends each of them.
type Times struct {
	Reason   Reason  // why there is no rhythm; empty where there is
	FirstOn  float64 // s, a cold first spot until both root edges are wetted through; 0: never
	OnMin    float64 // s, the same in the repeating cycle
	OnMax    float64
	OnMaxBy  Reason
	OffMin   float64
	OffMax   float64
	OffMaxBy Reason
	OnOff    OnOff   // at the suggested setting
	Stay     float64 // what Stays says of it
	Kept     float64 // share of the logarithmic range of on in which the puddle stays; 1 for all of it, 0 for none
	Trace    []Point
	Residual float64 // of the energy balance in the suggested cycle's run, relative
	settled  bool    // every cycle repeated
	Work     int64   // cells times stages of all runs so far: what they took, the same on every machine
	Grid     float64 // relative difference of FirstOn on cells of half the side
}

// ErrStopped is returned when the caller asked to stop.
var ErrStopped = errors.New("stopped")
