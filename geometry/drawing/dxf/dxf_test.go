package dxf

import (
	"encoding/binary"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/paulmach/orb"

	"stripwright/geometry"
	"stripwright/geometry/drawing/trace"
)

func groupsOf(text string) []byte {
	return []byte(strings.Join(strings.Fields(text), "\n") + "\n")
}

// drawn gives the lines of entities, with a chord error of 0.01.
func drawn(t *testing.T, entities string) ([]trace.Line, *trace.Report) {
	t.Helper()
	r := &trace.Report{File: "x"}
	f := Parse(groupsOf("0 SECTION 2 ENTITIES "+entities+" 0 ENDSEC 0 EOF"), r)
	if f == nil {
		t.Fatal(r.Problems)
	}
	return f.Lines(0.01, func(string) bool { return true }), r
}

func TestScan(t *testing.T) {
	cases := []struct {
		text   string
		groups string
		says   string
	}{
		{"0\nEOF\n", "0=EOF@2", ""},
		{"\ufeff  0\r\nEOF\r\n\r\n\r\n", "0=EOF@2", ""},
		{"999\n0\n 8 \n  a b \n0\nEOF", "8=a b@4 0=EOF@6", ""},
		{"0\rSECTION\r0\rEOF\r", "0=SECTION@2 0=EOF@4", ""},
		{"1\n\n0\nEOF\n", "1=@2 0=EOF@4", ""},
		{"0\nLINE\n10\n", "0=LINE@2", "x:3: truncated: group code 10 has no value"},
		{"0\nLINE\n", "0=LINE@2", "x:2: truncated: the drawing ends without its EOF"},
		{"0\nLINE\nten\n5\n", "0=LINE@2", `x:3: syntax: "ten" is not a group code`},
		{"0\nLINE\n\n5\n", "0=LINE@2", `x:3: syntax: "" is not a group code`},
		{"2000\n5\n", "", "is not a group code"},
	}
	for _, c := range cases {
		r := &trace.Report{File: "x"}
		groups, ok := scan([]byte(c.text), r)
		var got []string
		for _, g := range groups {
			got = append(got, fmt.Sprintf("%d=%s@%d", g.code, g.value, g.line))
		}
		if s := strings.Join(got, " "); s != c.groups {
			t.Errorf("%q: %s, want %s", c.text, s, c.groups)
		}
		if ok != (c.says == "") || (c.says != "" && !strings.Contains(r.Problems[0].Error(), c.says)) {
			t.Errorf("%q: ok %v, %v, want %q", c.text, ok, r.Problems, c.says)
		}
	}
}

// Where each entity begins and ends, and how long it is, worked by hand.
func TestEntities(t *testing.T) {
	cases := []struct {
		entity   string
		from, to orb.Point
		length   float64
		closed   bool
	}{
		{"0 LINE 10 1 20 2 11 4 21 6", orb.Point{1, 2}, orb.Point{4, 6}, 5, false},
		{"0 ARC 10 0 20 0 40 10 50 0 51 90", orb.Point{10, 0}, orb.Point{0, 10}, 5 * math.Pi, false},
		{"0 ARC 10 0 20 0 40 10 50 270 51 90", orb.Point{0, -10}, orb.Point{0, 10}, 10 * math.Pi, false},
		{"0 ARC 10 0 20 0 40 10 50 -45 51 405", orb.Point{7.0711, -7.0711}, orb.Point{7.0711, 7.0711}, 5 * math.Pi, false},
		{"0 ARC 10 5 20 0 40 10 50 0 51 90 210 0 220 0 230 -1", orb.Point{-15, 0}, orb.Point{-5, 10}, 5 * math.Pi, false},
		{"0 CIRCLE 10 3 20 4 40 10", orb.Point{13, 4}, orb.Point{13, 4}, 20 * math.Pi, true},
		{"0 ELLIPSE 10 0 20 0 11 10 21 0 40 0.5 41 0 42 1.5707963267948966", orb.Point{10, 0}, orb.Point{0, 5}, 12.1106, false},
		{"0 ELLIPSE 10 0 20 0 11 10 21 0 40 0.5 41 0 42 1.5707963267948966 230 -1", orb.Point{10, 0}, orb.Point{0, -5}, 12.1106, false},
		{"0 LWPOLYLINE 90 2 70 0 10 0 20 0 42 1 10 20 20 0", orb.Point{0, 0}, orb.Point{20, 0}, 10 * math.Pi, false},
		{"0 LWPOLYLINE 90 2 70 1 10 0 20 0 42 -1 10 20 20 0 42 -1", orb.Point{0, 0}, orb.Point{0, 0}, 20 * math.Pi, true},
		{"0 POLYLINE 70 4 0 VERTEX 70 16 10 9 20 9 0 VERTEX 70 8 10 0 20 0 0 VERTEX 70 8 10 3 20 4 0 SEQEND", orb.Point{0, 0}, orb.Point{3, 4}, 5, false},
		{"0 SPLINE 70 8 71 1 72 5 73 3 40 0 40 0 40 1 40 2 40 2 10 0 20 0 10 3 20 4 10 3 20 10", orb.Point{0, 0}, orb.Point{3, 10}, 11, false},
	}
	for _, c := range cases {
		lines, r := drawn(t, c.entity)
		if len(lines) != 1 || len(r.Problems) > 0 {
			t.Errorf("%s: %d lines, %v", c.entity, len(lines), r.Problems)
			continue
		}
		ps := lines[0].Points
		if lines[0].Closed {
			ps = append(ps, ps[0])
		}
		length := 0.0
		for i := range ps[1:] {
			length += math.Hypot(ps[i+1][0]-ps[i][0], ps[i+1][1]-ps[i][1])
		}
		far := math.Max(distance(ps[0], c.from), distance(ps[len(ps)-1], c.to))
		if far > 1e-3 || math.Abs(length-c.length) > 2e-3*c.length || lines[0].Closed != c.closed {
			t.Errorf("%s: from %v to %v, %v long, closed %v; want %v to %v, %v, %v",
				c.entity, ps[0], ps[len(ps)-1], length, lines[0].Closed, c.from, c.to, c.length, c.closed)
		}
	}
}

func distance(a, b orb.Point) float64 { return math.Hypot(a[0]-b[0], a[1]-b[1]) }

// A positive bulge bows to the right of the way from its vertex to the next
// (DXF reference, LWPOLYLINE group 42: positive is counter-clockwise), so a
// counter-clockwise outline with positive bulges grows by them.
func TestBulgeSign(t *testing.T) {
	for bulge, want := range map[string]float64{"1": 400 + 50*math.Pi, "-1": 400 - 50*math.Pi} {
		lines, _ := drawn(t, "0 LWPOLYLINE 90 4 70 1 10 0 20 0 42 "+bulge+" 10 20 20 0 10 20 20 20 10 0 20 20")
		if area := geometry.SignedArea(lines[0].Points); math.Abs(area-want) > 0.5 {
			t.Errorf("bulge %s: area %v, want %v", bulge, area, want)
		}
	}
}

// Numbers that are none, each with its line.
func TestNumbers(t *testing.T) {
	for value, says := range map[string]string{
		"1,5": "decimal comma", "nan": "not a number", "inf": "not a number", "0x10": "not a number", "1_0": "not a number",
		"1e99": "out of all reason", "1e999": "out of all reason", "--1": "not a number", "1.2.3": "not a number", "five": "not a number",
	} {
		_, r := drawn(t, "0 LINE 10 0 20 0 11 "+value+" 21 0")
		if len(r.Problems) != 1 || !strings.Contains(r.Problems[0].Error(), says) || r.Problems[0].Where != "x:12" {
			t.Errorf("%s: %v", value, r.Problems)
		}
	}
	for _, value := range []string{"1.", ".5", "+1", "-1e-3", "1E2", "00012"} {
		if _, r := drawn(t, "0 LINE 10 0 20 0 11 "+value+" 21 9"); len(r.Problems) > 0 {
			t.Errorf("%s: %v", value, r.Problems)
		}
	}
}

// Layers: off, frozen, layer 0 in a block, capitals, and invisible entities.
func TestHidden(t *testing.T) {
	r := &trace.Report{File: "x"}
	text := "0 SECTION 2 TABLES 0 TABLE 2 LAYER 0 LAYER 2 Off 70 0 62 -7 0 LAYER 2 Cold 70 1 62 7 0 ENDTAB 0 ENDSEC" +
		" 0 SECTION 2 BLOCKS 0 BLOCK 2 b 10 0 20 0 0 LINE 8 0 10 1 20 0 11 2 21 0 0 LINE 8 own 10 3 20 0 11 4 21 0 0 ENDBLK 0 ENDSEC" +
		" 0 SECTION 2 ENTITIES" +
		" 0 LINE 8 OFF 10 0 20 0 11 9 21 0 0 LINE 8 cold 10 0 20 0 11 9 21 0 0 LINE 8 a 60 1 10 0 20 0 11 9 21 0" +
		" 0 LINE 8 a 67 1 10 0 20 0 11 9 21 0 0 INSERT 8 Off 2 B 10 0 20 0 0 INSERT 8 Cold 2 b 10 0 20 0 0 INSERT 8 top 2 b 10 0 20 0" +
		" 0 ENDSEC 0 EOF"
	f := Parse(groupsOf(text), r)
	var got []string
	for _, l := range f.Lines(0.01, func(string) bool { return true }) {
		got = append(got, l.Layer+" "+strconv.FormatFloat(l.Points[0][0], 'g', -1, 64))
	}
	if s := strings.Join(got, ", "); s != "own 3, top 1, own 3" {
		t.Errorf("lines are %s", s)
	}
	const left = "1 INSERT on frozen layer Cold, 1 LINE in paper space, 1 LINE on frozen layer Cold, 2 LINE on layer Off, which is off, 1 LINE set invisible"
	if r.LeftOut() != left {
		t.Errorf("left out: %s\nwant: %s", r.LeftOut(), left)
	}
}

func TestNamesAreDecoded(t *testing.T) {
	for _, c := range []struct{ version, page, stored, want string }{
		{"AC1015", "ANSI_1252", "Au\xdfen", "Außen"},
		{"AC1015", "ANSI_1251", "\xca\xf0\xe0\xe9", "Край"},
		{"AC1009", "dos850", "gr\x81n", "grün"},
		{"AC1032", "ANSI_1252", "Außen", "Außen"},
		{"AC1032", "ANSI_1252", "Au\xdfen", "Außen"},
		{"", "", "Außen", "Außen"},
		{"", "", "Au\xdfen", "Außen"},
		{"AC1015", "ANSI_1252", `Au\U+00DFen`, "Außen"},
	} {
		if got := decoder(c.version, c.page)(c.stored); got != c.want {
			t.Errorf("%q in %s %s: %q, want %q", c.stored, c.version, c.page, got, c.want)
		}
	}
}

// Every text drawing of the corpus, written as a binary one, gives the same
// lines; so does one with one-byte group codes.
func TestBinaryIsTheSame(t *testing.T) {
	files, err := filepath.Glob("../../../testdata/drawings/dxf_*.dxf")
	if err != nil || len(files) < 50 {
		t.Fatal(files, err)
	}
	compared := 0
	for _, file := range files {
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		r := &trace.Report{File: "x"}
		groups, ok := scan(data, r)
		if !ok || IsBinary(data) || strings.Contains(file, "100k") || strings.Contains(file, "comma") {
			continue
		}
		compared++
		want := Parse(data, &trace.Report{File: "x"}).Lines(0.05, func(string) bool { return true })
		for _, short := range []bool{false, true} {
			f := Parse(asBinary(groups, short), r)
			if f == nil {
				t.Fatal(file, r.Problems)
			}
			got := f.Lines(0.05, func(string) bool { return true })
			if len(got) != len(want) {
				t.Fatalf("%s: %d lines, %d as text", file, len(got), len(want))
			}
			for i := range got {
				if !orb.LineString(got[i].Points).Equal(orb.LineString(want[i].Points)) || got[i].Layer != want[i].Layer {
					t.Errorf("%s: line %d differs", file, i)
				}
			}
		}
	}
	if compared < 40 {
		t.Errorf("only %d drawings were compared", compared)
	}
}

// asBinary writes groups as a binary DXF, as the DXF reference describes it.
func asBinary(groups []group, short bool) []byte {
	out := append([]byte("1234567"), sentinel...)
	for _, g := range groups {
		switch {
		case !short:
			out = binary.LittleEndian.AppendUint16(out, uint16(g.code))
		case g.code >= 255 || g.code < 0:
			out = binary.LittleEndian.AppendUint16(append(out, 255), uint16(g.code))
		default:
			out = append(out, byte(g.code))
		}
		float, err := strconv.ParseFloat(g.value, 64)
		in := func(from, to int) bool { return g.code >= from && g.code <= to }
		switch {
		case in(10, 59), in(110, 149), in(210, 239), in(460, 469), in(1010, 1059):
			if err != nil {
				float = math.NaN()
			}
			out = binary.LittleEndian.AppendUint64(out, math.Float64bits(float))
		case in(60, 79), in(170, 179), in(270, 289), in(370, 389), in(400, 409), in(1060, 1070):
			out = binary.LittleEndian.AppendUint16(out, uint16(int16(float)))
		case in(90, 99), in(420, 429), in(440, 459), g.code == 1071:
			out = binary.LittleEndian.AppendUint32(out, uint32(int32(float)))
		case in(160, 169):
			out = binary.LittleEndian.AppendUint64(out, uint64(int64(float)))
		case in(290, 299):
			out = append(out, byte(float))
		case in(310, 319), g.code == 1004:
			out = append(out, 2, 0xde, 0xad)
		default:
			out = append(append(out, g.value...), 0)
		}
	}
	return out
}
