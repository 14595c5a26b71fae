package advice

import (
	"brazebooth/calc"
	"testing"
)

// The gas flow that a card suggests is at most what the machine page says the nozzle carries; without a nozzle
// the usual bore counts.
func TestSuggestedGasFitsTheNozzle(t *testing.T) {
	for _, bore := range []float64{0, 8, 12.7, 16, 19} {
		job := calc.Job{Metal: "mild-steel", Gauge: 18, Feed: calc.Some(5), Travel: calc.Some(8)}
		if bore > 0 {
			job.NozzleBore = calc.Some(bore)
		}
		c := card(t, job)
		gas, _ := c.Figure("gas_flow")
		if bore == 0 {
			job.NozzleBore = calc.Some(12.7)
		}
		p, err := Machine(card(t, job))
		if err != nil {
			t.Fatal(err)
		}
		most, ok := p.Figure("gas_ceiling")
		if !ok || gas.High > most.Value*(1+1e-12) || gas.High < min(18.9, most.Value)*(1-1e-12) ||
			!(gas.Low <= gas.Value && gas.Value <= gas.High) {
			t.Errorf("bore %g: %g, %g to %g, the nozzle carries %g", bore, gas.Value, gas.Low, gas.High, most.Value)
		}
		if c.Used.Flow.V != gas.Value {
			t.Errorf("bore %g: %g is used, %g shown", bore, c.Used.Flow.V, gas.Value)
		}
		if in := gas.Basis.Inputs; bore < 16 && (len(in) != 1 || in[0].Assumed != (bore == 0)) {
			t.Errorf("bore %g: the nozzle is not named: %+v", bore, gas.Basis)
		}
	}
}
