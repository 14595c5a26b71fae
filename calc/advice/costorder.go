package advice

import (
	"fmt"
	"math"
	"strings"

	"brazebooth/calc"
	"brazebooth/tables"
)

// order says how many spools and bottles to buy for the high end of the bands, in either of the usual sizes.
func (p *Page) order(wire, gas calc.Figure) {
	for _, s := range tables.Spools {
		if s.ID == "8 in" || s.ID == "S200" {
			p.Because(s.Mass.Origin, "%s wire in %s spools (%.3g kg as sold in steel): %.0f", either(s.ID == "8 in"),
				s.ID, s.Mass.V, math.Ceil(wire.High/1000/s.Mass.V))
		}
	}
	for _, c := range tables.Cylinders {
		if c.ID == "125 ft3" || c.ID == "50 L 200 bar" {
			p.Because(c.Volume.Origin, "%s gas in %s: %.0f", either(c.ID == "125 ft3"), bottles(&c),
				math.Ceil(gas.High/1000/c.Volume.V))
		}
	}
}

// bottles names a size of bottle with its gas. A bottle that is named by its gas in ft³ has the same in both units, so
// that a reader in inches is told it once.
func bottles(c *tables.Cylinder) string {
	if feet, ok := strings.CutSuffix(c.ID, " ft3"); ok {
		return fmt.Sprintf("bottles of %s ft³ (%.3g m³)", feet, c.Volume.V)
	}
	return fmt.Sprintf("%s bottles (%.3g m³)", c.ID, c.Volume.V)
}

// either is "to order," for the first size named and "or" for the alternative.
func either(first bool) string {
	if first {
		return "to order,"
	}
	return "or"
}
