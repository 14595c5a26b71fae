// Package tables holds every figure that brazebooth takes from a source, once, with its value, low and high
// ends, unit, source and how it is known. It does nothing but look rows up. Its lists must not be changed.
package tables

// Known says how a figure is known.
type Known string

// The ways in which a figure is known. "Memory" is a value recalled from the named document without having it
// at hand.
const (
	Read         Known = "read"          // seen in the document named
	MemoryHigh   Known = "memory high"   // from memory of the document named, confidence high
	MemoryMedium Known = "memory medium" // confidence medium
	MemoryLow    Known = "memory low"    // confidence low
	Practice     Known = "practice"      // common practice, no source
	Worked       Known = "worked"        // arithmetic done for this project from sourced figures
	Own          Known = "own"           // this program's own term
)

// Origin is where a figure or a line of advice comes from.
type Origin struct {
	Source string `json:"source"` // document and place in it; "common practice, no source" for Practice
	Known  Known  `json:"known"`
}

// Datum is one sourced figure. Low and High are its 95 % band: the spread between sources or the stated
// tolerance. Always Low <= V <= High, which a test checks for every Datum of the package.
type Datum struct {
	V, Low, High float64
	Unit         string // "mm2", "W/mmK" ...; "1" for a pure number; an empty unit is a mistake
	Origin
}

func read(source string) Origin         { return Origin{source, Read} }
func memoryHigh(source string) Origin   { return Origin{source, MemoryHigh} }
func memoryMedium(source string) Origin { return Origin{source, MemoryMedium} }
func memoryLow(source string) Origin    { return Origin{source, MemoryLow} }
func worked(from string) Origin         { return Origin{from, Worked} }

// Constant is one figure that belongs to no row.
type Constant struct {
	Name string
	Datum
}

// Constants lists every figure that belongs to no row, file by file.
var Constants []Constant

// constant makes such a figure and adds it to Constants. Its name must be that of its variable.
func constant(name string, v, low, high float64, unit string, o Origin) Datum {
	d := Datum{v, low, high, unit, o}
	Constants = append(Constants, Constant{name, d})
	return d
}

var practice = Origin{"common practice, no source", Practice}

// Rows is a list whose rows each have an id.
type Rows[T interface{ key() string }] []T

// ByID returns the row with exactly this id.
func (r Rows[T]) ByID(id string) (row T, ok bool) {
	for i := range r {
		if r[i].key() == id {
			return r[i], true
		}
	}
	return row, false
}

func (r Backing) key() string      { return r.ID }
func (r Hazard) key() string       { return r.ID }
func (r Coating) key() string      { return r.ID }
func (r Filler) key() string       { return r.ID }
func (r Gas) key() string          { return r.ID }
func (r Metal) key() string        { return r.ID }
func (r Option) key() string       { return r.ID }
func (r PracticeLine) key() string { return r.Code }
func (r Sight) key() string        { return r.ID }
func (r WarningLine) key() string  { return r.Code }
func (r NoteLine) key() string     { return r.Code }
func (r Hold) key() string         { return r.Position }
func (r Melt) key() string         { return r.Filler }
func (r SoftSheet) key() string    { return r.Metal }
func (r Wire) key() string         { return r.ID }
