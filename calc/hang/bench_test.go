package hang

import "testing"

func BenchmarkEdges(b *testing.B) {
	for _, c := range [][2]string{{"butt", "flat"}, {"lap", "flat"}, {"butt", "overhead"}, {"tee", "vertical-down"}} {
		b.Run(c[0]+" "+c[1], func(b *testing.B) {
			j := usualJoint(b, c[0], c[1])
			b.ReportAllocs()
			for b.Loop() {
				if _, _, err := Edges(&j); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkLargestGap(b *testing.B) {
	j := usualJoint(b, "butt", "flat")
	b.ReportAllocs()
	for b.Loop() {
		if _, err := LargestGap(func(g float64) (Joint, error) { j.Gap = g; return j, nil }, 5); err != nil {
			b.Fatal(err)
		}
	}
}
