package tui

// The smallest terminal that holds a choice and the figures.
const (
	leastWidth  = 32
	leastHeight = 10
)

// Least is the smallest terminal that the screens fit.
func Least() (width, height int) { return leastWidth, leastHeight }

// Widths at which the screen is laid out differently.
const (
	narrowWidth = 60 // below: one thing at a time
	besideWidth = 78 // from here the card stands beside the list
	wideWidth   = 98 // from here the reasons stand beside the card
)

// textWidth is how wide a text to read is at most.
const textWidth = 88

// lowHeight is the height below which lists and figures go before what explains them.
const (
	lowHeight = 18 // of the terminal
	lowBody   = 13 // of the open screen in it
)
