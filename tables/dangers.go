package tables

// Danger is a warning of what hurts a hand at the arc, in the fewest words that a small screen has room for.
type Danger struct {
	Code string // of the warning that says it in full
	Word string
	Fume bool // Word is what the plume carries; "fume" comes behind it
}

// dangers stand in the order in which they are said: what is breathed in first, since it cannot be seen.
var dangers = [...]Danger{
	{"zinc-fume", "zinc", true},
	{"manganese-fume", "manganese", true},
	{"chromium-fume", "chromium", true},
	{"bronze-fume", "copper", true},
	{"eyes", "arc rays", false},
	{"fire", "fire", false},
	{"solvent", "solvents", false},
	{"overhead", "hot drops", false},
}

// Dangers lists them; read only.
func Dangers() []Danger { return dangers[:] }
