package book

import (
	"bytes"
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/paulmach/orb"

	"stripwright/laminate"
	"stripwright/output/internal/handmade"
)

// A stranger has the page alone. From the corners, the edges and the two
// distances of each joint he works out where the joint runs, and from the words
// of each ply and strip which side is up; both are held against the plan. The
// reading here shares no code with the writing: it knows only what the page says
// of itself.
//
// A distance is printed to 0.5 mm, a corner to 0.1 mm: a joint found again lies
// within 0.25 mm + 0.1 mm of the plan's.
const strangerMM = 0.36

var mmFigure = regexp.MustCompile(`(-?[0-9.]+) mm`)

// readMM takes the millimetres out of words, with or without inches before them.
func readMM(words string) (float64, error) {
	m := mmFigure.FindStringSubmatch(words)
	if m == nil {
		return 0, fmt.Errorf("no mm in %q", words)
	}
	return strconv.ParseFloat(m[1], 64)
}

// stranger is what somebody knows who has read the first page.
type stranger struct {
	corners map[string]orb.Point
	order   []string
	edges   map[string]float64
	curved  map[string]bool
	ring    orb.Ring // net edge as drawn, mm
	start   []float64
	long    float64
}

func newStranger(t *testing.T, page *element) *stranger {
	t.Helper()
	s := &stranger{corners: map[string]orb.Point{}, edges: map[string]float64{}, curved: map[string]bool{}}
	for _, row := range page.id(t, "corners").rows() {
		name, _, _ := strings.Cut(row[0].text(), " ")
		x, errX := readMM(row[1].text())
		y, errY := readMM(row[2].text())
		if errX != nil || errY != nil {
			t.Fatalf("corner %s: %v %v", name, errX, errY)
		}
		s.corners[name] = orb.Point{x, y}
		s.order = append(s.order, name)
	}
	for _, row := range page.id(t, "edges").rows() {
		mm, err := readMM(row[1].text())
		if err != nil {
			t.Fatal(err)
		}
		s.edges[row[0].text()] = mm
		s.curved[row[0].text()] = row[2].text() != "straight"
	}
	s.readRing(t, page.id(t, "net"))
	return s
}

// readRing reads the net edge off the drawing: its first ring, all in straight
// steps.
func (s *stranger) readRing(t *testing.T, net *element) {
	t.Helper()
	number := func(text string) float64 {
		v, err := strconv.ParseFloat(text, 64)
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
	unit, left, top := number(net.attr["data-unit-mm"]), number(net.attr["data-left-mm"]), number(net.attr["data-top-mm"])
	ring, _, _ := strings.Cut(net.attr["d"], "z")
	for _, pair := range strings.FieldsFunc(ring, func(r rune) bool { return r == 'M' || r == 'L' }) {
		x, y, _ := strings.Cut(pair, " ")
		s.ring = append(s.ring, orb.Point{left + unit*number(x), top - unit*number(y)})
	}
	for i, p := range s.ring {
		s.start = append(s.start, s.long)
		s.long += math.Hypot(s.next(i)[0]-p[0], s.next(i)[1]-p[1])
	}
}

func (s *stranger) next(i int) orb.Point { return s.ring[(i+1)%len(s.ring)] }

// along gives where along the drawn edge a corner lies.
func (s *stranger) along(p orb.Point) float64 {
	best, at := math.Inf(1), 0.0
	for i, a := range s.ring {
		b := s.next(i)
		dx, dy := b[0]-a[0], b[1]-a[1]
		l := math.Hypot(dx, dy)
		f := math.Max(0, math.Min(1, ((p[0]-a[0])*dx+(p[1]-a[1])*dy)/(l*l)))
		if d := math.Hypot(p[0]-a[0]-f*dx, p[1]-a[1]-f*dy); d < best {
			best, at = d, s.start[i]+f*l
		}
	}
	return at
}

// walk goes so far along the drawn edge from a corner: anticlockwise, or
// clockwise for a way below 0. The drawn ring may run either way.
func (s *stranger) walk(from orb.Point, way float64) orb.Point {
	if signed(s.ring) < 0 {
		way = -way
	}
	at := math.Mod(s.along(from)+way+2*s.long, s.long)
	for i, a := range s.ring {
		l := math.Hypot(s.next(i)[0]-a[0], s.next(i)[1]-a[1])
		if at <= s.start[i]+l+1e-9 {
			f := (at - s.start[i]) / l
			return orb.Point{a[0] + f*(s.next(i)[0]-a[0]), a[1] + f*(s.next(i)[1]-a[1])}
		}
	}
	return s.ring[0]
}

func signed(ring orb.Ring) float64 {
	sum := 0.0
	for i, p := range ring {
		q := ring[(i+1)%len(ring)]
		sum += p[0]*q[1] - q[0]*p[1]
	}
	return sum
}

var (
	byEdge = regexp.MustCompile(`^(.*) from ([A-Z]), edge ([A-Z])\x{2011}([A-Z])$`)
	byWay  = regexp.MustCompile(`^(.*) from ([A-Z]) (anticlockwise|clockwise)$`)
)

// mark works out where a distance ends: on a straight edge from its corners
// alone, on a curved one along the drawn edge.
func (s *stranger) mark(words string) (orb.Point, error) {
	if m := byWay.FindStringSubmatch(words); m != nil {
		mm, err := readMM(m[1])
		if m[3] == "clockwise" {
			mm = -mm
		}
		return s.walk(s.corners[m[2]], mm), err
	}
	m := byEdge.FindStringSubmatch(words)
	if m == nil {
		return orb.Point{}, fmt.Errorf("%q is no distance from a corner", words)
	}
	mm, err := readMM(m[1])
	if err != nil {
		return orb.Point{}, err
	}
	edge := m[3] + "-" + m[4]
	long, ok := s.edges[edge]
	if !ok || m[2] != m[3] && m[2] != m[4] || mm > long+0.3 {
		return orb.Point{}, fmt.Errorf("%q: no such edge, corner or length", words)
	}
	to, way := m[4], mm
	if m[2] == m[4] {
		to, way = m[3], -mm
	}
	if s.curved[edge] {
		return s.walk(s.corners[m[2]], way), nil
	}
	a, b := s.corners[m[2]], s.corners[to]
	f := mm / math.Hypot(b[0]-a[0], b[1]-a[1])
	return orb.Point{a[0] + f*(b[0]-a[0]), a[1] + f*(b[1]-a[1])}, nil
}

// differences rebuilds every ply of a page and says where it differs from the
// plan.
func differences(t *testing.T, data []byte, p laminate.Plan) []string {
	t.Helper()
	page := readPage(t, data)
	s := newStranger(t, page)
	var out []string
	for i, ply := range p.Plies {
		section := page.id(t, "ply-"+strconv.Itoa(ply.Ply))
		for _, d := range append(s.joints(section, p, ply), sides(section, page, ply)...) {
			out = append(out, fmt.Sprintf("ply %d: %s", i+1, d))
		}
	}
	return out
}

func (s *stranger) joints(section *element, p laminate.Plan, ply laminate.PlanPly) []string {
	var rows [][]*element
	for _, table := range section.all("table", "joints") {
		rows = table.rows()
	}
	if len(rows) != len(ply.Joints) {
		return []string{fmt.Sprintf("%d joints on the page, %d in the plan", len(rows), len(ply.Joints))}
	}
	var out []string
	for i, j := range ply.Joints {
		if d := s.joint(rows[i], j, p); d != "" {
			out = append(out, rows[i][0].text()+": "+d)
		}
	}
	return out
}

func (s *stranger) joint(row []*element, j laminate.Joint, p laminate.Plan) string {
	a, b := orb.Point(j.From), orb.Point(j.To)
	dx, dy := b[0]-a[0], b[1]-a[1]
	l := math.Hypot(dx, dy)
	if strings.Contains(row[1].text(), "in the trim") {
		for f := 0.005; f < 1; f += 0.01 {
			if q := (orb.Point{a[0] + f*dx, a[1] + f*dy}); p.Part.Net.Contains(q) {
				return fmt.Sprintf("said to lie in the trim, yet %v is in the finished part", q)
			}
		}
		return ""
	}
	var t [2]float64
	for k := range 2 {
		at, err := s.mark(row[1+k].text())
		if err != nil {
			return err.Error()
		}
		if off := math.Abs(dx*(at[1]-a[1])-dy*(at[0]-a[0])) / l; off > strangerMM {
			return fmt.Sprintf("%q lies %.2f mm off the joint", row[1+k].text(), off)
		}
		t[k] = (dx*(at[0]-a[0]) + dy*(at[1]-a[1])) / l
	}
	if t[0] >= t[1] {
		return "both ends are on the same side, or crossed"
	}
	return ""
}

var stripWords = regexp.MustCompile(`^(\S+) lay (face up|FACE DOWN), (.*) wide, roll `)

// sides holds the side of the ply and of each of its strips, on its page and in
// the cut list, and their widths.
func sides(section, page *element, ply laminate.PlanPly) []string {
	want, word := "FACE UP", "face up"
	if ply.Face == laminate.FaceDown {
		want, word = "FACE DOWN", "FACE DOWN"
	}
	var out []string
	for _, dd := range section.all("dd", "side") {
		if !strings.HasPrefix(dd.text(), want+" ") {
			out = append(out, "the page says "+dd.text())
		}
	}
	strips := section.all("fieldset", "strips")[0].all("label", "")
	if len(strips) != len(ply.Strips) {
		return append(out, "strips are missing")
	}
	for i, label := range strips {
		m := stripWords.FindStringSubmatch(label.text())
		if m == nil || m[1] != ply.Strips[i].ID || m[2] != word {
			out = append(out, fmt.Sprintf("strip %s: %q", ply.Strips[i].ID, label.text()))
			continue
		}
		if mm, err := readMM(m[3]); err != nil || math.Abs(mm-ply.Strips[i].WidthMM) > 0.2501 {
			out = append(out, fmt.Sprintf("%s is said to be %v mm wide", m[1], mm))
		}
		out = append(out, cutSide(page, m[1], word)...)
	}
	return out
}

// cutSide holds what the cut list says of a piece.
func cutSide(page *element, id, word string) []string {
	for _, section := range page.all("section", "") {
		if section.attr["id"] != "cut-list" {
			continue
		}
		for _, table := range section.all("table", "") {
			for _, row := range table.rows() {
				if row[1].text() == id && row[2].text() == word {
					return nil
				}
			}
		}
	}
	return []string{id + ": the cut list has it not, or on another side"}
}

func plansHere() map[string]laminate.Plan {
	clear := handmade.Hatch()
	clear.Rules.KeepClear = []laminate.PlanKeepClear{{Region: handmade.Disc().Part.Net}}
	return map[string]laminate.Plan{
		"hatch": handmade.Hatch(), "disc": handmade.Disc(), "batten": handmade.Batten(), "inch": handmade.Inch(),
		"small": handmade.Small(), "clear": clear, "long": handmade.Plate(4, 12000, 2600, 600), "tall": handmade.Plate(4, 500, 4000, 300),
	}
}

func written(t *testing.T, p laminate.Plan) []byte {
	t.Helper()
	data, err := Write(p, handmade.Hash)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

func TestAStrangerFindsEveryJointAndSide(t *testing.T) {
	for name, p := range plansHere() {
		for _, d := range differences(t, written(t, p), p) {
			t.Errorf("%s: %s", name, d)
		}
	}
}

// Each way in which a page could mislead is found.
func TestAStrangerIsNotMisled(t *testing.T) {
	p := handmade.Hatch()
	data := string(written(t, p))
	for _, c := range []struct{ old, with string }{
		{"<b>175 mm</b> from A", "<b>176 mm</b> from A"},
		{"<b>1050 mm</b> from A, edge A\u2011B", "<b>1050 mm</b> from B, edge A\u2011B"},
		{"FACE DOWN <small>", "FACE UP <small>"},
		{"<b>P04-S02</b> lay FACE DOWN", "<b>P04-S02</b> lay face up"},
		{`<td data-of="Lay">FACE DOWN</td>`, `<td data-of="Lay">face up</td>`},
		{"<td>1370 mm</td><td>400 mm</td>", "<td>1370 mm</td><td>420 mm</td>"},
		{"<td>270 mm</td><td>straight</td>", "<td>170 mm</td><td>straight</td>"},
	} {
		spoiled := strings.Replace(data, c.old, c.with, 1)
		if spoiled == data {
			t.Fatalf("%q is not on the page", c.old)
		}
		if len(differences(t, []byte(spoiled), p)) == 0 {
			t.Errorf("%q for %q is not found", c.with, c.old)
		}
	}
	if bytes.Contains([]byte(data), []byte("\u2011")) == false {
		t.Error("edges are not named in one line")
	}
}
