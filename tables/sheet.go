package tables

// Gauge is one gauge number in the four systems, inches as printed; 0 if a system does not have it.
type Gauge struct {
	N                        int
	MSG, GSG, GSGMin, US, BS float64
}

// Wire is one standard wire diameter.
type Wire struct {
	ID       string  // ".035", "0.9mm" ...
	Diameter Datum   // mm; Low and High are the standard's tolerance
	Inch     float64 // nominal inches, 0 for a metric size
	Spools   string
}

// Coating is one designation of a sheet's metallic coating.
type Coating struct {
	ID   string // none, G60, Z180, A40, 60G, ZE50/50, T1-25 ...
	Name string
	Kind CoatingKind
	Side Datum // mass per side, g/m2: half the both-sides triple-spot minimum, or the per-side form
	Zinc bool  // gives off zinc vapour
	Note string
}

// CoatingKind is the process by which the coat was applied.
type CoatingKind string

// Kinds of coating.
const (
	NoCoat     CoatingKind = "none"
	HotDip     CoatingKind = "hot-dip zinc"
	Galvanneal CoatingKind = "zinc-iron"
	Electro    CoatingKind = "electro-zinc"
	AluSilicon CoatingKind = "aluminium-silicon"
)

// Gas is one shielding gas.
type Gas struct {
	ID, Name string
	Flow     Datum // L/min, the usual range
	Density  Datum // kg/m3 at 20 C, 1 atm
	Refused  bool  // must not be used with bronze; Note says why
	Note     string
	Origin   Origin
}
