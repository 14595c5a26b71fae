package tables

import (
	"math"
	"strconv"

	"brazebooth/internal/mistake"
)

// otherClass returns the error for a coat of a known kind whose class is not in the list, such as Z600. Its
// hint is the nearest class of that kind, and for a coat heavier than the heaviest also what to do. It returns
// nil for any other text.
func otherClass(text string) *mistake.Error {
	front, mass, ok := classOf(text)
	if !ok {
		return nil
	}
	nearest, least, most := "", math.Inf(1), 0.0
	for i := range Coatings {
		if l, m, ok := classOf(Coatings[i].ID); ok && l == front {
			if most = max(most, m); math.Abs(m-mass) < least {
				nearest, least = Coatings[i].ID, math.Abs(m-mass)
			}
		}
	}
	if nearest == "" {
		return nil
	}
	hint := "type " + nearest + ", the nearest class"
	if mass > most {
		hint = "type " + nearest + ", the heaviest class here, for a first look; a heavier coat is ground off along " +
			"the seam on both faces: then type none"
	}
	return &mistake.Error{What: "no coating is called " + quoted(text), Hint: hint}
}

// classOf splits a class such as Z275 into its letters and its mass.
func classOf(text string) (front string, mass float64, ok bool) {
	key := fold(text)
	front = letters(key)
	mass, err := strconv.ParseFloat(key[len(front):], 64)
	return front, mass, front != "" && err == nil
}
