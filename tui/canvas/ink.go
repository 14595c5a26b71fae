package canvas

// Role is what a colour stands for. The palettes give each role its colours; a part never names a colour itself.
type Role uint8

// The roles. Own is the terminal's own colour, Swap the terminal's text colour as a ground.
const (
	Own         Role                         = iota
	Text                                     // figures, words
	Quiet                                    // what explains them
	Rule                                     // tracks, axes, borders
	Accent                                   // the cursor, and nothing else
	OnAccent                                 // text on the cursor's ground
	ChipGround                               // of a chip
	Swap                                     // own text colour as ground
	stateInk                                 // of each state: as text,
	stateOn     = stateInk + Role(states)    // as text on the state's ground,
	stateGround = stateOn + Role(states)     // and as that ground
	landInk     = stateGround + Role(states) // of each land of the map: its ground,
	landOn      = landInk + Role(lands)      // and text on it
	partInk     = landOn + Role(lands)       // of each part of a drawing
	roles       = partInk + Role(parts)
)

// Ink is a colour of text, a colour of ground, and whether it is bold.
type Ink uint32

// Bold is added to an ink by |. Blocks are never bold: they gain nothing and cost bytes.
const Bold Ink = 1 << 16

// Plain is text as the terminal has it.
const Plain Ink = 0

// Ink is the role as a text's colour on the terminal's own ground.
func (r Role) Ink() Ink { return Ink(r) }

// On is the role as a text's colour on a ground.
func (r Role) On(ground Role) Ink { return Ink(r) | Ink(ground)<<8 }

func (k Ink) fg() Role   { return Role(k & 0xff) }
func (k Ink) bg() Role   { return Role(k >> 8 & 0xff) }
func (k Ink) bold() bool { return k&Bold != 0 }

// swaps reports whether a role is a ground that must be seen without colour too: it then shows as reverse video.
func (r Role) swaps() bool {
	return r == Accent || r == Swap || r >= stateGround && r < stateGround+Role(states)
}
