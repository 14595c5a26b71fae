package calc

import "testing"

// A name that is no number of a job has no span; a number has the range outside which Solve refuses it.
func TestSpan(t *testing.T) {
	if _, _, _, ok := Span("metal"); ok {
		t.Error("a metal is no number")
	}
	low, high, unit, ok := Span("travel")
	if !ok || unit != "mm/s" {
		t.Fatalf("%v %q", ok, unit)
	}
	for _, v := range []float64{low * 0.99, high * 1.01} {
		if _, err := Solve(Job{Metal: "mild-steel", Gauge: 18, Feed: Some(5), Travel: Some(v)}); err == nil {
			t.Errorf("travel %g was taken", v)
		}
	}
}
