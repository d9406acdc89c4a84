package dxf

import (
	"bufio"
	"bytes"
	"errors"
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/paulmach/orb"

	"stripwright/laminate"
	"stripwright/output/cutmap"
	"stripwright/output/internal/handmade"
	"stripwright/output/sheet"
)

type pair struct {
	code  int
	value string
}

// pairs reads group codes back, as DXF writes them: a code and a value on lines
// of their own.
func pairs(t *testing.T, data []byte) []pair {
	t.Helper()
	var out []pair
	s := bufio.NewScanner(bytes.NewReader(data))
	for s.Scan() {
		code, err := strconv.Atoi(s.Text())
		if err != nil || !s.Scan() {
			t.Fatalf("no group code, or no value: %q", s.Text())
		}
		out = append(out, pair{code, s.Text()})
	}
	return out
}

// entities counts entities by kind and layer, and checks that every polyline is
// ended and every entity's layer is in the table.
func entities(t *testing.T, ps []pair) map[string]int {
	t.Helper()
	count, layers := map[string]int{}, map[string]bool{}
	section, kind, open := "", "", false
	for i, p := range ps {
		switch {
		case p.code == 0 && p.value == "SECTION":
			section = ps[i+1].value
		case p.code == 0:
			kind = p.value
			if section == "ENTITIES" && kind == "POLYLINE" {
				open = true
			} else if section == "ENTITIES" && open && kind != "VERTEX" && kind != "SEQEND" {
				t.Errorf("%s inside a polyline", kind)
			}
			if kind == "SEQEND" {
				open = false
			}
		case p.code == 2 && section == "TABLES" && kind == "LAYER":
			layers[p.value] = true
		case p.code == 8 && section == "ENTITIES":
			count[kind+" "+p.value]++
			if !layers[p.value] {
				t.Errorf("layer %s is not in the table", p.value)
			}
		}
	}
	return count
}

func TestWriteReadBack(t *testing.T) {
	s := sheet.Scene{Title: "t", Box: orb.Bound{Max: orb.Point{100, 50}}}
	pen := sheet.Solid(sheet.Black, 0.3)
	s.Layer("TEXT").Write(sheet.Text{At: orb.Point{1, 2}, Height: 5, Words: "45° ±2 Ø3 é"})
	s.Layer("CUT").Stroke(pen, orb.Point{0, 0}, orb.Point{100, 0.125})
	s.Layer("CUT").Area(pen, sheet.Fill{}, orb.Point{0, 0}, orb.Point{10, 0}, orb.Point{10, 10})
	s.Layer("CUT").Disc(pen, sheet.Fill{}, orb.Point{5, 5}, 2)
	s.Layer("CUT").Area(sheet.Pen{}, sheet.Fill{Ink: sheet.Pale}, orb.Point{0, 0}, orb.Point{10, 0}, orb.Point{10, 10})
	data, err := Write(s)
	if err != nil {
		t.Fatal(err)
	}
	ps := pairs(t, data)
	if last := ps[len(ps)-1]; last != (pair{0, "EOF"}) {
		t.Errorf("ends with %v, want EOF", last)
	}
	got := entities(t, ps)
	for what, n := range map[string]int{
		"TEXT TEXT": 1, "LINE CUT": 1, "POLYLINE CUT": 1, "VERTEX CUT": 3, "SEQEND CUT": 1, "CIRCLE CUT": 1,
	} {
		if got[what] != n {
			t.Errorf("%d × %s, want %d", got[what], what, n)
		}
	}
	text := string(data)
	for _, want := range []string{"$ACADVER\n1\nAC1009\n", "$INSUNITS\n70\n4\n", "$MEASUREMENT\n70\n1\n", `45%%d %%p2 %%c3 \U+00E9`, "\n21\n0.125\n"} {
		if !strings.Contains(text, want) {
			t.Errorf("file does not hold %q", want)
		}
	}
}

// Release 12 knows ASCII only; names that differ stay different.
func TestTextStaysASCIIAndDifferent(t *testing.T) {
	seen := map[string]string{}
	for _, name := range []string{
		"Köper", "Koper", `K\U+00F6per`, `K\U+005C\U+00F6per`, "50%", "50%%", "50%%d", "50°", "50±", "50%%p", "Ø", "%%c", "漢", "漢字",
		"a\nb", "a b", `a\nb`, "\x00", "", "\u00e9", "e\u0301", "[U+00E9]",
	} {
		got := ascii(name)
		if other, ok := seen[got]; ok {
			t.Errorf("%q and %q are both written %q", name, other, got)
		}
		seen[got] = name
		for _, r := range got {
			if r < ' ' || r > '~' {
				t.Errorf("%q is written %q: not ASCII", name, got)
			}
		}
	}
	if got := ascii(strings.Repeat("x", 1000)); len(got) > 255 {
		t.Errorf("a text of 1000 letters is written with %d", len(got))
	}
}

func TestNoNumberIsAnError(t *testing.T) {
	for _, v := range []float64{math.NaN(), math.Inf(-1), 1e12} {
		s := sheet.Scene{}
		s.Layer("CUT").Stroke(sheet.Solid(sheet.Black, 1), orb.Point{0, v}, orb.Point{1, 1})
		if _, err := Write(s); !errors.Is(err, sheet.ErrNumber) {
			t.Errorf("%v: error %v, want ErrNumber", v, err)
		}
	}
}

// Every piece is closed polylines, as many as it has rings, and has its id; the
// areas of the outlines are those of the strips.
func TestPiecesAreClosed(t *testing.T) {
	p := handmade.Hatch()
	data, err := Write(cutmap.Pieces(p))
	if err != nil {
		t.Fatal(err)
	}
	rings, ids, area := 0, 0, 0.0
	for _, ply := range p.Plies {
		for _, s := range ply.Strips {
			rings += len(s.Shape.Rings())
			ids++
			area += s.Shape.Area()
		}
	}
	ps := pairs(t, data)
	count := entities(t, ps)
	if count["POLYLINE CUT"] != rings || count["LINE CUT"] != 0 {
		t.Errorf("%d polylines and %d lines, want %d and 0", count["POLYLINE CUT"], count["LINE CUT"], rings)
	}
	if count["TEXT TEXT"] != ids+1 {
		t.Errorf("%d texts, want %d ids and one heading", count["TEXT TEXT"], ids)
	}
	if got := signedArea(t, ps); math.Abs(got-area) > 1 {
		t.Errorf("outlines less openings are %.1f mm², strips %.1f mm²", got, area)
	}
}

// signedArea sums the areas of closed polylines, openings running clockwise
// taken off.
func signedArea(t *testing.T, ps []pair) float64 {
	t.Helper()
	var xs, ys []float64
	sum, inVertex := 0.0, false
	for _, p := range ps {
		v, _ := strconv.ParseFloat(p.value, 64)
		switch {
		case p.code == 0 && p.value == "SEQEND":
			for i := range xs {
				j := (i + 1) % len(xs)
				sum += (xs[i]*ys[j] - xs[j]*ys[i]) / 2
			}
			xs, ys, inVertex = nil, nil, false
		case p.code == 0:
			inVertex = p.value == "VERTEX"
		case inVertex && p.code == 10:
			xs = append(xs, v)
		case inVertex && p.code == 20:
			ys = append(ys, v)
		}
	}
	return sum
}

// Release 2000 and other names: every entity has a handle of its own, the layer that
// was asked for and its class; layers that share a name stand in the table once. The
// form itself is held by ezdxf (testdata/outside/dxf.py).
func TestRelease2000(t *testing.T) {
	var s sheet.Scene
	pen := sheet.Solid(sheet.Black, 0.2)
	s.Layer("TEXT").Texts = []sheet.Text{{At: orb.Point{1, 2}, Height: 5, Words: "P01-S01"}}
	s.Layer("MARK")
	s.Layer("SCALE").Shapes = []sheet.Shape{{Pen: pen, Lines: []sheet.Line{{Points: []orb.Point{{0, 0}, {100, 0}}}}}}
	s.Layer("CUT").Shapes = []sheet.Shape{{Pen: pen, Lines: []sheet.Line{{Points: []orb.Point{{0, 0}, {9, 0}, {9, 7}}, Closed: true}}}, {Pen: pen, Centre: orb.Point{4, 4}, Radius: 2}}
	data, err := WriteAs(s, &laminate.DXF{Release: laminate.R2000, Layers: laminate.NumberedLayers()})
	if err != nil {
		t.Fatal(err)
	}
	text := string(data)
	for _, want := range []string{"AC1015", "LWPOLYLINE", "AcDbPolyline\n90\n3\n70\n1\n", "AcDbCircle", "8\n15\n100\nAcDbText", "8\n8\n100\nAcDbLine", "8\n1\n100\nAcDbPolyline"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is missing", want)
		}
	}
	lines := strings.Split(text, "\n")
	handles, layers := map[string]bool{}, map[string]int{}
	for i := 0; i+1 < len(lines); i += 2 {
		code, value := lines[i], lines[i+1]
		if code == "5" && i > 12 {
			if handles[value] {
				t.Errorf("handle %s stands twice", value)
			}
			handles[value] = true
		}
		if code == "2" && i > 7 && lines[i-1] == "AcDbLayerTableRecord" {
			layers[value]++
		}
	}
	if len(handles) < 10 || layers["8"] != 1 || layers["1"] != 1 || layers["15"] != 1 || layers["0"] != 1 {
		t.Errorf("%d handles, layers %v", len(handles), layers)
	}
}
