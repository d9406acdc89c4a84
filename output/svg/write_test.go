package svg

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/paulmach/orb"
	"github.com/tdewolff/canvas"

	"stripwright/output/sheet"
)

// usedInItself lists the ids of elements that use themselves: nothing of them
// would be seen.
func usedInItself(t *testing.T, data []byte) (faults []string) {
	t.Helper()
	var open []string
	d := xml.NewDecoder(bytes.NewReader(data))
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return faults
		}
		if err != nil {
			t.Fatal(err)
		}
		switch e := token.(type) {
		case xml.StartElement:
			for _, id := range open {
				if id != "" && attr(e, "href") == "#"+id {
					faults = append(faults, id)
				}
			}
			open = append(open, attr(e, "id"))
		case xml.EndElement:
			open = open[:len(open)-1]
		}
	}
}

// elements reads an SVG back with encoding/xml.
func elements(t *testing.T, data []byte) []xml.StartElement {
	t.Helper()
	var out []xml.StartElement
	d := xml.NewDecoder(bytes.NewReader(data))
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return out
		}
		if err != nil {
			t.Fatal(err)
		}
		if e, ok := token.(xml.StartElement); ok {
			out = append(out, e.Copy())
		}
	}
}

func attr(e xml.StartElement, name string) string {
	for _, a := range e.Attr {
		if a.Name.Local == name {
			return a.Value
		}
	}
	return ""
}

func scene() sheet.Scene {
	s := sheet.Scene{Title: `a <b> & "c"`, About: "x\x01y", Box: orb.Bound{Min: orb.Point{-10, -20}, Max: orb.Point{90.5, 30}}}
	l := s.Layer("CUT")
	l.Stroke(sheet.Solid(sheet.Black, 0.3), orb.Point{-10, -20}, orb.Point{90.5, 30})
	l.Area(sheet.Pen{}, sheet.Fill{Ink: sheet.Fault, Spacing: 3, Width: 0.2, Crossed: true}, orb.Point{0, 0}, orb.Point{1, 0}, orb.Point{1, 1})
	s.Layer("TEXT").Write(sheet.Text{At: orb.Point{0, 0}, Height: 5, Words: "HH <& ° ± ∠"})
	s.Layer("TEXT").Write(sheet.Text{At: orb.Point{0, 9}, Height: 5, Turn: 90, Words: "again"})
	s.Layer("TEXT").Write(sheet.Text{At: orb.Point{5, 9}, Height: 7, Words: "again"})
	s.Layer("TEXT").Write(sheet.Text{At: orb.Point{5, 9}, Height: 7, Pen: true, Words: "P01-S02"})
	return s
}

// True to scale: width and height in mm and the equal viewBox, y turned over.
func TestSizeAndPlace(t *testing.T) {
	data, err := Write(scene())
	if err != nil {
		t.Fatal(err)
	}
	es := elements(t, data)
	if w, h, v := attr(es[0], "width"), attr(es[0], "height"), attr(es[0], "viewBox"); w != "100.5mm" || h != "50mm" || v != "0 0 100.5 50" {
		t.Errorf("size %s × %s, viewBox %s; want 100.5mm × 50mm, 0 0 100.5 50", w, h, v)
	}
	if !bytes.Contains(data, []byte(`d="M0 50l100.5-50"`)) {
		t.Error("the line from the lower left to the upper right is not M0 50 l100.5 -50")
	}
	groups := map[string]bool{}
	for _, e := range es {
		groups[attr(e, "id")] = true
	}
	if !groups["CUT"] || !groups["TEXT"] {
		t.Errorf("no group for each layer: %v", groups)
	}
}

// Every reference finds its target, once, before it is used; no text, style,
// script or outside reference is written.
func TestReferences(t *testing.T) {
	data, err := Write(scene())
	if err != nil {
		t.Fatal(err)
	}
	for _, id := range usedInItself(t, data) {
		t.Errorf("%s uses itself", id)
	}
	known := map[string]bool{}
	labels := map[string]int{}
	for _, e := range elements(t, data) {
		switch e.Name.Local {
		case "text", "style", "script", "image", "a":
			t.Errorf("element %s is written", e.Name.Local)
		}
		if id := attr(e, "id"); id != "" {
			if known[id] {
				t.Errorf("id %s comes twice", id)
			}
			known[id] = true
		}
		if href := attr(e, "href"); href != "" && !known[strings.TrimPrefix(href, "#")] {
			t.Errorf("reference %s finds nothing", href)
		}
		if fill := attr(e, "fill"); strings.HasPrefix(fill, "url(#") && !known[strings.TrimSuffix(fill[5:], ")")] {
			t.Errorf("fill %s finds nothing", fill)
		}
		labels[attr(e, "aria-label")]++
	}
	for words, n := range map[string]int{"HH <& ° ± [U+2220]": 1, "again": 2, "P01-S02": 1} {
		if labels[words] != n {
			t.Errorf("%q is lettered %d times, want %d", words, labels[words], n)
		}
	}
}

// Capitals are as high as asked for: the H of the face, scaled by the matrix of
// its group, is 5 mm.
func TestHeightOfCapitals(t *testing.T) {
	s := sheet.Scene{Box: orb.Bound{Max: orb.Point{100, 100}}}
	s.Layer("TEXT").Write(sheet.Text{At: orb.Point{10, 10}, Height: 5, Words: "H"})
	data, err := Write(s)
	if err != nil {
		t.Fatal(err)
	}
	var highest float64
	for _, e := range elements(t, data) {
		if attr(e, "id") != "r48" {
			continue
		}
		y := 0.0
		for _, step := range strings.FieldsFunc(strings.ReplaceAll(attr(e, "d"), "M", "lM"), func(r rune) bool { return r == 'l' || r == 'z' }) {
			if strings.HasPrefix(step, "M") {
				y = 0
			}
			by, err := strconv.ParseFloat(strings.Fields(step)[1], 64)
			if err != nil {
				t.Fatal(err)
			}
			y += by
			highest = math.Max(highest, -y)
		}
	}
	var a, b, c, d, x, y float64
	for _, e := range elements(t, data) {
		if attr(e, "aria-label") == "H" {
			if _, err := fmt.Sscanf(attr(e, "transform"), "matrix(%f %f %f %f %f %f)", &a, &b, &c, &d, &x, &y); err != nil {
				t.Fatal(err)
			}
		}
	}
	if got := highest * d; math.Abs(got-5) > 0.001 || x != 10 || y != 90 {
		t.Errorf("H is %.4f mm high at %g, %g; want 5 at 10, 90", got, x, y)
	}
}

func TestNoNumberIsAnError(t *testing.T) {
	for _, v := range []float64{math.NaN(), math.Inf(1), 1e15} {
		s := sheet.Scene{}
		s.Layer("CUT").Stroke(sheet.Solid(sheet.Black, 1), orb.Point{0, v}, orb.Point{1, 1})
		if _, err := Write(s); !errors.Is(err, sheet.ErrNumber) {
			t.Errorf("%v: error %v, want ErrNumber", v, err)
		}
	}
}

// Steps from point to point lead back to the coordinates of the scene: read with
// the path reader of another library.
func TestPathsLeadWhereTheSceneDoes(t *testing.T) {
	s := sheet.Scene{Box: orb.Bound{Min: orb.Point{-5, -7}, Max: orb.Point{95, 93}}}
	lines := []sheet.Line{
		{Points: []orb.Point{{0, 0}, {10.1234, 0}, {20.5, 3}, {20.5, 30.0006}, {15, 40}, {15, 60}, {-3.2, 41.7}}, Closed: true},
		{Points: []orb.Point{{1, 1}, {0.5, 0.25}, {0.125, 2}}},
		{Points: []orb.Point{{90, 80}, {91.0001, 80}}},
	}
	s.Layer("CUT").Shapes = []sheet.Shape{{Lines: lines, Pen: sheet.Solid(sheet.Black, 1)}}
	data, err := Write(s)
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range elements(t, data) {
		if e.Name.Local != "path" || attr(e, "id") != "" {
			continue
		}
		read, err := canvas.ParseSVGPath(attr(e, "d"))
		if err != nil {
			t.Fatal(err)
		}
		for i, sub := range read.Split() {
			if i >= len(lines) {
				t.Fatalf("%d lines read, %d drawn", i+1, len(lines))
			}
			holdLine(t, sub.Coords(), lines[i])
		}
	}
}

func holdLine(t *testing.T, got []canvas.Point, want sheet.Line) {
	t.Helper()
	for i, p := range want.Points {
		if i >= len(got) || math.Abs(got[i].X-(p[0]+5)) > 0.00051 || math.Abs(got[i].Y-(93-p[1])) > 0.00051 {
			t.Errorf("point %d of %v is read as %v", i, want.Points, got)
			return
		}
	}
}
