package layup

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/paulmach/orb"

	"stripwright/geometry"
	"stripwright/laminate"
	"stripwright/laminate/content"
	"stripwright/output/internal/handmade"
	"stripwright/output/sheet"
)

func given(v float64) laminate.Figure { return laminate.Figure{Value: v, Basis: laminate.Given} }

// cored is the hatch lid with a core under its middle: four zones, one of them a
// strip 20 mm high.
func cored() laminate.Plan {
	p := handmade.Hatch()
	p.Fabrics[0].FibreVolume = given(0.5)
	p.Resin = &laminate.Resin{Name: "polyester", BandPoints: given(3)}
	p.Cores = []laminate.Core{{
		Name: "foam 12", AfterPly: 4, Outline: "core", ThicknessMM: 12, DensityKGM3: 80, UptakeGSM: given(350),
		Blank: geometry.Region{Outer: orb.Ring{{200, 140}, {780, 140}, {780, 550}, {200, 550}}},
	}}
	return p
}

// patched is a disc with n small patches of different plies in a row.
func patched(n int) laminate.Plan {
	p := handmade.Disc()
	for i := range n {
		x := -200 + float64(i)*400/float64(n)
		p.Plies = append(p.Plies, laminate.PlanPly{
			Ply: len(p.Plies) + 1, Fabric: "biax450", Face: laminate.FaceUp, Outline: fmt.Sprint("patch ", i),
			Blank: geometry.Region{Outer: orb.Ring{{x, 0}, {x + 25, 0}, {x + 25, 20}, {x, 20}}},
		})
	}
	return p
}

func words(l *sheet.Layer) string {
	var out []string
	for _, t := range l.Texts {
		out = append(out, t.Words)
	}
	return strings.Join(out, "\n")
}

// Every zone is labelled on the map, with its thickness where there is room, and
// stands in the list with it; no label lies over another.
func TestZoneMap(t *testing.T) {
	inch := cored()
	inch.Units = "in"
	for name, p := range map[string]laminate.Plan{"cored": cored(), "inch": inch, "patched": patched(5), "many": patched(12)} {
		r := content.Of(p)
		scene := Zones(p, r, handmade.Hash)
		labels, list := scene.Layer("TEXT"), words(scene.Layer("TITLE"))
		for _, z := range r.Zones {
			thick, _ := (&board{plan: p}).zoneThickness(z)
			full := z.Name + "  " + thick
			n, short := 0, 0
			for _, l := range labels.Texts {
				if l.Words == full {
					n++
				}
				if l.Words == z.Name {
					short++
				}
			}
			if n+short != 1 || short > 0 && name != "many" {
				t.Errorf("%s: %q stands %d times on the map, its name alone %d times", name, full, n, short)
			}
			if !strings.Contains(list, z.Name+": "+thick) {
				t.Errorf("%s: %s is not in the list:\n%s", name, z.Name, list)
			}
		}
		for i, a := range labels.Texts {
			for _, b := range labels.Texts[:i] {
				if overlap(a.Bounds(), b.Bounds()) {
					t.Errorf("%s: %q lies over %q", name, a.Words, b.Words)
				}
			}
		}
		for _, l := range scene.Layers {
			for _, text := range l.Texts {
				if b := text.Bounds(); b.Min[0] < scene.Box.Min[0] || b.Max[0] > scene.Box.Max[0] || b.Min[1] < scene.Box.Min[1] || b.Max[1] > scene.Box.Max[1] {
					t.Errorf("%s: %q runs off the sheet", name, text.Words)
				}
			}
		}
	}
}

// A job in inches is read in inches first.
func TestZoneMapUnits(t *testing.T) {
	p := cored()
	for units, want := range map[string]string{"mm": "Z2: 14.48 mm (0.57 in)", "ft": "Z2: 0.57 in (14.48 mm)"} {
		p.Units = units
		scene := Zones(p, content.Of(p), handmade.Hash)
		if text := words(scene.Layer("TITLE")); !strings.Contains(text, want) {
			t.Errorf("%s: %q is not in\n%s", units, want, text)
		}
	}
}

// The areas that are hatched are those of the zones, and no two zones that stand
// beside each other in the list look the same.
func TestZoneHatching(t *testing.T) {
	p := cored()
	r := content.Of(p)
	scene := Zones(p, r, handmade.Hash)
	shapes := scene.Layer("MAP").Shapes
	if len(shapes) != len(r.Zones) {
		t.Fatalf("%d shapes for %d zones", len(shapes), len(r.Zones))
	}
	var seen []sheet.Fill
	for i, s := range shapes {
		sum := 0.0
		for _, l := range s.Lines {
			sum += math.Abs(geometry.SignedArea(orb.Ring(l.Points)))
		}
		if math.Abs(sum-r.Zones[i].AreaMM2) > 1 {
			t.Errorf("%s: %v mm² drawn, %v reckoned", r.Zones[i].Name, sum, r.Zones[i].AreaMM2)
		}
		if slices.Contains(seen, s.Fill) {
			t.Errorf("%s is hatched as another zone", r.Zones[i].Name)
		}
		seen = append(seen, s.Fill)
	}
}

// A label that lies in a zone lies in it with all its height and width.
func TestZoneSpot(t *testing.T) {
	for _, z := range content.Of(cored()).Zones {
		at, h := zoneSpot(z, 3, 60, 15)
		if h == 0 {
			continue
		}
		for _, y := range []float64{-0.49, 0, 0.49} {
			inside := false
			for _, c := range zoneChords(z, at[1]+y*h) {
				inside = inside || c[0] <= at[0]-1.49*h && c[1] >= at[0]+1.49*h
			}
			if !inside {
				t.Errorf("%s: a box of %v about %v is not inside at %v", z.Name, h, at, y)
			}
		}
	}
}

// A plan at fault says so on the map; what is missing is asked for.
func TestZoneMapWarns(t *testing.T) {
	p := handmade.Faulty(cored())
	p.Resin, p.Fabrics[0].Fibre, p.Fabrics[0].FibreVolume = nil, "", laminate.Figure{}
	scene := Zones(p, content.Of(p), handmade.Hash)
	if !strings.Contains(words(scene.Layer("FAULT")), sheet.DoNotCut) {
		t.Error("no stamp")
	}
	if text := words(scene.Layer("TITLE")); !strings.Contains(text, "MISSING: ") || !strings.Contains(text, "Z1: ?") {
		t.Errorf("what is missing is not asked for:\n%s", text)
	}
}
