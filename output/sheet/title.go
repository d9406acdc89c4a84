package sheet

import (
	"math"
	"strconv"
	"strings"

	"github.com/paulmach/orb"

	"stripwright/laminate"
)

// Entry is one cell of the title block: a small caption over big words. Share
// is its width beside the others of its row.
type Entry struct {
	Caption string
	Words   string
	Share   float64
}

// HashShown is how much of the plan's SHA-256 stands on a sheet.
const HashShown = 12

// Block draws the title block into a box: rows of cells, and under them the
// caution. k is the height of the captions in mm.
func Block(l *Layer, b orb.Bound, k float64, rows [][]Entry) {
	foot := float64(2.2 * k)
	step := (b.Max[1] - b.Min[1] - foot) / float64(len(rows))
	for i, row := range rows {
		top := b.Max[1] - float64(float64(i)*step)
		total := 0.0
		for _, e := range row {
			total += e.Share
		}
		x := b.Min[0]
		for _, e := range row {
			w := (b.Max[0] - b.Min[0]) * e.Share / total
			cell(l, orb.Bound{Min: orb.Point{x, top - step}, Max: orb.Point{x + w, top}}, k, e)
			x += w
		}
	}
	caution := Text{At: orb.Point{b.Min[0] + k, b.Min[1] + float64(0.6*k)}, Height: k, Words: Caution}
	l.Write(caution.Fitted(b.Max[0] - b.Min[0] - 2*k))
	l.Box(Solid(Black, 0.3*k), Fill{}, b)
}

func cell(l *Layer, b orb.Bound, k float64, e Entry) {
	l.Box(Solid(Black, 0.15*k), Fill{}, b)
	room := b.Max[0] - b.Min[0] - 2*k
	l.Write(Text{At: orb.Point{b.Min[0] + k, b.Max[1] - float64(1.6*k)}, Height: k, Ink: Grey, Words: e.Caption}.Fitted(room))
	t := Text{Height: 1.9 * k, Bold: true, Words: e.Words}
	if strings.HasPrefix(e.Words, DoNotCut) {
		t.Ink = Fault
	}
	high := b.Max[1] - b.Min[1]
	most := int(math.Max(1, (high-float64(2.2*k))/(2.9*k)))
	lines := Wrapped(t, room, most)
	for i, line := range lines {
		line.At = orb.Point{b.Min[0] + k, b.Max[1] - float64(4.6*k) - float64(float64(i)*2.8*k)}
		l.Write(line)
	}
}

// Rows gives the cells that every sheet carries: job, part, verdict, unit,
// stagger and plies between in force for the fabrics named, trim, tolerance,
// gap, load and the plan's mark.
func Rows(p laminate.Plan, sha string, fabrics ...string) [][]Entry {
	w, h := p.Part.Net.Size()
	part := Size(w, h)
	if p.Part.Name != p.Title {
		part = p.Part.Name + "  " + part
	}
	first := []Entry{
		{"JOB", p.Title, 3},
		{"PART (finished size)", part, 4},
		{"VERDICT OF THE CHECK", Verdict(p), 3},
	}
	second := []Entry{
		{"UNIT", unitWords(p.Units), 2},
		{"STAGGER, PLIES BETWEEN", staggerWords(p, fabrics), 4},
		{"TRIM", Tape(p.Part.TrimMM, p.Units), 1.2},
		{"LAYING TOLERANCE", Tape(p.Rules.LayingToleranceMM, p.Units), 1.4},
	}
	if p.Rules.MaxGapMM != nil {
		second = append(second, Entry{"WIDEST GAP", Tape(*p.Rules.MaxGapMM, p.Units), 1.1})
	}
	if p.Part.LoadDeg != nil {
		second = append(second, Entry{"MAIN LOAD", Degrees(*p.Part.LoadDeg), 0.9})
	}
	if len(sha) > HashShown {
		sha = sha[:HashShown]
	}
	second = append(second, Entry{"PLAN (SHA-256)", sha, 1.9}, Entry{"MADE BY", p.Program, 1.7})
	return [][]Entry{first, second}
}

// OfRoll gives a plan for a sheet of a roll, on which no direction of the part
// stands: the main load would be taken for one of the roll.
func OfRoll(p laminate.Plan) laminate.Plan {
	p.Part.LoadDeg = nil
	return p
}

func unitWords(units string) string {
	if inches(units) {
		return "in, and mm"
	}
	return "mm"
}

// staggerWords names the joint rule in force: once where all fabrics share it.
func staggerWords(p laminate.Plan, fabrics []string) string {
	var texts []string
	same := true
	for _, f := range p.Fabrics {
		if len(fabrics) > 0 && !contains(fabrics, f.Name) {
			continue
		}
		text := Tape(f.StaggerMM, p.Units) + ", " + strconv.Itoa(f.PliesBetween) + " plies between"
		same = same && (len(texts) == 0 || strings.HasSuffix(texts[0], text))
		texts = append(texts, f.Name+": "+text)
	}
	if len(texts) > 0 && same {
		return strings.TrimPrefix(texts[0], firstNamed(p, fabrics)+": ")
	}
	return strings.Join(texts, "; ")
}

func firstNamed(p laminate.Plan, fabrics []string) string {
	for _, f := range p.Fabrics {
		if len(fabrics) == 0 || contains(fabrics, f.Name) {
			return f.Name
		}
	}
	return ""
}

func contains(names []string, name string) bool {
	for _, n := range names {
		if n == name {
			return true
		}
	}
	return false
}
