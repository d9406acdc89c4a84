package stack

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"stripwright/geometry"
)

// Kind says how the fibre of a layer lies.
type Kind int

// Kinds of layer.
const (
	Straight Kind = iota // one direction
	Crossed              // woven: two directions at one height
	Random               // mat: no direction
	CoreKind             // a sandwich core: no fibre
)

// Direction is fibre along one angle of the part.
type Direction struct {
	Angle geometry.Angle
	GSM   float64
}

// Layer is one layer of a stack. Heights are mm from the middle of the stack,
// upwards.
type Layer struct {
	Ply         int    // number of its ply, 0 for a core
	Of          int    // which layer of its cloth, 1 on the face; 0 where the cloth has one
	Fabric      string // or the name of the core
	Fibre       string
	Kind        Kind
	Lies        []Direction // one of a straight layer, two of a crossed, none of mat and core
	GSM         float64     // fibre, g/m²
	ThicknessMM float64
	LowMM       float64
	HighMM      float64
}

// Angle gives the direction of a straight layer, of a crossed one that of its
// first yarns.
func (l Layer) Angle() geometry.Angle {
	if len(l.Lies) == 0 {
		return 0
	}
	return l.Lies[0].Angle
}

// identity tells layers apart: two of one identity are the same stuff in the
// same direction, so that a mirror may exchange them.
func (l Layer) identity() string {
	var b strings.Builder
	b.WriteString(strconv.Itoa(int(l.Kind)))
	b.WriteString("|" + l.Fibre + "|" + whole(l.GSM, 1e3) + "|" + whole(l.ThicknessMM, 1e6))
	if l.Kind == CoreKind {
		b.WriteString("|" + l.Fabric)
	}
	var lies []string
	for _, d := range l.Lies {
		lies = append(lies, whole(d.Angle.Degrees(), 1e6)+" "+whole(d.GSM, 1e3))
	}
	slices.Sort(lies)
	b.WriteString("|" + strings.Join(lies, "|"))
	return b.String()
}

// whole prints a figure in whole parts, so that rounding does not tell apart
// what is the same.
func whole(v, parts float64) string {
	return strconv.FormatInt(int64(math.Round(float64(v*parts))), 10)
}

// tidy takes the rounding of a sum off an angle.
func tidy(deg float64) float64 { return math.Round(float64(deg*1e6))/1e6 + 0 }

// heights sets the layers on each other about their middle.
func heights(layers []Layer) []Layer {
	out := append([]Layer{}, layers...)
	whole := 0.0
	for _, l := range out {
		whole += l.ThicknessMM
	}
	low := -whole / 2
	for i := range out {
		out[i].LowMM, out[i].HighMM = low, low+out[i].ThicknessMM
		low = out[i].HighMM
	}
	return out
}
