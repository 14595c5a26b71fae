package calc_test

import (
	"testing"

	"brazebooth/tables"
)

// heatOfFusion has the heats of fusion of the elements, J/g (CRC Handbook, enthalpy of fusion, memory high).
var heatOfFusion = map[string]float64{"Cu": 205, "Si": 1787, "Al": 397, "Sn": 59, "Mn": 235, "Fe": 247, "Ni": 298,
	"Zn": 112}

// mixture applies the mixture rule to mass per cent; the rest is copper.
func mixture(parts map[string]float64) float64 {
	sum, rest := 0.0, 100.0
	for element, share := range parts {
		sum += share / 100 * heatOfFusion[element]
		rest -= share
	}
	return sum + rest/100*heatOfFusion["Cu"]
}

// Latent heat of the alloys whose rows say that it is from the mixture rule, with the middle of their
// composition limits; to the row's last digit.
func TestMixtureLatentHeat(t *testing.T) {
	manganese, _ := tables.Fillers.ByID("cumn13al8")
	check(t, manganese.ID, manganese.Latent.V, mixture(map[string]float64{"Mn": 12.5, "Al": 7.75, "Fe": 3,
		"Ni": 2.25}), 0.5)
	copper, _ := tables.Fillers.ByID("cusn1")
	check(t, copper.ID, copper.Latent.V, mixture(map[string]float64{"Sn": 0.5, "Mn": 0.25, "Si": 0.25}), 0.5)
	brass, _ := tables.Metals.ByID("brass")
	check(t, brass.ID, brass.Latent.V, mixture(map[string]float64{"Zn": 30}), 0.5)
	bronze, _ := tables.Metals.ByID("aluminium-bronze")
	check(t, bronze.ID, bronze.Latent.V, mixture(map[string]float64{"Al": 7, "Fe": 2.5}), 5) // the row is rounded to 10
}

// For the other alloys, the value that an open alloy database prints (read) and the mixture rule over their
// nominal composition lie in the rows' intervals.
func TestLatentHeatInItsBand(t *testing.T) {
	for _, c := range []struct {
		id    string
		parts map[string]float64
		page  float64
	}{
		{"cusi3", map[string]float64{"Si": 3, "Mn": 1}, 260},
		{"cual8", map[string]float64{"Al": 8}, 220},
		{"cual10fe", map[string]float64{"Al": 10, "Fe": 1}, 230},
		{"cusn6", map[string]float64{"Sn": 6}, 200},
		{"cual9ni5", map[string]float64{"Al": 9, "Ni": 5, "Fe": 4}, 230},
	} {
		row, _ := tables.Fillers.ByID(c.id)
		between(t, c.id+", page", c.page, row.Latent.Low, row.Latent.High)
		between(t, c.id+", mixture rule", mixture(c.parts), row.Latent.Low, row.Latent.High)
	}
}
