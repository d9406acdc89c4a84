package drawing_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/paulmach/orb"

	"stripwright/geometry/drawing"
)

// movement is a way to place a whole drawing anew: by an INSERT in a DXF, by a
// group in an SVG; probe says where a point of the box goes.
type movement struct {
	name        string
	insert      string // groups of the INSERT
	transform   string // of the group
	scale       float64
	turned, any bool // width and height change places; the box is no longer known
	probe       func(x, y, w, h float64) orb.Point
}

var movements = []movement{
	{"turned by 90°", "50 90", "rotate(-90)", 1, true, false, func(x, y, w, h float64) orb.Point { return orb.Point{h - y, x} }},
	{"turned by 180°", "50 -180", "rotate(180 5 7)", 1, false, false, func(x, y, w, h float64) orb.Point { return orb.Point{w - x, h - y} }},
	{"mirrored", "41 -1", "scale(-1 1)", 1, false, false, func(x, y, w, h float64) orb.Point { return orb.Point{w - x, y} }},
	{"seen from the back", "210 0 220 0 230 -1", "matrix(-1 0 0 1 30 0)", 1, false, false, func(x, y, w, h float64) orb.Point { return orb.Point{w - x, y} }},
	{"moved a million units", "10 1000000 20 -1000000", "translate(1000000 1000000)", 1, false, false, func(x, y, w, h float64) orb.Point { return orb.Point{x, y} }},
	{"three times as large", "41 3 42 3", "scale(3)", 3, false, false, func(x, y, w, h float64) orb.Point { return orb.Point{3 * x, 3 * y} }},
	{"turned by 30°", "50 30", "rotate(-30)", 1, false, true, nil},
}

// Every drawing of the corpus that is read gives the same part when it is
// turned, mirrored, moved and scaled as a whole: area, holes, box and probes
// follow.
func TestCorpusFollowsMovements(t *testing.T) {
	for _, c := range readable(t) {
		if !movable(c.File) {
			continue
		}
		for _, m := range movements {
			if m.turned && strings.Contains(c.File, "aspect_none") {
				continue // the page stretches its height alone
			}
			if m.scale != 1 && strings.Contains(c.File, "dxf_gap") {
				continue // the gaps grow too
			}
			t.Run(c.File+" "+m.name, func(t *testing.T) {
				data := m.place(t, c.File, readFile(t, c.File))
				moved := c
				moved.Tol = max(c.Tol, 1e-5, 0.003/min(c.W, c.H)) // vertices come to lie on the micrometre grid anew
				moved.W, moved.H, moved.Area = c.W*m.scale, c.H*m.scale, c.Area*m.scale*m.scale
				if m.turned {
					moved.W, moved.H = moved.H, moved.W
				}
				moved.Probes = nil
				for _, p := range c.Probes {
					if m.probe != nil {
						q := m.probe(p[0].(float64), p[1].(float64), c.W, c.H)
						moved.Probes = append(moved.Probes, [3]any{q[0], q[1], p[2]})
					}
				}
				d := drawing.Read(c.File, data, c.options(t))
				if len(d.Problems) > 0 {
					t.Fatal(told(d))
				}
				if m.any {
					moved.W, moved.H = d.SizeMM[0], d.SizeMM[1]
				}
				holdValues(t, moved, d)
			})
		}
	}
}

// readable gives the cases of both corpora that must be read.
func readable(t *testing.T) []expected {
	return slices.DeleteFunc(append(readCorpus(t), readHarder(t)...), func(c expected) bool {
		return c.Area == 0 || c.Verdict == "error" || c.File == "dxf_100k_points.dxf"
	})
}

// movable says whether a file is plain text that can be put into a block or
// group by cutting it at its lines.
func movable(file string) bool {
	ending := filepath.Ext(file)
	for _, word := range []string{"binary", "utf16", "line_ends_cr", "blank_lines_first", "prefixed"} {
		if strings.Contains(file, word) {
			return false
		}
	}
	return ending == ".dxf" || ending == ".svg"
}

// place puts the whole drawing into a block or a group.
func (m movement) place(t *testing.T, file string, data []byte) []byte {
	t.Helper()
	text := strings.TrimPrefix(string(data), "\ufeff")
	if filepath.Ext(file) == ".svg" {
		i := strings.Index(text, "<svg")
		i += strings.Index(text[i:], ">") + 1
		j := strings.LastIndex(text, "</svg>")
		return []byte(text[:i] + `<g transform="` + m.transform + `">` + text[i:j] + "</g>" + text[j:])
	}
	out, entities := dissected(text)
	insert := "0 SECTION 2 ENTITIES 0 INSERT 8 0 2 whole_drawing " + m.insert
	if !strings.HasPrefix(m.insert, "10 ") {
		insert += " 10 0 20 0"
	}
	block := append(strings.Fields("0 SECTION 2 BLOCKS 0 BLOCK 2 whole_drawing 10 0 20 0"), entities...)
	block = append(block, strings.Fields("0 ENDBLK 0 ENDSEC "+insert+" 0 ENDSEC 0 EOF")...)
	return []byte(strings.Join(append(out[:len(out)-2], block...), "\n") + "\n")
}

// dissected parts the lines of a DXF into those of its entities and all others,
// which end with EOF.
func dissected(text string) (rest, entities []string) {
	lines := strings.Split(strings.ReplaceAll(text, "\r\n", "\n"), "\n")
	inside := false
	for i := 0; i+1 < len(lines); i += 2 {
		code, value := strings.TrimSpace(lines[i]), strings.TrimSpace(lines[i+1])
		switch {
		case code == "2" && value == "ENTITIES":
			inside = true
			rest = rest[:len(rest)-2]
			continue
		case inside && code == "0" && value == "ENDSEC":
			inside = false
			continue
		}
		if inside {
			entities = append(entities, code, value)
		} else {
			rest = append(rest, code, value)
		}
		if code == "0" && value == "EOF" {
			break
		}
	}
	return rest, entities
}

// The order in which a DXF or SVG draws its lines changes nothing.
func TestOrderChangesNothing(t *testing.T) {
	rnd := rand.New(rand.NewPCG(9, 10))
	for _, c := range readable(t) {
		if !movable(c.File) {
			continue
		}
		t.Run(c.File, func(t *testing.T) {
			data := shuffled(rnd, c.File, string(readFile(t, c.File)))
			d := drawing.Read(c.File, []byte(data), c.options(t))
			if len(d.Problems) > 0 {
				t.Fatal(told(d))
			}
			holdValues(t, c, d)
		})
	}
}

// shuffled puts the entities of a DXF, or the shapes of an SVG that follow one
// another, into another order.
func shuffled(rnd *rand.Rand, file, text string) string {
	var parts []string
	var before, after string
	if filepath.Ext(file) == ".svg" {
		at := regexp.MustCompile(`(<(path|rect|circle|ellipse|line|poly[a-z]+)\s[^<>]*/>\s*){2,}`).FindStringIndex(text)
		if at == nil {
			return text
		}
		before, after = text[:at[0]], text[at[1]:]
		parts = regexp.MustCompile(`<[^>]*>\s*`).FindAllString(text[at[0]:at[1]], -1)
	} else {
		rest, entities := dissected(strings.TrimPrefix(text, "\ufeff"))
		before = strings.Join(rest[:len(rest)-2], "\n") + "\n0\nSECTION\n2\nENTITIES\n"
		after = "0\nENDSEC\n0\nEOF\n"
		for i := 0; i+1 < len(entities); i += 2 {
			code, value := entities[i], entities[i+1]
			if code == "0" && value != "VERTEX" && value != "SEQEND" && value != "ATTRIB" {
				parts = append(parts, "")
			}
			parts[len(parts)-1] += code + "\n" + value + "\n"
		}
	}
	rnd.Shuffle(len(parts), func(i, j int) { parts[i], parts[j] = parts[j], parts[i] })
	return before + strings.Join(parts, "") + after
}

// Every region of the corpora, written anew as loose lines in any order and
// direction, some cut in pieces and some drawn twice, is read as the same
// region.
func TestLooseLinesGiveTheSame(t *testing.T) {
	rnd := rand.New(rand.NewPCG(7, 8))
	for _, c := range readable(t) {
		want := drawing.Read(c.File, readFile(t, c.File), c.options(t))
		var pieces [][2]orb.Point
		for _, r := range want.Regions {
			for _, ring := range r.Rings() {
				for i, p := range ring {
					pieces = append(pieces, cutUp(rnd, p, ring[(i+1)%len(ring)])...)
				}
			}
		}
		rnd.Shuffle(len(pieces), func(i, j int) { pieces[i], pieces[j] = pieces[j], pieces[i] })
		var b strings.Builder
		for _, p := range pieces {
			fmt.Fprintf(&b, " 0 LINE 8 0 10 %.6f 20 %.6f 11 %.6f 21 %.6f", p[0][0], p[0][1], p[1][0], p[1][1])
		}
		got := drawing.Read("loose.dxf", dxfOf(inMM, "", "", b.String()), drawing.Options{})
		if len(got.Problems) > 0 {
			t.Errorf("%s: %s", c.File, told(got))
			continue
		}
		if math.Abs(got.AreaMM2-want.AreaMM2) > 1e-5*want.AreaMM2+0.01 || len(got.Regions) != len(want.Regions) {
			t.Errorf("%s: %d regions, area %.3f; was %d, %.3f", c.File, len(got.Regions), got.AreaMM2, len(want.Regions), want.AreaMM2)
		}
	}
}

// cutUp gives the piece from a to b either way, sometimes in two, sometimes
// twice.
func cutUp(rnd *rand.Rand, a, b orb.Point) [][2]orb.Point {
	if rnd.IntN(2) == 0 {
		a, b = b, a
	}
	switch rnd.IntN(5) {
	case 0:
		m := orb.Point{(a[0] + b[0]) / 2, (a[1] + b[1]) / 2}
		return [][2]orb.Point{{a, m}, {b, m}}
	case 1:
		return [][2]orb.Point{{a, b}, {b, a}}
	}
	return [][2]orb.Point{{a, b}}
}
