package section

import (
	"fmt"
	"syscall"
	"testing"
)

func cpu() float64 {
	var r syscall.Rusage
	syscall.Getrusage(syscall.RUSAGE_SELF, &r)
	return float64(r.Utime.Sec) + float64(r.Utime.Usec)*1e-6
}

func TestCPU(t *testing.T) {
	thin := lap(6)
	thin.Lowest = 0
	butt := thin
	butt.Joint = ButtJoint
	for _, c := range []struct {
		name string
		in   Input
	}{
		{"lap 1.5 with zinc", lap(6)}, {"lap 1.5", thin}, {"butt 1.5", butt},
		{"lap 6", seam(LapJoint, [2]float64{6, 6}, steel(), 3266, 6, 21.47, 20)},
		{"tee 6", seam(TeeJoint, [2]float64{6, 6}, steel(), 3266, 6, 21.47, 20)},
		{"butt 6", seam(ButtJoint, [2]float64{6, 6}, steel(), 1633, 10, 7.34, 20)},
		{"unequal butt 6 on 8", seam(ButtJoint, [2]float64{6, 8}, steel(), 1633, 10, 7.34, 20)},
		{"copper butt 12", seam(ButtJoint, [2]float64{12, 12}, copper(), 5925, 5, 35.02, 250)},
		{"copper tee 8", seam(TeeJoint, [2]float64{8, 8}, copper(), 5925, 5, 35.02, 250)},
	} {
		w := new(Workspace)
		best := 1e9
		for range 5 {
			a := cpu()
			for range 300 {
				w.Solve(&c.in)
			}
			best = min(best, (cpu()-a)/300)
		}
		r, _ := w.Solve(&c.in)
		fmt.Printf("%-22s %.0f µs  steps %d work %d\n", c.name, best*1e6, r.Steps, r.Work)
	}
}
