package list

import (
	"bytes"
	"encoding/csv"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/paulmach/orb"

	"stripwright/laminate"
	"stripwright/output/internal/handmade"
)

// rows reads CSV back and gives each row by its headings.
func rows(t *testing.T, data []byte, err error) []map[string]string {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
	if bytes.Count(data, []byte("\n")) != bytes.Count(data, []byte("\r\n")) {
		t.Error("a line does not end with CR LF, as RFC 4180 asks")
	}
	all, err := csv.NewReader(bytes.NewReader(data)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var out []map[string]string
	for _, r := range all[1:] {
		row := map[string]string{}
		for i, cell := range r {
			row[all[0][i]] = cell
		}
		out = append(out, row)
	}
	return out
}

func cutList(t *testing.T, p laminate.Plan) []map[string]string {
	t.Helper()
	data, err := CutList(p)
	return rows(t, data, err)
}

// What a spreadsheet takes for a number, a date or a formula; its own rules,
// from common practice, no source.
var changed = regexp.MustCompile(`^\s*([-+=@\t\r]|[0-9.,]+(e[0-9]+)?\s*$|[0-9]+[-/.][0-9]+)`)

func TestNamesSurviveASpreadsheet(t *testing.T) {
	for _, name := range []string{
		"007", "1.10", "1e5", "2024-01-02", "3-4", "=1+1", "+1", "-1", "@SUM(A1)", "\tx", `a"b`, "a,b;c", "line\nbreak", " lead", "true", "",
	} {
		p := handmade.Small()
		p.Rolls[0].Roll, p.Rolls[0].Fabric = name, name
		p.Plies[0].Fabric, p.Fabrics[0].Name, p.Lengths[0].Fabric = name, name, name
		for _, row := range cutList(t, p) {
			for _, column := range []string{"roll", "fabric"} {
				if got := row[column]; changed.MatchString(got) || got != column+" "+name {
					t.Errorf("%s %q is written %q", column, name, got)
				}
			}
			if changed.MatchString(row["piece"]) {
				t.Errorf("piece %q is taken for something else", row["piece"])
			}
		}
		data, err := Order(p)
		if got := rows(t, data, err)[0]["item"]; changed.MatchString(got) || got != "fabric "+name {
			t.Errorf("order: fabric %q is written %q", name, got)
		}
	}
}

// The small plate's strips by hand: 120 mm wide each but the last of 60; the
// slanting end falls back 60 mm over 300, so 24 mm over 120 mm and 12 mm over 60
// mm, and stands at atan2(120, 24) = 78.69° to the right edge.
func TestCutListByHand(t *testing.T) {
	got := cutList(t, handmade.Small())
	if len(got) != 3 {
		t.Fatalf("%d rows, want 3", len(got))
	}
	for i, want := range []map[string]string{
		{"piece": "P01-S01", "width_mm": "120", "right_edge_mm": "400", "left_edge_mm": "376"},
		{"piece": "P01-S02", "width_mm": "120", "right_edge_mm": "376", "left_edge_mm": "352"},
		{"piece": "P01-S03", "width_mm": "60", "right_edge_mm": "352", "left_edge_mm": "340"},
	} {
		want["free_end_angle_deg"], want["far_end_angle_deg"] = "90", "78.69"
		want["ends"], want["laid"], want["holes"], want["mirrored"], want["cut_order"] = "straight", "face up", "0", "no", strconv.Itoa(i+1)
		for k, v := range want {
			if got[i][k] != v {
				t.Errorf("row %d: %s is %q, want %q", i+1, k, got[i][k], v)
			}
		}
	}
}

// A piece can be drawn again from its row: with straight ends, its area is width
// times the mean of both edges.
func TestCutListGivesBackAreas(t *testing.T) {
	for name, p := range map[string]laminate.Plan{"hatch": handmade.Hatch(), "disc": handmade.Disc(), "batten": handmade.Batten()} {
		straight := 0
		byID := map[string]laminate.Piece{}
		for _, piece := range p.Rolls[0].Pieces {
			byID[piece.ID] = piece
		}
		for _, row := range cutList(t, p) {
			piece := byID[row["piece"]]
			if row["ends"] != "straight" {
				if row["free_end_angle_deg"] != "" {
					t.Errorf("%s: %s is shaped and has an angle", name, piece.ID)
				}
				continue
			}
			straight++
			var n [3]float64
			for i, k := range []string{"width_mm", "right_edge_mm", "left_edge_mm"} {
				n[i], _ = strconv.ParseFloat(row[k], 64)
			}
			area := n[0] * (n[1] + n[2]) / 2
			outer := piece.Shape
			outer.Holes = nil
			if math.Abs(area-outer.Area()) > 0.06*n[0]+0.04*(n[1]+n[2]) {
				t.Errorf("%s: %s drawn again is %.1f mm², its outline %.1f mm²", name, piece.ID, area, outer.Area())
			}
		}
		if name != "disc" && straight == 0 {
			t.Errorf("%s: no piece with straight ends", name)
		}
	}
}

func TestShapeOf(t *testing.T) {
	for _, c := range []struct {
		name     string
		ring     orb.Ring
		straight bool
		angles   [2]float64
	}{
		{"square cut", orb.Ring{{0, 0}, {9, 0}, {9, 3}, {0, 3}}, true, [2]float64{90, 90}},
		{"45° ends", orb.Ring{{0, 0}, {9, 0}, {6, 3}, {3, 3}}, true, [2]float64{45, 45}},
		{"parallel ends", orb.Ring{{0, 0}, {9, 0}, {12, 3}, {3, 3}}, true, [2]float64{45, 135}},
		{"triangle", orb.Ring{{0, 0}, {6, 0}, {3, 3}}, true, [2]float64{45, 45}},
		{"vertex on a straight end", orb.Ring{{0, 0}, {9, 0}, {7.5, 1.5}, {6, 3}, {3, 3}}, true, [2]float64{45, 45}},
		{"stepped", orb.Ring{{0, 0}, {9, 0}, {9, 1}, {7, 1}, {7, 3}, {0, 3}}, false, [2]float64{}},
		{"notched along an edge", orb.Ring{{0, 0}, {3, 0}, {3, 1}, {5, 1}, {5, 0}, {9, 0}, {9, 3}, {0, 3}}, false, [2]float64{}},
	} {
		got := shapeOf(c.ring)
		if got.straight != c.straight || math.Abs(got.freeDeg-c.angles[0]) > 1e-6 || math.Abs(got.farDeg-c.angles[1]) > 1e-6 {
			t.Errorf("%s: straight %v, angles %v %v; want %v %v", c.name, got.straight, got.freeDeg, got.farDeg, c.straight, c.angles)
		}
	}
}

// A stepped piece is given by its corners, one with a round end by the cut map.
func TestCornersOfShapedPieces(t *testing.T) {
	stepped := orb.Ring{{0, 0}, {9, 0}, {9, 1.04}, {7, 1.04}, {7, 2}, {7, 3}, {0, 3}}
	if got, want := shapeOf(stepped).corners(stepped), "0 by 0; 9 by 0; 9 by 1; 7 by 1; 7 by 3; 0 by 3"; got != want {
		t.Errorf("corners %q, want %q", got, want)
	}
	round := orb.Ring{{0, 0}}
	for i := range 20 {
		sin, cos := math.Sincos(float64(i-10) * math.Pi / 20)
		round = append(round, orb.Point{50 + 10*cos, 10 + 10*sin})
	}
	if got := shapeOf(round).corners(round); got != "curved: follow the cut map" {
		t.Errorf("a round end: %q", got)
	}
}

func TestSummaryVerdictFirst(t *testing.T) {
	sound, faulty := Summary(handmade.Hatch()), Summary(handmade.Faulty(handmade.Hatch()))
	first, _, _ := strings.Cut(sound, "\n")
	if first != "SOUND: all 3 rules hold; part Foredeck hatch lid 1370 x 620 mm (53.94 x 24.41 in)" {
		t.Errorf("first line: %s", first)
	}
	for _, want := range []string{"least stagger found: 58 mm, plies 1 and 6", "11.11 %", "note: hatch.yaml:9: narrowest"} {
		if !strings.Contains(sound, want) {
			t.Errorf("summary does not say %q", want)
		}
	}
	if !strings.HasPrefix(faulty, "DO NOT CUT: 1 rule fails") || !strings.Contains(faulty, "plies 4 and 6, joints 34 mm apart") {
		t.Errorf("faulty plan: %s", faulty)
	}
	p := handmade.Small()
	p.Part.Name = "a\x1b[31mb"
	if strings.ContainsRune(Summary(p), '\x1b') {
		t.Error("a control code reaches the terminal")
	}
}

// The small plate's three strips lie abreast, square at the free end: what is
// lost lies before the last cut. 400 × 300 less the plate's 111,000 mm² are 9,000
// mm² or 30 mm of roll, 7.5 % of 400.
func TestSummaryTellsWhereTheClothGoes(t *testing.T) {
	got := Summary(handmade.Small())
	for _, want := range []string{"in the plies", "370 mm 92.5 %", "first and last cut", "30 mm 7.5 %"} {
		if !strings.Contains(got, want) {
			t.Errorf("summary does not say %q:\n%s", want, got)
		}
	}
	if strings.Contains(got, "between ends") || strings.Contains(got, "left over") {
		t.Errorf("the summary tells of what there is not:\n%s", got)
	}
}

// Of a roll of 5 m of which 3,499.96 mm are used and 400 hold pieces,
// the rest and the offcut are listed, sizes rounded down.
func TestLeftOverList(t *testing.T) {
	long, name := 5000.0, "007"
	p := handmade.Small()
	r := &p.Rolls[0]
	r.Roll, r.StockLengthMM, r.UsedLengthMM = name, &long, 3499.96
	data, err := LeftOver(p)
	got := rows(t, data, err)
	if len(got) != 2 {
		t.Fatalf("%d rows: %v", len(got), got)
	}
	for i, want := range []map[string]string{
		{"roll": "roll 007", "kind": "rest of the roll", "length_mm": "1500", "width_mm": "300", "from_mm": "3500", "across_from_mm": "0"},
		{"roll": "roll 007", "kind": "offcut", "length_mm": "3099.9", "width_mm": "300", "from_mm": "400", "across_from_mm": "0"},
	} {
		for k, v := range want {
			if got[i][k] != v {
				t.Errorf("row %d: %s is %q, want %q", i+1, k, got[i][k], v)
			}
		}
	}
	if s := Summary(p); !strings.Contains(s, "left over") || !strings.Contains(s, "1500 x 300 mm") && !strings.Contains(s, "1500 mm x 300 mm") {
		t.Errorf("summary: %s", s)
	}
}
