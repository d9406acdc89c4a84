package nest

import (
	"reflect"
	"testing"

	"github.com/paulmach/orb"

	"stripwright/geometry"
	"stripwright/laminate"
)

// What the job says of its materials stands in the plan as it was written: the
// sheets are made from the plan alone.
func TestPlanHoldsTheMaterials(t *testing.T) {
	given := laminate.Figure{Value: 1.2, Basis: laminate.Given}
	j := jobOf(geometry.Region{Outer: orb.Ring{{0, 0}, {500, 0}, {500, 400}, {0, 400}}}, 300, 50, 1, 0, 90)
	j.Resin = &laminate.Resin{Name: "epoxy", DensityGCM3: given}
	j.Consumables = []laminate.Consumable{{Name: "mesh", Kind: laminate.FlowMedia}}
	j.Cores = []laminate.Core{{Name: "foam", AfterPly: 1, Blank: j.Part.Blank, ThicknessMM: 10}}
	j.Measured = &laminate.Measured{WeightG: 100, AreaMM2: 1e4, ThicknessMM: 3}
	j.Uptakes = []laminate.Uptake{{Consumable: "mesh", AreaMM2: 1e4, WetG: 6}}
	j.Fibres = []laminate.FibreKind{{Name: "hemp", DensityGCM3: given}}
	j.Resins = []laminate.ResinKind{{Name: "acrylic", DensityGCM3: given}}
	f := &j.Fabrics[0]
	f.Form, f.DensityGCM3, f.FibreVolume, f.Elastic = laminate.Woven, given, given, &laminate.Elastic{E1: 40}
	p := planOf(t, j)
	for _, c := range []struct {
		name      string
		got, want any
	}{
		{"resin", p.Resin, j.Resin}, {"consumables", p.Consumables, j.Consumables}, {"cores", p.Cores, j.Cores}, {"measured", p.Measured, j.Measured},
		{"uptakes", p.Uptakes, j.Uptakes}, {"fibres", p.Fibres, j.Fibres}, {"resins", p.Resins, j.Resins}, {"form", p.Fabrics[0].Form, f.Form},
		{"density", p.Fabrics[0].DensityGCM3, f.DensityGCM3}, {"fibre volume", p.Fabrics[0].FibreVolume, f.FibreVolume}, {"elastic", p.Fabrics[0].Elastic, f.Elastic},
	} {
		if !reflect.DeepEqual(c.got, c.want) {
			t.Errorf("%s: the plan has %+v, the job %+v", c.name, c.got, c.want)
		}
	}
}
