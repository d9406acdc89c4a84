package output

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"math"
	"regexp"
	"runtime"
	"sort"
	"strings"
	"testing"

	"stripwright/laminate"
	"stripwright/output/internal/handmade"
	"stripwright/output/internal/readback"
	"stripwright/output/sheet"
)

var plans = map[string]func() laminate.Plan{
	"hatch": handmade.Hatch, "disc": handmade.Disc, "batten": handmade.Batten, "inch": handmade.Inch, "small": handmade.Small,
	"tape": func() laminate.Plan { return handmade.Plate(4, 3000, 2000, 100) },
}

func filesOf(t *testing.T, p laminate.Plan) []File {
	t.Helper()
	files, err := Files(p, handmade.Hash)
	if err != nil {
		t.Fatal(err)
	}
	return files
}

// words reads every label out of an SVG with a reader of its own.
func words(t *testing.T, f File) []string {
	t.Helper()
	var out []string
	d := xml.NewDecoder(bytes.NewReader(f.Data))
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return out
		}
		if err != nil {
			t.Fatalf("%s: %v", f.Name, err)
		}
		if e, ok := token.(xml.StartElement); ok {
			for _, a := range e.Attr {
				if a.Name.Local == "aria-label" {
					out = append(out, a.Value)
				}
			}
		}
	}
}

func count(words []string, word string) int {
	n := 0
	for _, w := range words {
		if w == word {
			n++
		}
	}
	return n
}

func TestFilesAreSafeUniqueAndInOrder(t *testing.T) {
	safe := regexp.MustCompile(`^[A-Za-z0-9_][A-Za-z0-9._-]*\.(svg|dxf|csv|pdf|txt|json|html)$`)
	p := handmade.Named("007", "../x", "..:x", "a/b", "a:b", "A_B", "Köper", "KÖPER", ".", "", "con", "x\x00y", "漢字", "漢口",
		strings.Repeat("long", 60), strings.Repeat("long", 61), "roll-cut", `c:\d`, "300-01", "a\nb")
	seen := map[string]bool{}
	for _, f := range filesOf(t, p) {
		if !safe.MatchString(f.Name) || strings.Contains(f.Name, "..") || len(f.Name) > 100 {
			t.Errorf("%q is no safe file name", f.Name)
		}
		if key := strings.ToLower(f.Name); seen[key] {
			t.Errorf("%q comes twice", f.Name)
		} else {
			seen[key] = true
		}
		if len(f.Data) == 0 {
			t.Errorf("%s is empty", f.Name)
		}
	}
	var names []string
	for _, f := range filesOf(t, handmade.Small()) {
		names = append(names, f.Name)
	}
	want := "roll-biax450-300-01.svg roll-biax450-300-01-cut.svg roll-biax450-300-01-mm.dxf pieces-mm.dxf ply-01.svg labels-a4.pdf rim-strips-a4.pdf layup-sheets-a4.pdf " +
		"rim-strips-letter.pdf layup-sheets-letter.pdf joints.svg cut-list.csv order.csv order.txt order.json left-over.csv stack-report.txt layup-book.html"
	if got := strings.Join(names, " "); got != want {
		t.Errorf("files %s\nwant  %s", got, want)
	}
}

func TestSameBytesOnAnyNumberOfCores(t *testing.T) {
	p := handmade.Hatch()
	first := filesOf(t, p)
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1))
	for i, f := range filesOf(t, p) {
		if f.Name != first[i].Name || !bytes.Equal(f.Data, first[i].Data) {
			t.Errorf("%s differs on one core", f.Name)
		}
	}
}

// Each id stands once on the map of its roll, for people and for the cutter,
// and the words of a lay-up sheet never stand there.
func TestRollMapsCarryEveryIDOnce(t *testing.T) {
	for name, plan := range plans {
		p := plan()
		files := filesOf(t, p)
		for i, roll := range p.Rolls {
			for _, f := range files[3*i : 3*i+2] {
				labels := words(t, f)
				for _, piece := range roll.Pieces {
					if n := count(labels, piece.ID); n != 1 {
						t.Errorf("%s, %s: %s stands %d times", name, f.Name, piece.ID, n)
					}
				}
				text := strings.Join(labels, "\n")
				for _, never := range []string{"LAYING SIDE", "laying side", "0°", "seen from"} {
					if strings.Contains(text, never) && !strings.Contains(text, "LOAD") {
						t.Errorf("%s, %s says %q", name, f.Name, never)
					}
				}
				for _, always := range []string{"LAY THE ROLL FACE UP", "WIDTH", sheet.Tape(roll.WidthMM, p.Units)} {
					if !strings.Contains(text, always) {
						t.Errorf("%s, %s does not say %q", name, f.Name, always)
					}
				}
			}
		}
	}
}

func TestPlySheetsSayWhatIsLaid(t *testing.T) {
	for name, plan := range plans {
		p := plan()
		for _, f := range filesOf(t, p) {
			if !strings.HasPrefix(f.Name, "ply-") {
				continue
			}
			labels := words(t, f)
			ply := p.Plies[number(f.Name)-1]
			want := []string{
				"PLY " + itoa(ply.Ply) + " OF " + itoa(len(p.Plies)) + " FROM THE TOOL", sheet.Degrees(ply.AngleDeg),
				"SEEN FROM THE LAYING SIDE, looking down on the tool", "0°", handmade.Hash[:12], sheet.Spelt(p.Title),
				"FACE " + strings.ToUpper(ply.Face), sheet.Spelt(ply.Fabric), "net edge", "initials",
			}
			for _, s := range ply.Strips {
				want = append(want, s.ID)
			}
			for _, c := range p.Part.Corners {
				want = append(want, c.Name)
			}
			for _, w := range want {
				if count(labels, w) == 0 {
					t.Errorf("%s, %s does not say %q", name, f.Name, w)
				}
			}
			for _, s := range ply.Strips {
				if n := count(labels, s.ID); n != 1 {
					t.Errorf("%s, %s: %s stands %d times", name, f.Name, s.ID, n)
				}
			}
		}
	}
}

func number(name string) int {
	n := 0
	for _, r := range name {
		if r >= '0' && r <= '9' {
			n = 10*n + int(r-'0')
		}
	}
	return n
}

func itoa(n int) string { return padded(n, 1) }

// Every sheet of a plan that failed, or was never checked, says so, with the
// sentence of the check; a sound one never does.
func TestStamps(t *testing.T) {
	unchecked := handmade.Hatch()
	unchecked.Checks = nil
	for name, c := range map[string]struct {
		plan     laminate.Plan
		sentence string
	}{
		"faulty":    {handmade.Faulty(handmade.Hatch()), "plies 4 and 6, joints 34 mm apart, 50 mm needed"},
		"unchecked": {unchecked, "this plan has not been checked"},
		"sound":     {handmade.Hatch(), ""},
	} {
		for _, f := range filesOf(t, c.plan) {
			if strings.HasSuffix(f.Name, ".csv") {
				continue
			}
			if strings.HasSuffix(f.Name, ".pdf") {
				stampedPages(t, name, f, c.sentence)
				continue
			}
			stamped := bytes.Contains(f.Data, []byte("DO NOT CUT"))
			if stamped != (c.sentence != "") {
				t.Errorf("%s: %s stamped: %v", name, f.Name, stamped)
			}
			if c.sentence == "" {
				continue
			}
			if people := strings.HasSuffix(f.Name, ".svg") && !strings.HasSuffix(f.Name, "-cut.svg"); people {
				text := strings.Join(words(t, f), " ")
				if !strings.Contains(text, c.sentence) || !bytes.Contains(f.Data, []byte(`url(#hatch`)) {
					t.Errorf("%s: %s lacks the sentence or the hatching", name, f.Name)
				}
			} else if bytes.Contains(f.Data, []byte("\nCUT\n")) || bytes.Contains(f.Data, []byte(`id="CUT"`)) {
				t.Errorf("%s: %s has cuts on layer CUT", name, f.Name)
			}
		}
	}
}

// stampedPages holds the same of every page of a PDF.
func stampedPages(t *testing.T, name string, f File, sentence string) {
	t.Helper()
	for i, page := range readback.Words(t, f.Data) {
		text := strings.Join(page, " ")
		if stamped := strings.Contains(text, "DO NOT CUT"); stamped != (sentence != "") {
			t.Errorf("%s: %s page %d stamped: %v", name, f.Name, i+1, stamped)
		}
		if !strings.Contains(text, sentence) && f.Name != "labels-a4.pdf" { // no room on a label
			t.Errorf("%s: %s page %d lacks the sentence", name, f.Name, i+1)
		}
	}
}

// plain gives a file as it is, a PDF with its streams unpacked.
func plain(t *testing.T, f File) []byte {
	if strings.HasSuffix(f.Name, ".pdf") {
		return readback.Plain(t, f.Data)
	}
	return f.Data
}

func TestNothingIsWrittenThatIsNoNumber(t *testing.T) {
	for name, plan := range plans {
		for _, f := range filesOf(t, plan()) {
			if regexp.MustCompile(`NaN|[^A-Za-z]Inf\b`).Match(plain(t, f)) {
				t.Errorf("%s: %s holds NaN or Inf", name, f.Name)
			}
		}
	}
	for _, v := range []float64{math.NaN(), math.Inf(1), 1e300} {
		p := handmade.Hatch()
		p.Plies[0].Joints[0].From[0] = v
		if _, err := Files(p, handmade.Hash); !errors.Is(err, sheet.ErrNumber) {
			t.Errorf("joint at %v: error %v, want ErrNumber", v, err)
		}
		p = handmade.Hatch()
		p.Rolls[0].Pieces[0].Shape.Outer[0][1] = v
		if _, err := Files(p, handmade.Hash); !errors.Is(err, sheet.ErrNumber) {
			t.Errorf("piece at %v: error %v, want ErrNumber", v, err)
		}
	}
}

// A table length is a map of its own, measured from its own free end; every
// piece lies on one of them.
func TestTableLengths(t *testing.T) {
	p := handmade.Plate(2, 1000, 600, 300)
	var starts []float64
	for _, piece := range p.Rolls[0].Pieces {
		starts = append(starts, piece.Shape.Bounds().Min[0])
	}
	sort.Float64s(starts)
	p.Rolls[0].CrossCuts = []float64{starts[len(starts)-1]}
	files := filesOf(t, p)
	ids := map[string]int{}
	for _, f := range files {
		if !strings.HasPrefix(f.Name, "roll-") || !strings.HasSuffix(f.Name, "01.svg") && !strings.HasSuffix(f.Name, "02.svg") {
			continue
		}
		labels := words(t, f)
		if !strings.Contains(strings.Join(labels, "\n"), "TABLE LENGTH "+itoa(number(f.Name[len(f.Name)-6:]))+" OF 2") {
			t.Errorf("%s does not say which table length it is", f.Name)
		}
		for _, l := range labels {
			ids[l]++
		}
	}
	for _, piece := range p.Rolls[0].Pieces {
		if ids[piece.ID] != 1 {
			t.Errorf("%s stands on %d table lengths", piece.ID, ids[piece.ID])
		}
	}
}
