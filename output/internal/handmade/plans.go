package handmade

import (
	"math"
	"strconv"

	"github.com/paulmach/orb"

	"stripwright/geometry"
	"stripwright/laminate"
)

// Hash stands for the SHA-256 of a plan.
const Hash = "0123456789abcdef0123456789abcdef0123456789abcdef0123456789abcdef"

// Hatch is a step-shaped hatch lid of seven plies with a fitting hole, one ply
// face down and one doubler.
func Hatch() laminate.Plan {
	net := rings([]orb.Point{{0, 0}, {1370, 0}, {1370, 400}, {1100, 400}, {1100, 620}, {0, 620}},
		[]orb.Point{{820, 260}, {820, 380}, {980, 380}, {980, 260}})
	blank := rings([]orb.Point{{-25, -25}, {1395, -25}, {1395, 425}, {1125, 425}, {1125, 645}, {-25, 645}},
		[]orb.Point{{845, 285}, {845, 355}, {955, 355}, {955, 285}})
	p := plan("Foredeck hatch lid", net, blank, 25)
	gap, load := 2.0, 0.0
	p.Rules.MaxGapMM, p.Part.LoadDeg = &gap, &load
	p.Fabrics[0].FaceIs = "stitch-loop side"
	doubler := rings([]orb.Point{{300, 120}, {700, 120}, {700, 500}, {300, 500}})
	return checked(Cut(p, []Ply{
		{Fabric: "biax450", Angle: 0, Joints: []float64{175, 475}},
		{Fabric: "biax450", Angle: 90, Joints: []float64{-1300, -1050, -760, -470, -180}},
		{Fabric: "biax450", Angle: 45, Joints: []float64{-800, -500, -200, 100, 380}},
		{Fabric: "biax450", Angle: -45, Down: true, Joints: []float64{150, 450, 750, 1050}},
		{Fabric: "biax450", Angle: 0, Outline: "doubler", Blank: doubler, Joints: []float64{300}},
		{Fabric: "biax450", Angle: 0, Joints: []float64{233, 533}},
		{Fabric: "biax450", Angle: 90, Joints: []float64{-1350, -1110, -820, -530, -240}},
	}, 300))
}

// Disc is a round part: two marks instead of corners.
func Disc() laminate.Plan {
	p := plan("Round tooling plate", disc(300), disc(310), 10)
	return checked(Cut(p, []Ply{
		{Fabric: "biax450", Angle: 0, Joints: []float64{-150, 120}},
		{Fabric: "biax450", Angle: 90, Joints: []float64{-60, 200}},
		{Fabric: "biax450", Angle: 30, Joints: []float64{-200, 0, 210}},
	}, 300))
}

// Batten is long and thin: 6 m by 80 mm of two strips each.
func Batten() laminate.Plan {
	net := rings([]orb.Point{{0, 0}, {6000, 0}, {6000, 80}, {0, 80}})
	blank := rings([]orb.Point{{-5, -5}, {6005, -5}, {6005, 85}, {-5, 85}})
	p := plan("Spray rail batten", net, blank, 5)
	return checked(Cut(p, []Ply{
		{Fabric: "biax450", Angle: 0, Joints: []float64{28}},
		{Fabric: "biax450", Angle: 0, Joints: []float64{54}},
	}, 60))
}

// Inch is a part in inches with names that are awkward everywhere.
func Inch() laminate.Plan {
	net := rings([]orb.Point{{0, 0}, {1168.4, 0}, {1168.4, 736.6}, {0, 736.6}})
	p := plan(`=cmd|"x" <b>&'Ø ± ∠`, net, net, 0)
	p.Units, p.Part.Name = "in", "-1+2"
	p.Fabrics = []laminate.PlanFabric{
		{Name: "007", WeightGSM: 576.4, Turn: true, StaggerMM: 38.1, PliesBetween: 4},
		{Name: "../x", WeightGSM: 300, Turn: true, StaggerMM: 38.1, PliesBetween: 4},
		{Name: "..:x", WeightGSM: 300, Turn: true, StaggerMM: 38.1, PliesBetween: 4},
		{Name: "Köper 1.10", WeightGSM: 300, Turn: true, StaggerMM: 38.1, PliesBetween: 4},
		{Name: "KÖPER 1.10", WeightGSM: 300, Turn: true, StaggerMM: 38.1, PliesBetween: 4},
	}
	var plies []Ply
	for i, f := range p.Fabrics {
		plies = append(plies, Ply{Fabric: f.Name, Joints: []float64{254 + float64(50.8*float64(i))}})
	}
	p = checked(Cut(p, plies, 508))
	for i, id := range []string{"1e5", "2024-01-02", "3-4", "@roll", "1.10\n2"} {
		p.Rolls[i].Roll = id
	}
	return p
}

// Plate is a plain 1000 × 600 plate of n plies at 0° and 90° from width-wide
// roll: as many strips as a test of speed asks for.
func Plate(n int, w, h, width float64) laminate.Plan {
	net := rings([]orb.Point{{0, 0}, {w, 0}, {w, h}, {0, h}})
	p := plan("Plate", net, net, 0)
	var plies []Ply
	for i := range n {
		ply := Ply{Fabric: "biax450"}
		low, high := 0.0, h
		if i%2 == 1 {
			ply.Angle, low, high = 90, -w, 0
		}
		for y := low + float64(width/2) + float64(i%4)*width/5; y < high-10; y += width {
			ply.Joints = append(ply.Joints, y)
		}
		plies = append(plies, ply)
	}
	return checked(Cut(p, plies, width))
}

// Faulty is a plan whose check failed.
func Faulty(p laminate.Plan) laminate.Plan {
	p.Checks = append([]laminate.CheckResult{}, p.Checks...)
	p.Checks[1] = laminate.CheckResult{
		Rule: "stagger", Counted: 40,
		Worst: &laminate.Worst{ValueMM: 34, Plies: []int{4, 6}, At: [2]float64{400, 300}},
		Text:  "plies 4 and 6, joints 34 mm apart, 50 mm needed",
	}
	return p
}

func plan(name string, net, blank geometry.Region, trim float64) laminate.Plan {
	return laminate.Plan{
		Format: laminate.PlanFormat, Version: laminate.PlanVersion, Program: laminate.Program,
		Title: name, Units: "mm", Effort: laminate.Normal, Seed: 1,
		Part: laminate.PlanPart{
			Name: name, DrawnFrom: laminate.LayingSide, TrimMM: trim, Net: net, Blank: blank,
			Corners: laminate.NamedCorners(net),
		},
		Rules: laminate.PlanRules{LayingToleranceMM: 2, NarrowestMM: 25, SparePercent: 10, SoldByMM: 1000},
		Fabrics: []laminate.PlanFabric{{
			Name: "biax450", WeightGSM: 450, Fibre: "e-glass", Turn: true, StaggerMM: 50, PliesBetween: 4,
		}},
		Notes: []laminate.Note{{Rule: "assumed", Where: "hatch.yaml:9", Text: "narrowest strip 25 mm, as none is stated"}},
	}
}

func checked(p laminate.Plan) laminate.Plan {
	p.Checks = []laminate.CheckResult{
		{Rule: "coverage", Pass: true, Counted: len(p.Plies), Text: "every ply is covered once"},
		{Rule: "stagger", Pass: true, Counted: 40, Text: "joints are staggered",
			Worst: &laminate.Worst{ValueMM: 58, Plies: []int{1, 6}, At: [2]float64{600, 204}}},
		{Rule: "pieces", Pass: true, Counted: 30, Text: "every strip is cut once"},
	}
	return p
}

func rings(outer []orb.Point, holes ...[]orb.Point) geometry.Region {
	r := geometry.Region{Outer: outer}
	for _, h := range holes {
		r.Holes = append(r.Holes, h)
	}
	return r.Oriented()
}

func disc(radius float64) geometry.Region {
	n := int(math.Ceil(math.Pi / math.Acos(1-0.05/radius)))
	var ring orb.Ring
	for i := range n {
		s, c := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		ring = append(ring, orb.Point{radius * c, radius * s})
	}
	return geometry.Region{Outer: ring}.Snapped()
}

// Named gives a plan with n rolls whose ids and fabrics are the names given.
func Named(fabrics ...string) laminate.Plan {
	p := Plate(1, 1000, 600, 300)
	roll := p.Rolls[0]
	p.Rolls, p.Fabrics = nil, nil
	for i, f := range fabrics {
		roll.Roll, roll.Fabric = f+strconv.Itoa(i), f
		p.Rolls = append(p.Rolls, roll)
		p.Fabrics = append(p.Fabrics, laminate.PlanFabric{Name: f, StaggerMM: 50, PliesBetween: 4})
	}
	return p
}
