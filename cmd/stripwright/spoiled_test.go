package main

import (
	"bytes"
	"context"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/paulmach/orb"

	"stripwright/geometry"
	"stripwright/laminate"
	"stripwright/laminate/planfile"
)

// spoiling edits the plan of the demo hatch in one way; `check` must end with
// exit code 1 and say so, by ply, piece, place and value.
type spoiling struct {
	name string
	edit func(p *laminate.Plan)
	says string // pattern
}

func strip(p *laminate.Plan, ply, k int) *laminate.Strip { return &p.Plies[ply-1].Strips[k-1] }

func piece(p *laminate.Plan, id string) *laminate.Piece {
	for i := range p.Rolls {
		for k := range p.Rolls[i].Pieces {
			if p.Rolls[i].Pieces[k].ID == id {
				return &p.Rolls[i].Pieces[k]
			}
		}
	}
	panic("no piece " + id)
}

func moved(r geometry.Region, dx, dy float64) geometry.Region {
	return r.Map(func(p orb.Point) orb.Point { return orb.Point{p[0] + dx, p[1] + dy} })
}

// flipped mirrors or turns a region in its place.
func flipped(r geometry.Region, x, y float64) geometry.Region {
	b := r.Bounds()
	return r.Map(func(p orb.Point) orb.Point {
		q := p
		if x < 0 {
			q[0] = b.Min[0] + b.Max[0] - p[0]
		}
		if y < 0 {
			q[1] = b.Min[1] + b.Max[1] - p[1]
		}
		return q
	})
}

// further moves the vertices at the far end of an axis.
func further(r geometry.Region, axis int, by float64) geometry.Region {
	end := r.Bounds().Max[axis]
	return r.Map(func(p orb.Point) orb.Point {
		if p[axis] == end {
			p[axis] += by
		}
		return p
	})
}

var spoilings = []spoiling{
	{"move a strip by 1 mm", func(p *laminate.Plan) { s := strip(p, 1, 2); s.Shape = moved(s.Shape, 0, 1) }, `coverage .*ply 1: .*for 1 mm.*at x `},
	{"move all strips of a ply with their joints", func(p *laminate.Plan) {
		y := &p.Plies[3]
		for i := range y.Strips {
			y.Strips[i].Shape = moved(y.Strips[i].Shape, 2, 0)
		}
		for i := range y.Joints {
			y.Joints[i].From[0] += 2
			y.Joints[i].To[0] += 2
		}
	}, `coverage .*ply 4: .* mm outside the blank, at x `},
	{"move a ply with its blank", func(p *laminate.Plan) {
		y := &p.Plies[3]
		y.Blank = moved(y.Blank, 2, 0)
		for i := range y.Strips {
			y.Strips[i].Shape = moved(y.Strips[i].Shape, 2, 0)
		}
		for i := range y.Joints {
			y.Joints[i].From[0] += 2
			y.Joints[i].To[0] += 2
		}
	}, `plies .*ply 4 has no outline of its own, and its blank is not the part's`},
	{"move one patch of two with its blank", func(p *laminate.Plan) {
		y := &p.Plies[5]
		y.Blank = moved(y.Blank, 2, 0)
		for i := range y.Strips {
			y.Strips[i].Shape = moved(y.Strips[i].Shape, 2, 0)
		}
		for i := range y.Joints {
			y.Joints[i].From[0] += 2
			y.Joints[i].To[0] += 2
		}
	}, `plies .*plies 5 and 6 are both of outline "eye pad", and their blanks differ`},
	{"drop a strip", func(p *laminate.Plan) { p.Plies[1].Strips = slices.Delete(p.Plies[1].Strips, 1, 2) }, `coverage .*ply 2: bare for [0-9.]+ mm.*at x `},
	{"drop a ply", func(p *laminate.Plan) { p.Plies = slices.Delete(p.Plies, 2, 3) }, `plies .*ply 4 stands at place 3`},
	{"double a ply", func(p *laminate.Plan) { p.Plies = slices.Insert(p.Plies, 1, p.Plies[0]) }, `plies .*ply 1 stands at place 2`},
	{"mirror a strip", func(p *laminate.Plan) { s := strip(p, 3, 2); s.Shape = flipped(s.Shape, -1, 1) }, `coverage .*ply 3: .*P03-S0.*mm`},
	{"mirror a piece", func(p *laminate.Plan) { c := piece(p, "P02-S02"); c.Shape = flipped(c.Shape, 1, -1) }, `pieces .*P02-S02 of ply 2 is (cut mirrored|not its strip)`},
	{"mirror a piece and say so", func(p *laminate.Plan) {
		c := piece(p, "P02-S02")
		c.Shape, c.Mirrored = flipped(c.Shape, 1, -1), true
	}, `pieces .*P02-S02 of ply 2, face up, is mirrored: it would come out wrong side up`},
	{"turn a piece", func(p *laminate.Plan) { c := piece(p, "P03-S01"); c.Shape = flipped(c.Shape, -1, -1) }, `pieces .*P03-S01 of ply 3 is (cut unmirrored, turned|not its strip)`},
	{"turn a piece over the roll", func(p *laminate.Plan) { piece(p, "P01-S01").Turned = 90 }, `pieces .*P01-S01 is turned by 90°`},
	{"overlap two pieces", func(p *laminate.Plan) {
		c := piece(p, p.Rolls[0].Pieces[5].ID)
		c.Shape = moved(c.Shape, -1, 0)
	}, `rolls .*lie over each other for [0-9.]+ mm, [0-9.]+ mm from the free end`},
	{"shorten a strip", func(p *laminate.Plan) { s := strip(p, 1, 2); s.Shape = further(s.Shape, 0, -3) }, `coverage .*ply 1: bare for 3 mm, at x `},
	{"shorten a piece", func(p *laminate.Plan) { c := piece(p, "P01-S02"); c.Shape = further(c.Shape, 0, -3) }, `pieces .*P01-S02 of ply 1 is not its strip: `},
	{"widen a strip", func(p *laminate.Plan) { s := strip(p, 1, 2); s.Shape = further(s.Shape, 1, 1) }, `coverage .*ply 1: P01-S02 and P01-S03 lie over each other for 1 mm`},
	{"widen a piece off the roll", func(p *laminate.Plan) { c := piece(p, "P01-S02"); c.Shape = further(c.Shape, 1, 301) }, `rolls .*P01-S02 on roll "T-300" no. 1 runs [0-9.]+ mm over the edge`},
	{"swap two numbers of a ply", func(p *laminate.Plan) {
		a, b := strip(p, 4, 1), strip(p, 4, 2)
		a.ID, b.ID = b.ID, a.ID
	}, `pieces .*P04-S0[12] of ply 4 is not its strip`},
	{"swap two pieces", func(p *laminate.Plan) {
		a, b := piece(p, "P01-S02"), piece(p, "P04-S03")
		a.ID, b.ID = b.ID, a.ID
	}, `pieces .* is not its strip`},
	{"lose a piece", func(p *laminate.Plan) { p.Rolls[0].Pieces = p.Rolls[0].Pieces[1:] }, `pieces .*is not cut from any roll`},
	{"change the sign of an angle", func(p *laminate.Plan) { p.Plies[1].AngleDeg = -45 }, `pieces .*of ply 2 is not its strip`},
	{"turn a ply's angle a little", func(p *laminate.Plan) { p.Plies[0].AngleDeg = 1 }, `joints .*ply 1: .*out of the roll direction`},
	{"lay a ply face down", func(p *laminate.Plan) { p.Plies[2].Face = laminate.FaceDown }, `pieces .*of ply 3, face down, is not mirrored`},
	{"move a joint", func(p *laminate.Plan) { j := &p.Plies[0].Joints[0]; j.From[1] += 5; j.To[1] += 5 }, `joints .*ply 1: .*listed 5 mm from where they butt, at x `},
	{"forget a joint", func(p *laminate.Plan) { p.Plies[0].Joints = p.Plies[0].Joints[1:] }, `joints .*ply 1: .*butt for [0-9.]+ mm at x .*no joint is listed there`},
	{"lay a ply as another", func(p *laminate.Plan) {
		p.Plies[9].Strips, p.Plies[9].Joints = p.Plies[0].Strips, p.Plies[0].Joints
	}, `strips .*ply 10: strip id P01-S01 carries the number of another ply`},
	{"ask for more stagger", func(p *laminate.Plan) { p.Fabrics[0].StaggerMM = 150 }, `stagger .*plies [0-9]+ and [0-9]+, joints [0-9.]+ mm apart, 150 needed, at x `},
	{"keep all joints clear", func(p *laminate.Plan) {
		p.Rules.KeepClear[0].Region = p.Part.Net
		p.Rules.KeepClear[0].Region.Holes = nil
	}, `keep clear .*ply [0-9]+: the joint between .* runs [0-9.]+ mm inside a region to be kept clear`},
	{"a smaller net part", func(p *laminate.Plan) { p.Part.Net = further(p.Part.Net, 1, -10) }, `coverage .*the blank runs 35 mm outside the net edge, trim allowance 25 mm, at x `},
	{"less trim than told", func(p *laminate.Plan) { p.Part.TrimMM = 20 }, `coverage .*the blank runs 25 mm outside the net edge, trim allowance 20 mm`},
	{"a corner moved", func(p *laminate.Plan) { p.Part.Corners[1].At[0] += 3; p.Part.Corners[1].At[1] -= 3 }, `plies .*corner B, from which joints are measured, lies [0-9.]+ mm off the net edge`},
	{"a roll shorter than its pieces", func(p *laminate.Plan) { v := 20000.0; p.Rolls[0].StockLengthMM = &v }, `rolls .*mm past the end of roll "T-300"`},
	{"a cut through a piece", func(p *laminate.Plan) { p.Rolls[0].CrossCuts[0] -= 4 }, `table .*P[0-9]+-S[0-9]+`},
	{"less used than there is", func(p *laminate.Plan) { p.Cost[0].Used -= 100 }, `cost .*DO NOT ORDER BY THIS: .*the rolls add up to`},
	{"too little to buy", func(p *laminate.Plan) { p.Lengths[0].ToBuyMM = p.Lengths[0].UsedMM }, `order .*DO NOT ORDER BY THIS: .*needed with spare`},
	{"not a number's size", func(p *laminate.Plan) { strip(p, 1, 1).WidthMM = 2e6 }, `numbers .*width of P01-S01`},
}

func TestSpoiledPlans(t *testing.T) {
	dir := t.TempDir()
	var out, errs bytes.Buffer
	s := func() stream { out.Reset(); errs.Reset(); return stream{strings.NewReader(""), &out, &errs} }
	demo := filepath.Join("..", "..", "testdata", "jobs", "hatch.yaml")
	if code := run(context.Background(), []string{"plan", demo, "-o", filepath.Join(dir, "out")}, s()); code != exitDone {
		t.Fatal(errs.String())
	}
	good, err := os.ReadFile(filepath.Join(dir, "out", "plan.json"))
	if err != nil {
		t.Fatal(err)
	}
	check := func(t *testing.T, data []byte, want int) string {
		t.Helper()
		file := filepath.Join(dir, "plan.json")
		if err := os.WriteFile(file, data, 0o644); err != nil {
			t.Fatal(err)
		}
		if code := run(context.Background(), []string{"check", file}, s()); code != want || errs.Len() > 0 {
			t.Errorf("exit code %d, want %d: %s%s", code, want, out.String(), errs.String())
		}
		return out.String()
	}
	check(t, good, exitDone)
	for _, e := range spoilings {
		t.Run(e.name, func(t *testing.T) {
			p, _, err := planfile.Decode(good)
			if err != nil {
				t.Fatal(err)
			}
			e.edit(&p)
			data, err := planfile.Encode(p)
			if err != nil {
				t.Fatal(err)
			}
			text := check(t, data, exitFault)
			if !strings.HasPrefix(text, "DO NOT CUT") || !regexp.MustCompile(`(?m)^FAULT +`+e.says).MatchString(text) {
				t.Errorf("does not say %q:\n%s", e.says, text)
			}
		})
	}
}

// Any single vertex of any strip or piece, half a millimetre off, is found.
func TestEveryVertexIsHeld(t *testing.T) {
	var out, errs bytes.Buffer
	demo := filepath.Join("..", "..", "testdata", "jobs", "hatch.yaml")
	if code := run(context.Background(), []string{"plan", demo, "--json", "--effort", "quick"}, stream{strings.NewReader(""), &out, &errs}); code != exitDone {
		t.Fatal(errs.String())
	}
	p, _, err := planfile.Decode(out.Bytes())
	if err != nil {
		t.Fatal(err)
	}
	n := 0
	try := func(what string, r geometry.Region) {
		if n++; n%7 != 0 { // every seventh is enough of 84
			return
		}
		k := n % len(r.Outer)
		held := r.Outer[k]
		r.Outer[k] = orb.Point{held[0] + 0.5*math.Sqrt2/2, held[1] + 0.5*math.Sqrt2/2}
		data, err := planfile.Encode(p)
		r.Outer[k] = held
		if err != nil {
			t.Fatal(err)
		}
		var out bytes.Buffer
		if code := run(context.Background(), []string{"check", "-"}, stream{bytes.NewReader(data), &out, &errs}); code != exitFault {
			t.Errorf("%s: vertex %d moved by 0.5 mm is found sound", what, k)
		}
	}
	for _, y := range p.Plies {
		for _, s := range y.Strips {
			try("strip "+s.ID, s.Shape)
		}
	}
	for _, r := range p.Rolls {
		for _, c := range r.Pieces {
			try("piece "+c.ID, c.Shape)
		}
	}
}
