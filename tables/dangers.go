package tables

// Danger is a warning of what hurts a hand at the arc, in the fewest words that a small screen has room for.
type Danger struct {
	Code   string // of the warning that says it in full
	Word   string
	Short  string   // a shorter form of Word; "" for none
	More   []string // what else the warning is about, said where there is room
	Deadly bool     // it kills at once, and is said first
	Fume   bool     // Word is what the plume carries; "fume" comes behind it
}

// dangers stand in the order in which they are said: what kills at once, then the fume, since it cannot be seen.
var dangers = [...]Danger{
	{"stops", "closed vessels", "vessels", []string{"confined spaces", "cadmium"}, true, false},
	{"shock", "shock", "", nil, true, false},
	{"zinc-fume", "zinc", "", nil, false, true},
	{"manganese-fume", "manganese", "", nil, false, true},
	{"chromium-fume", "chromium", "", nil, false, true},
	{"bronze-fume", "copper", "", nil, false, true},
	{"solvent", "solvents", "", nil, false, false},
	{"fire", "fire", "", nil, false, false},
	{"eyes", "arc rays", "", nil, false, false},
	{"overhead", "hot drops", "", nil, false, false},
}

// Dangers lists them; read only.
func Dangers() []Danger { return dangers[:] }
