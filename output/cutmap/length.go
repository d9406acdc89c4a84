package cutmap

import (
	"sort"

	"github.com/paulmach/orb"

	"stripwright/laminate"
)

// Length is one cut map's cloth: a roll from its free end, or one table length
// of it. Pieces lie in its own frame: u = 0 at its free end.
type Length struct {
	Roll   laminate.PlanRoll
	Fabric laminate.PlanFabric
	From   float64 // mm from the roll's free end
	To     float64
	Number int // 1 … Of
	Of     int
	Pieces []laminate.Piece // in cut order
}

// Long gives the length in mm.
func (l Length) Long() float64 { return l.To - l.From }

// Edge gives the bad edge on either side in mm: the usable width begins at
// v = 0, the cloth at v = -Edge.
func (l Length) Edge() float64 { return float64((l.Roll.WidthMM - l.Roll.UsableWidthMM) / 2) }

// Last says whether the roll's last cut ends this length.
func (l Length) Last() bool { return l.Number == l.Of }

// Lengths breaks the rolls of a plan at their clear cuts, in the plan's order.
// A piece belongs to the length that its middle lies in.
func Lengths(p laminate.Plan) []Length {
	var out []Length
	for _, roll := range p.Rolls {
		cuts := append([]float64{0}, roll.CrossCuts...)
		sort.Float64s(cuts)
		cuts = append(cuts, roll.UsedLengthMM)
		first := len(out)
		for i := 0; i+1 < len(cuts); i++ {
			out = append(out, Length{
				Roll: roll, Fabric: fabricOf(p, roll.Fabric),
				From: cuts[i], To: cuts[i+1], Number: i + 1, Of: len(cuts) - 1,
			})
		}
		share(out[first:], roll.Pieces)
	}
	return out
}

func fabricOf(p laminate.Plan, name string) laminate.PlanFabric {
	for _, f := range p.Fabrics {
		if f.Name == name {
			return f
		}
	}
	return laminate.PlanFabric{Name: name}
}

// share gives each length its pieces, moved to its own free end.
func share(lengths []Length, pieces []laminate.Piece) {
	ordered := append([]laminate.Piece{}, pieces...)
	sort.SliceStable(ordered, func(a, b int) bool { return ordered[a].CutOrder < ordered[b].CutOrder })
	for _, piece := range ordered {
		if piece.Shape.Empty() {
			continue
		}
		b := piece.Shape.Bounds()
		middle := (b.Min[0] + b.Max[0]) / 2
		i := sort.Search(len(lengths)-1, func(i int) bool { return lengths[i].To > middle })
		if from := lengths[i].From; from != 0 {
			piece.Shape = piece.Shape.Map(func(p orb.Point) orb.Point { return orb.Point{p[0] - from, p[1]} })
		}
		lengths[i].Pieces = append(lengths[i].Pieces, piece)
	}
}
