package canvas

// part is what a drawing shows at a place.
type part uint8

const (
	partAir part = iota
	partFirst
	partSecond
	partBacking
	partBluing
	partTip
	partBead
	partWire
	partMelted // zinc
	partBoiled // zinc
	parts      = iota
)
