package order

import (
	"strconv"
	"testing"

	"stripwright/laminate"
)

// BenchmarkOf sums up a plan of 200 plies and 13,000 pieces, with consumables
// round a disc of 2000 points.
func BenchmarkOf(b *testing.B) {
	p := whole()
	p.Part.Net = round(8000, 2000)
	p.Plies, p.Quantities = nil, nil
	for i := range 200 {
		y := laminate.PlanPly{Ply: i + 1, Fabric: "ud", Blank: p.Part.Net}
		for k := range 65 {
			id := strconv.Itoa(i) + "-" + strconv.Itoa(k)
			y.Strips = append(y.Strips, laminate.Strip{ID: id, Shape: rectangle(1000, 120)})
			p.Rolls[0].Pieces = append(p.Rolls[0].Pieces, laminate.Piece{ID: id, Shape: rectangle(1000, 120)})
		}
		p.Plies = append(p.Plies, y)
		p.Quantities = append(p.Quantities, laminate.PlyQuantity{Ply: i + 1, AreaMM2: 1, DryG: 1})
	}
	p.Cores[0].Blank = p.Part.Net
	b.ReportAllocs()
	for b.Loop() {
		Of(p)
	}
}
