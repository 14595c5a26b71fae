package tables

// UnknownError is a name that no row answers to, with the rows whose names are nearest.
type UnknownError struct {
	Kind    string   // "filler", "metal", "coating", "gas", "joint", "mode", "position"
	Name    string   // as typed, made safe to print
	Nearest []string // ids, best first, at most five
}

func (e *UnknownError) Error() string { return "unknown " + e.Kind + " " + e.Name }
