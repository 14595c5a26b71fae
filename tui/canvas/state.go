package canvas

// State is a verdict.
type State uint8

// The verdicts, as a strip shows them.
const (
	Good State = iota
	Marginal
	Cold
	Hot
	Burns
	Outside
	NotJudged
	Stop
	states = iota
)

var stateWords = [states]struct{ sign, word, short string }{
	Good:      {"✓", "GOOD", "GOOD"},
	Marginal:  {"~", "MARGINAL", "MARGINAL"},
	Cold:      {"▼", "COLD", "COLD"},
	Hot:       {"▲", "TOO HOT", "HOT"},
	Burns:     {"✕", "BURNS THROUGH", "BURNS"},
	Outside:   {"◇", "OUTSIDE", "OUTSIDE"},
	NotJudged: {"?", "NOT JUDGED", "UNJUDGED"},
	Stop:      {"■", "STOP", "STOP"},
}

// Sign is the state's sign, one column wide, which can also be drawn big.
func (s State) Sign() string { return stateWords[s].sign }

// Word is the state in capitals.
func (s State) Word() string { return stateWords[s].word }

// Short is Word for little room.
func (s State) Short() string { return stateWords[s].short }

// Ink is the state's colour as text.
func (s State) Ink() Ink { return s.role().Ink() }

func (s State) role() Role   { return stateInk + Role(s) }
func (s State) ground() Role { return stateGround + Role(s) }

// onGround is text on the state's background.
func (s State) onGround() Ink { return (stateOn + Role(s)).On(s.ground()) }
