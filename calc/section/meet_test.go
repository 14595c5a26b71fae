package section

import "testing"

// meet2, written out for laps and tees of sheet, gives exactly what the general rule gives.
func TestMeet2AgreesWithMeet(t *testing.T) {
	quick, general := new(Workspace), new(Workspace)
	general.general = true
	bits := func(w *Workspace, in *Input) Result {
		r, err := w.Solve(in)
		if err != nil {
			t.Fatal(err)
		}
		return r
	}
	for _, joint := range []Joint{LapJoint, TeeJoint} {
		for power, metal := range map[float64]Material{1500: steel(), 1450: stainless(), 5000: copper()} {
			for _, thick := range [][2]float64{{1.5, 1.5}, {0.8, 2}} {
				for _, gap := range []float64{0, 0.5} {
					in := seam(joint, thick, metal, power, 6, 6, 20)
					in.Gap, in.Aim, in.Lowest = gap, gap, 420
					a, b := bits(quick, &in), bits(general, &in)
					if a != b {
						t.Errorf("joint %d of %v mm, gap %g: wetted %v, by the general rule %v", joint, thick, gap,
							a.Wet, b.Wet)
					}
					if a.Wet[0]+a.Wet[1] == 0 {
						t.Errorf("joint %d of %v mm: nothing is wetted, so little is compared", joint, thick)
					}
				}
			}
		}
	}
}
