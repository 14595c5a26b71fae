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
	begin := "to order,"
	for _, s := range tables.Spools {
		if s.ID == "8 in" || s.ID == "S200" {
			p.Because(s.Mass.Origin, "%s wire in %s spools (%.3g kg as sold in steel): %.0f", begin, s.ID, s.Mass.V,
				math.Ceil(wire.High/1000/s.Mass.V))
			begin = "or"
		}
	}
	begin = "to order,"
	for _, c := range tables.Cylinders {
		if c.ID == "125 ft3" || c.ID == "50 L 200 bar" {
			p.Because(c.Volume.Origin, "%s gas in %s: %.0f", begin, bottles(&c), math.Ceil(gas.High/1000/c.Volume.V))
			begin = "or"
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
