package canvas

type Land uint8

const (
	LandNone Land = iota
	LandCold
	LandHot
	LandBurns
	LandOutside
	LandGood1
	LandGood2
	LandGood3
	lands = iota
)
