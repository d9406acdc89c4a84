package book

import (
	"html/template"
	"strconv"
	"strings"

	"stripwright/laminate"
	"stripwright/output/layup"
	"stripwright/output/sheet"
)

// startView is the first page: the verdict, the totals, where corners and edges
// are, and the way to every ply.
type startView struct {
	Sound   bool
	Verdict string
	Faults  []string
	Part    string
	Totals  []fact
	Rules   []fact
	Corners []cornerView
	Edges   []edgeView
	Round   bool // two marks instead of corners
	Map     []figure
	Plan    []fact
}

// fact is a caption with what it says.
type fact struct{ Caption, Words string }

type cornerView struct {
	Name, X, Y string
	Datum      bool
}

type edgeView struct{ Name, Long, Shape string }

func (b *book) start() startView {
	p := b.plan
	w, h := p.Part.Net.Size()
	faults := sheet.Faults(p.Checks)
	v := startView{
		Sound: len(faults) == 0, Verdict: sheet.Verdict(p), Faults: faults,
		Part: shown(p.Part.Name) + ", finished size " + sheet.Size(w, h), Round: len(p.Part.Corners) == 2,
		Totals: b.totals(), Rules: b.rules(), Plan: b.planFacts(),
	}
	for i, c := range p.Part.Corners {
		v.Corners = append(v.Corners, cornerView{c.Name, sheet.Tape(c.At[0], p.Units), sheet.Tape(c.At[1], p.Units), i == 0})
	}
	for _, e := range layup.Edges(p.Part) {
		shape := "curved: lay the tape along the edge"
		if e.Straight {
			shape = "straight"
		}
		v.Edges = append(v.Edges, edgeView{e.Name, sheet.Tape(e.MM, p.Units), shape})
	}
	for _, w := range b.ground.views {
		v.Map = append(v.Map, figure{SVG: template.HTML(b.drawPart(w)), Words: w.words})
	}
	return v
}

// totals are the sums of the plan.
func (b *book) totals() []fact {
	strips, joints, grams := 0, 0, 0.0
	for _, ply := range b.plan.Plies {
		strips += len(ply.Strips)
		joints += len(ply.Joints)
	}
	for _, q := range b.plan.Quantities {
		grams += q.DryG
	}
	out := []fact{
		{"Plies", strconv.Itoa(len(b.plan.Plies))}, {"Pieces", strconv.Itoa(strips)}, {"Joints", strconv.Itoa(joints)},
		{"Dry cloth in the plies", weight(grams)},
	}
	for _, l := range b.plan.Lengths {
		out = append(out, fact{
			shown(l.Fabric) + ", " + sheet.Tape(l.WidthMM, b.plan.Units) + " wide",
			sheet.MetreMark(l.UsedMM, b.plan.Units) + " used",
		})
	}
	return out
}

func weight(grams float64) string {
	if grams < 1000 {
		return sheet.Number(grams, 0) + " g"
	}
	return sheet.Number(grams/1000, 2) + " kg"
}

// rules are the joint rules in force.
func (b *book) rules() []fact {
	p := b.plan
	var out []fact
	for _, f := range p.Fabrics {
		out = append(out, fact{"Stagger, " + shown(f.Name),
			sheet.Tape(f.StaggerMM, p.Units) + " with fewer than " + sheet.Counted(f.PliesBetween, "ply", "plies") + " between"})
	}
	out = append(out, fact{"Trim allowance", sheet.Tape(p.Part.TrimMM, p.Units)},
		fact{"Laying tolerance", sheet.Tape(p.Rules.LayingToleranceMM, p.Units)},
		fact{"Widest gap at a joint", widestGap(p)})
	if p.Part.LoadDeg != nil {
		out = append(out, fact{"Main load at", sheet.Degrees(*p.Part.LoadDeg)})
	}
	return append(out, fact{"Distances are given", sheet.MarkWords(p.Units) + ", along the net edge (the finished part)"})
}

func widestGap(p laminate.Plan) string {
	if p.Rules.MaxGapMM == nil {
		return "not stated in the job"
	}
	return sheet.Tape(*p.Rules.MaxGapMM, p.Units)
}

func (b *book) planFacts() []fact {
	return []fact{{"Job", shown(b.plan.Title) + " (" + shown(b.plan.Job.Name) + ")"}, {"Unit", b.unit()},
		{"Plan (SHA-256)", b.mark()}, {"Made by", b.plan.Program}}
}

func (b *book) unit() string {
	if strings.Contains(sheet.Tape(25.4, b.plan.Units), " in") {
		return "in, and mm"
	}
	return "mm"
}

// mark is the beginning of the plan's hash.
func (b *book) mark() string { return b.sha[:min(len(b.sha), sheet.HashShown)] }

// foot says below every page what it belongs to.
func (b *book) foot() string {
	p := b.plan
	w, h := p.Part.Net.Size()
	words := []string{"Job: " + shown(p.Title), "part: " + shown(p.Part.Name) + " " + sheet.Size(w, h), "unit: " + b.unit(), sheet.Verdict(p)}
	for _, f := range p.Fabrics {
		words = append(words, "stagger of "+shown(f.Name)+": "+sheet.Tape(f.StaggerMM, p.Units)+", plies between: "+strconv.Itoa(f.PliesBetween))
	}
	return strings.Join(append(words, "plan "+b.mark(), p.Program, sheet.Caution), " · ")
}

// drawPart draws the part alone with its corners and the lengths of its edges.
func (b *book) drawPart(v view) []byte {
	m := &plyMap{plan: b.plan, g: b.ground, v: v}
	m.edge = v.shown()
	m.open(v.box, "map", "The part with its named corners, seen from the laying side")
	m.use("net", "whole")
	m.use("blank", "blank")
	m.use("net", "net")
	m.corners(b.plan)
	m.zero()
	m.fault(b.plan)
	m.text("</svg>")
	return m.b
}
