package calc_test

import (
	"testing"

	"brazebooth/calc"
)

// Published trend on galvannealed lap joints, 61 to 113 J/mm (doi 10.1515/ijmr-2022-0045, abstract read): with
// more heat, width and leg grow, the wetting angle falls, and zinc damage at toe and back face grows. Only the
// direction is published.
func TestHeatWidensAndFlattens(t *testing.T) {
	at := func(travel float64) calc.Card {
		c, err := calc.Solve(calc.Job{Metal: "galvannealed", Thickness: calc.Some(0.8), Feed: calc.Some(4.2),
			Travel: calc.Some(travel)})
		if err != nil {
			t.Fatal(err)
		}
		return c
	}
	figure := func(c *calc.Card, name string) float64 {
		f, ok := c.Figure(name)
		if !ok {
			t.Fatalf("no %s", name)
		}
		return f.Value
	}
	ten := at(10)
	energy := figure(&ten, "arc_energy") * 10
	cold, hot := at(energy/61), at(energy/113)
	check(t, "the cold setting's arc energy", figure(&cold, "arc_energy"), 61, 0.5)
	check(t, "the hot setting's", figure(&hot, "arc_energy"), 113, 0.5)
	for _, name := range []string{"bead_width", "wetted_width_1", "wetted_width_2", "zinc_boiled_halfwidth",
		"zinc_boiled_halfwidth_2", "zinc_melted_halfwidth", "zinc_melted_halfwidth_2", "base_peak_temperature"} {
		check(t, name+" grows", sign(figure(&hot, name)-figure(&cold, name)), 1, 0)
	}
	check(t, "wetting angle falls", sign(figure(&hot, "wetting_angle")-figure(&cold, "wetting_angle")), -1, 0)
	damage := func(c *calc.Card) float64 { return c.Section.BoiledBack[0] + c.Section.MeltedBack[0] }
	check(t, "zinc damage of the back face grows", sign(damage(&hot)-damage(&cold)), 1, 0)
}

func sign(v float64) float64 {
	switch {
	case v > 0:
		return 1
	case v < 0:
		return -1
	}
	return 0
}
