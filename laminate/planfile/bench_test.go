package planfile

import (
	"fmt"
	"testing"

	"github.com/paulmach/orb"

	"stripwright/geometry"
	"stripwright/laminate"
)

// large is a plan of 200 plies and 14,000 strips, of a dozen vertices each.
func large() laminate.Plan {
	p := sample()
	ply := p.Plies[0]
	p.Plies = nil
	p.Rolls[0].Pieces = nil
	for i := range 200 {
		q := ply
		q.Ply, q.Strips, q.Joints = i+1, nil, nil
		for k := range 70 {
			id := fmt.Sprintf("P%02d-S%02d", i+1, k+1)
			s := wavy(float64(k)*100.0625, float64(i)*0.377)
			q.Strips = append(q.Strips, laminate.Strip{ID: id, Shape: s, WidthMM: 100})
			q.Joints = append(q.Joints, laminate.Joint{Kind: "side", From: [2]float64{0, float64(k)}, To: [2]float64{8000, float64(k)}, Between: [2]string{id, id}})
			p.Rolls[0].Pieces = append(p.Rolls[0].Pieces, laminate.Piece{ID: id, Shape: s, CutOrder: i*70 + k + 1})
		}
		p.Plies = append(p.Plies, q)
	}
	return p
}

func wavy(y, d float64) geometry.Region {
	var r orb.Ring
	for i := range 6 {
		r = append(r, orb.Point{8000.123 + float64(i)*3.217 + d, y + float64(i)*20})
	}
	for i := range 6 {
		r = append(r, orb.Point{float64(i)*2.711 - d, y + 100 - float64(i)*20})
	}
	return geometry.Region{Outer: r}
}

func BenchmarkEncode(b *testing.B) {
	p := large()
	b.ReportAllocs()
	for b.Loop() {
		data, err := Encode(p)
		if err != nil {
			b.Fatal(err)
		}
		b.SetBytes(int64(len(data)))
	}
}

func BenchmarkDecode(b *testing.B) {
	data, err := Encode(large())
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	b.SetBytes(int64(len(data)))
	for b.Loop() {
		if _, _, err := Decode(data); err != nil {
			b.Fatal(err)
		}
	}
}
