package way

import (
	"bytes"
	"context"
	"testing"

	"stripwright/job"
	"stripwright/laminate"
	"stripwright/laminate/content"
	"stripwright/laminate/order"
	"stripwright/laminate/planfile"
	"stripwright/nest"
	"stripwright/output/list"
)

// Six plies of 600 g/m² glass on 1180 by 740 mm without trim, fibre 52 % by
// volume: the sums of thickness, weight and resin recomputed by hand, in
// laminate/order's and laminate/content's tests as well.
func TestResinAndThickness(t *testing.T) {
	p := planned(t, "job_resin_thickness")
	c := content.Of(p)
	near(t, "thickness", c.Zones[0].ThicknessMM.Value, 2.7043, 0.0001)
	near(t, "fibre", c.Whole.FibreG, 3143.5, 0.05)
	near(t, "resin in the part", c.Whole.ResinG.Value, 1303.5, 0.05)
	near(t, "part", c.Whole.MassG().Value, 4447, 0.5)
	o := order.Of(p)
	near(t, "resin to mix", o.Resin.TotalG, 2289.5, 0.05)
	near(t, "peel ply", o.Supplies[0].AreaMM2, 873200, 0.01)
	dry := 0.0
	for _, k := range o.Kits {
		dry += k.DryG
	}
	near(t, "dry weight", dry, 3143.5, 0.05)
}

// What is drawn from a plan at once, and from its plan.json, is the same byte for
// byte, in an inch shop too, whose sizes have no end in millimetres.
func TestOrderFromThePlanFile(t *testing.T) {
	text := `title: Panel
units: in
part: {outline: {rectangle: [40 1/64, 21 1/3]}, trim: 1/3, drawn_from: laying side}
fabrics:
  tape:
    weight: 8.9 oz/yd2
    fibre: e-glass
    layers: [0]
    fibre_mass: 66.6 %
    rolls: [{id: A, width: 12, price: 2.40 /yd}]
cores: {foam: {thickness: 13/32, density: 0.0801 g/cm3, uptake: 1.1 oz/ft2, sheet: [48, 24 1/64], price: 31}}
schedule: [{fabric: tape, angle: 0}, {core: foam}, {fabric: tape, angle: 90}]
joints: {stagger: 2, plies_between: 4}
resin:
  density: 1.1377 g/cm3
  lines_and_pot: 11.1 oz
  spare: 7.7 %
  mix: {by: volume, parts: [3, 1], densities: [1.131, 0.977]}
  batch: 1 1/3 lb
  sold_by: 1.1 lb
  price: 8.11/lb
consumables:
  peel ply: {margin: 2 1/3, test: {size: [7 1/3, 8], dry: 0.1 oz, wet: 0.41 oz}, width: 59 7/8, sold_by: 1 yd, price: 1.17 /ft}
  film: {pleat: 1 7/64}
  sealant tape: {sold_by: 25 ft}
search: {effort: quick}
`
	j, problems := job.Parse("panel.yaml", []byte(text), nil)
	for _, p := range problems {
		t.Fatal(p.Error())
	}
	p, err := Plan(context.Background(), j, nest.Settings{})
	if err != nil {
		t.Fatal(err)
	}
	data, err := planfile.Encode(p)
	if err != nil {
		t.Fatal(err)
	}
	q, _, err := planfile.Decode(data)
	if err != nil {
		t.Fatal(err)
	}
	for name, write := range map[string]func(laminate.Plan) ([]byte, error){
		"order.txt": func(p laminate.Plan) ([]byte, error) { return []byte(list.OrderText(p)), nil }, "order.csv": list.Order, "order.json": list.OrderJSON,
	} {
		a, errA := write(p)
		b, errB := write(q)
		if errA != nil || errB != nil || !bytes.Equal(a, b) {
			t.Errorf("%s differs (%v, %v):\n%s\n%s", name, errA, errB, a, b)
		}
	}
}
