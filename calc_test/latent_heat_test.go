package calc_test

import (
	"testing"

	"brazebooth/tables"
)

// Latent heat by the mixture rule from the elements' heats of fusion (CRC Handbook, memory high) against what an
// open alloy database prints (read), rounded there to 10: 4 % holds both.
func TestMixtureLatentHeat(t *testing.T) {
	heat := map[string]float64{}
	for _, h := range tables.HeatsOfFusion() {
		heat[h.Element] = h.Heat.V
	}
	for _, c := range []struct {
		id    string
		parts map[string]float64 // mass %, the rest copper
		page  float64
	}{
		{"CuSi3Mn1", map[string]float64{"Si": 3, "Mn": 1}, 260},
		{"CuAl8", map[string]float64{"Al": 8}, 220},
		{"CuAl10Fe", map[string]float64{"Al": 10, "Fe": 1}, 230},
		{"CuSn6", map[string]float64{"Sn": 6}, 200},
		{"CuAl9Ni5Fe4", map[string]float64{"Al": 9, "Ni": 5, "Fe": 4}, 230},
	} {
		sum, rest := 0.0, 100.0
		for element, share := range c.parts {
			sum += share / 100 * heat[element]
			rest -= share
		}
		check(t, c.id, sum+rest/100*heat["Cu"], c.page, 0.04*c.page)
	}
}
