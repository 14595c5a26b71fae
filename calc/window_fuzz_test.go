package calc

import (
	"context"
	"errors"
	"math"
	"testing"

	"brazebooth/internal/deep"
	"brazebooth/internal/mistake"
)

// The window must not hang, fail or hold NaN, whatever the job; at a coarse resolution.
func FuzzWindow(f *testing.F) {
	f.Add(1.5, 0.0, 0.9, uint8(0), uint8(0), uint8(0))
	f.Add(0.2, 3.0, 0.8, uint8(2), uint8(1), uint8(1))
	f.Add(12.0, 0.5, 1.2, uint8(1), uint8(4), uint8(2))
	metals := []string{"mild-steel", "stainless-304", "copper", "galvanized", "grey-iron", "brass"}
	joints := []string{"lap", "butt", "tee", "corner", "overlay", "plug", "edge"}
	modes := []string{"dip", "pulsed", "timed"}
	f.Fuzz(func(t *testing.T, thick, gap, wire float64, metal, joint, mode uint8) {
		job := Job{Metal: metals[int(metal)%len(metals)], Thickness: Some(thick), Joint: joints[int(joint)%len(joints)],
			Gap: Some(gap), Wire: Some(wire), Mode: modes[int(mode)%len(modes)]}
		ctx, cancel := context.WithTimeout(context.Background(), deep.Patience(t))
		defer cancel()
		m, err := WindowOf(ctx, job, WindowSize{3, 3}, nil)
		if err != nil {
			var fe *mistake.Error
			if !errors.As(err, &fe) {
				t.Fatalf("%+v: %v", job, err)
			}
			return
		}
		for i, v := range m.Margins {
			if math.IsNaN(v) || math.IsInf(v, 0) || m.Zones[i] == "" {
				t.Fatalf("%+v: margin %g in zone %q", job, v, m.Zones[i])
			}
		}
	})
}
