package measured

import (
	"math"
	"slices"

	"stripwright/laminate"
)

// Taken is what a consumable took up in a test.
type Taken struct {
	Consumable string
	GSM        float64 // resin, g/m²
	StatedGSM  float64 // what the job reckons with, 0: the job does not say
	StatedAs   string  // its basis
	Wrong      string  // why the weights cannot be right, "" where they can
}

// differ is how far a stated uptake may be from the measured one before the
// report says so.
const differ = 0.1

// Differs says whether the job reckons with another uptake, by more than a tenth.
func (t Taken) Differs() bool {
	return t.Wrong == "" && t.StatedGSM > 0 && math.Abs(t.GSM-t.StatedGSM) > differ*t.GSM
}

// UptakeGSM gives the resin in g/m² that a piece of a consumable took up: wet less
// dry weight over its area.
func UptakeGSM(dryG, wetG, areaMM2 float64) float64 { return (wetG - dryG) / areaMM2 * 1e6 }

// Uptakes judges the tests of a plan, in its order.
func Uptakes(p laminate.Plan) []Taken {
	var out []Taken
	for _, u := range p.Uptakes {
		t := Taken{Consumable: u.Consumable}
		switch {
		case !(u.AreaMM2 > 0):
			t.Wrong = "its area must be above 0"
		case u.WetG < u.DryG:
			t.Wrong = "it weighs less wet than dry: are the two weights exchanged?"
		default:
			t.GSM = UptakeGSM(u.DryG, u.WetG, u.AreaMM2)
		}
		i := slices.IndexFunc(p.Consumables, func(c laminate.Consumable) bool { return c.Name == u.Consumable })
		if i >= 0 && p.Consumables[i].UptakeGSM.Known() {
			t.StatedGSM, t.StatedAs = p.Consumables[i].UptakeGSM.Value, p.Consumables[i].UptakeGSM.Basis
		}
		out = append(out, t)
	}
	return out
}
