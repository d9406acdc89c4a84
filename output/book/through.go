package book

import (
	"html/template"
	"math"
	"sort"
	"strconv"

	"github.com/paulmach/orb"

	"stripwright/laminate"
	"stripwright/output/layup"
	"stripwright/output/sheet"
)

// throughView is what the page of joints through the thickness shows.
type throughView struct {
	Maps       []figure
	Counts     []figure
	CountWords string
	Plies      []switchView
	Directions []directionView
	Pairs      []pairView
	Worst      string
	KeepClear  bool
	Short      bool // few enough pairs to be shown at once
}

// switchView switches the joints of one ply on and off.
type switchView struct {
	Ply   int
	Words string // its angle and outline
	Class string // of its line
	N     int
}

type directionView struct {
	Class, Words string
	N            int
}

// pairView is the nearest pair of joints of two plies; X and Y are its place on
// the page for the script.
type pairView struct {
	Lower, Upper int
	Words, Place string
	UM           int64 // µm, to compare
	X, Y         string
}

// lineClass names the line of a direction: never told by colour alone.
func lineClass(deg float64) string {
	near := func(to float64) bool { return math.Abs(deg-to) < 0.5 }
	switch {
	case near(0):
		return "d0"
	case near(90):
		return "d90"
	case near(45):
		return "d45"
	case near(-45):
		return "dm45"
	}
	return "dx"
}

func (b *book) through() throughView {
	v := throughView{Pairs: b.pairs(), KeepClear: len(b.plan.Rules.KeepClear) > 0}
	v.Short = len(v.Pairs) <= shortList
	for _, ply := range b.plan.Plies {
		words := sheet.Degrees(ply.AngleDeg)
		if ply.Outline != "" {
			words += ", " + ply.Outline
		}
		v.Plies = append(v.Plies, switchView{ply.Ply, words, lineClass(ply.AngleDeg), len(ply.Joints)})
	}
	v.Directions = directions(b.plan)
	var worst *pairView
	v.Worst = "none: no two joints lie side by side with too few plies between"
	if len(v.Pairs) > 0 {
		worst = &v.Pairs[0]
		v.Worst = worst.Words
	}
	for _, w := range b.ground.views {
		v.Maps = append(v.Maps, figure{SVG: template.HTML(b.drawThrough(w, worst)), Words: w.words})
	}
	v.Counts, v.CountWords = b.counts()
	return v
}

// shortList is how many pairs are shown without being asked for.
const shortList = 40

// pairs puts the pairs that count into words, the nearest first.
func (b *book) pairs() []pairView {
	var out []pairView
	for _, p := range layup.Pairs(b.plan) {
		at := b.ground.at(p.At)
		w, h := &ink{}, &ink{}
		w.num(at[0])
		h.num(at[1])
		out = append(out, pairView{
			Lower: p.Lower, Upper: p.Upper, UM: int64(math.Round(p.MM * 1000)),
			Words: "plies " + strconv.Itoa(p.Lower) + " and " + strconv.Itoa(p.Upper) + ": " + sheet.Tape(p.MM, b.plan.Units),
			Place: "x " + sheet.Number(p.At[0], 0) + ", y " + sheet.Number(p.At[1], 0) + " mm",
			X:     string(w.b), Y: string(h.b),
		})
	}
	sort.SliceStable(out, func(i, j int) bool { return out[i].UM < out[j].UM })
	return out
}

// directions counts the joints of each direction.
func directions(p laminate.Plan) []directionView {
	n := map[float64]int{}
	for _, ply := range p.Plies {
		n[ply.AngleDeg] += len(ply.Joints)
	}
	var out []directionView
	for _, deg := range sortedKeys(n) {
		out = append(out, directionView{lineClass(deg), sheet.Degrees(deg), n[deg]})
	}
	return out
}

func sortedKeys(n map[float64]int) []float64 {
	keys := make([]float64, 0, len(n))
	for k := range n {
		keys = append(keys, k)
	}
	sort.Float64s(keys)
	return keys
}

// drawThrough draws the joints of all plies in a view, each ply a group that can
// be switched off, and rings the worst pair.
func (b *book) drawThrough(v view, worst *pairView) []byte {
	m := &plyMap{plan: b.plan, g: b.ground, v: v}
	m.edge = v.shown()
	m.open(v.box, "map through", "Joints of all plies over each other, seen from the laying side; the table of pairs says which are nearest")
	if len(b.plan.Rules.KeepClear) > 0 {
		m.use("clear", "clear")
	}
	m.use("blank", "blank")
	m.use("net", "net")
	for i, ply := range b.plan.Plies {
		if len(ply.Joints) > 0 {
			m.text(`<use href="#j`, strconv.Itoa(i+1), `" class="`, lineClass(ply.AngleDeg), `" data-ply="`, strconv.Itoa(ply.Ply), `"/>`)
		}
	}
	m.corners(b.plan)
	m.zero()
	m.worst(worst)
	m.fault(b.plan)
	m.text("</svg>")
	return m.b
}

// worst rings a pair and names it; without one the ring is there to be moved by
// the script, unseen.
func (m *plyMap) worst(p *pairView) {
	hidden := ""
	x, y, words := "0", "0", ""
	if p == nil {
		hidden = " off"
	} else {
		x, y, words = p.X, p.Y, p.Words
	}
	m.text(`<g class="worst`, hidden, `" transform="translate(`, x, " ", y, `)"><circle class="halo" r="22"/><circle r="22"/>`)
	at := orb.Point{0, -40}
	anchor := "middle"
	if p != nil {
		vx, _ := strconv.ParseFloat(x, 64)
		vy, _ := strconv.ParseFloat(y, 64)
		if vy < m.v.box.Min[1]+80 {
			at[1] = 58
		}
		switch {
		case vx < m.v.box.Min[0]+260:
			anchor, at[0] = "start", -20
		case vx > m.v.box.Max[0]-260:
			anchor, at[0] = "end", 20
		}
	}
	m.text(`<text class="b back" text-anchor="`, anchor, `"`)
	m.attr("x", at[0])
	m.attr("y", at[1])
	m.attr("font-size", figureSize)
	m.text(">")
	m.words(words)
	m.text("</text></g>")
}
