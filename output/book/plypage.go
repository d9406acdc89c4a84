package book

import (
	"html/template"
	"math"
	"strconv"
	"strings"

	"github.com/paulmach/orb"

	"stripwright/laminate"
	"stripwright/output/layup"
	"stripwright/output/sheet"
)

// plyView is the page of one ply.
type plyView struct {
	ID       string
	Ply, Of  int
	Outline  string
	Fabric   string
	Weight   string // of the cloth, g/m²
	Angle    string
	Dial     template.HTML
	Down     bool
	Side     string // which face goes where, in the fabric's own words
	Pieces   string
	Grams    string
	Longest  string
	Law      string // how strips are laid, and the widest gap
	Stack    template.HTML
	Maps     []figure
	Joints   []jointView
	Marks    []layup.Mark
	Strips   []stripView
	Many     bool // more joints than fit beside the map
	Class    string
	Reversed bool
}

// besideMap is how many joints are listed beside the map; more stand under it.
const besideMap = 7

// jointView is a joint as a laminator marks it: both ends as a figure and how to
// lay the tape.
type jointView struct {
	Name, Between string
	InTrim        bool
	Ends          [2][2]string
	Below         [2]string
}

// stripView is a strip as it is laid.
type stripView struct {
	ID, Width, Side, Roll string
	Down                  bool
}

func (b *book) plyView(i int) plyView {
	ply := b.plan.Plies[i]
	fabric := b.fabric(ply.Fabric)
	marks := layup.Marks(b.plan, ply)
	down := ply.Face == laminate.FaceDown
	v := plyView{
		ID: "ply-" + strconv.Itoa(ply.Ply), Ply: ply.Ply, Of: len(b.plan.Plies), Outline: shown(ply.Outline),
		Fabric: shown(ply.Fabric), Weight: sheet.Number(fabric.WeightGSM, 1) + " g/m²", Angle: sheet.Degrees(ply.AngleDeg),
		Dial: template.HTML(dial(ply)), Down: down, Side: shown(layup.SideWords(b.plan, ply)),
		Pieces: sheet.Counted(len(ply.Strips), "piece", "pieces") + ", " + sheet.Counted(len(ply.Joints), "joint", "joints"),
		Grams:  b.grams(ply.Ply), Longest: b.longest(ply), Law: layup.GapWords(b.plan), Stack: template.HTML(b.stack(i)),
		Maps: b.drawPly(i, marks), Marks: marks, Many: len(ply.Joints) > besideMap, Class: lineClass(ply.AngleDeg), Reversed: ply.Reversed,
	}
	for _, m := range b.measured[i].Joints {
		v.Joints = append(v.Joints, b.jointView(m))
	}
	for _, s := range ply.Strips {
		v.Strips = append(v.Strips, b.stripView(s, down))
	}
	return v
}

func (b *book) fabric(name string) laminate.PlanFabric {
	for _, f := range b.plan.Fabrics {
		if f.Name == name {
			return f
		}
	}
	return laminate.PlanFabric{Name: name}
}

func (b *book) grams(ply int) string {
	for _, q := range b.plan.Quantities {
		if q.Ply == ply {
			return weight(q.DryG)
		}
	}
	return "-"
}

func (b *book) longest(ply laminate.PlanPly) string {
	long := 0.0
	for _, s := range ply.Strips {
		long = math.Max(long, layup.Length(ply, s))
	}
	return sheet.Mark(long, b.plan.Units) + ", " + layup.HandlingWords(b.plan, long)
}

func (b *book) jointView(m layup.Measured) jointView {
	v := jointView{Name: m.Name, InTrim: m.InTrim, Between: shown(m.Joint.Between[0]) + " and " + shown(m.Joint.Between[1]), Below: [2]string{"none", ""}}
	if !m.InTrim {
		for i, t := range m.Ends {
			v.Ends[i] = layup.TickWords(b.plan, t)
			v.Ends[i][1] = strings.ReplaceAll(v.Ends[i][1], "-", "\u2011") // an edge's name stays in one line
		}
	}
	if m.Below != nil {
		figure, beside := sheet.TapeFigure(m.Below.MM, b.plan.Units)
		v.Below = [2]string{figure, "ply " + strconv.Itoa(m.Below.Ply)}
		if beside != "" {
			v.Below[1] = beside + ", " + v.Below[1]
		}
	}
	return v
}

func (b *book) stripView(s laminate.Strip, down bool) stripView {
	v := stripView{ID: s.ID, Width: sheet.Mark(s.WidthMM, b.plan.Units), Side: "face up", Down: down}
	if down {
		v.Side = "FACE DOWN"
	}
	if c, ok := b.cuts[s.ID]; ok {
		v.Roll = "roll " + c.Roll + ", cut " + c.Cut
	}
	return v
}

// dial shows 0° and the direction in which the roll runs from its free end.
func dial(ply laminate.PlanPly) []byte {
	heading := ply.AngleDeg
	if ply.Reversed {
		heading += 180
	}
	w := &ink{}
	w.text(`<svg class="dial" viewBox="-64 -64 150 128" aria-hidden="true" focusable="false"><circle r="62"/>`)
	if heading != 0 {
		w.text(`<path class="dialzero" d="M0 0H60M48-6 60 0 48 6"/>`)
	}
	w.centred(orb.Point{75, 0}, 20, "", 0, "0°")
	w.text(`<use href="#arrow" transform="rotate(`)
	w.num(-heading)
	w.text(`)"/></svg>`)
	return w.b
}

// stack draws all plies from the tool up, this one filled: where in the pile one
// is.
func (b *book) stack(i int) []byte {
	n := len(b.plan.Plies)
	step := math.Min(10, 90/float64(n))
	high := float64(float64(n) * step)
	w := &ink{}
	w.text(`<svg class="stack" viewBox="0 0 120 `)
	w.num(high + 16)
	w.text(`" aria-hidden="true" focusable="false"><path class="piles" d="`)
	for k := range n {
		if k != i {
			y := high - float64((float64(k)+0.5)*step)
			w.lines([]orb.Point{{16, y}, {104, y}}, false)
		}
	}
	w.text(`"`)
	w.attr("stroke-width", math.Min(3, step/2))
	w.text(`/><path class="thisply" d="`)
	y := high - float64((float64(i)+0.5)*step)
	w.lines([]orb.Point{{2, y}, {118, y}}, false)
	w.text(`"/><path class="tool" d="M0 `)
	w.num(high + 6)
	w.text(`H120"/></svg>`)
	return w.b
}
