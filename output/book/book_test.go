package book

import (
	"bytes"
	"crypto/sha256"
	"encoding/base64"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"stripwright/laminate"
	"stripwright/output/internal/handmade"
)

var (
	scripts = regexp.MustCompile(`(?s)<script>(.*?)</script>`)
	styles  = regexp.MustCompile(`(?s)<style>(.*?)</style>`)
	outside = regexp.MustCompile(`(?i)https?:|//[a-z]|src=|@import|url\([^#]|<(img|iframe|link|object|embed|form)\b|\bon[a-z]+=|javascript:|\bstyle="`)
)

// The content policy names each style and script of the page by the hash of its
// bytes (Content Security Policy Level 3, hash-source), and nothing of the page
// asks for anything else.
func TestThePageAsksForNothing(t *testing.T) {
	for name, p := range plansHere() {
		data := written(t, p)
		page := readPage(t, data)
		policy := ""
		for _, m := range page.all("meta", "") {
			if m.attr["http-equiv"] == "Content-Security-Policy" {
				policy = m.attr["content"]
			}
		}
		if !strings.HasPrefix(policy, "default-src 'none'; ") || strings.Contains(policy, "unsafe") {
			t.Errorf("%s: the policy is %q", name, policy)
		}
		blocks := append(scripts.FindAllSubmatch(data, -1), styles.FindAllSubmatch(data, -1)...)
		if len(blocks) != 3 {
			t.Errorf("%s: %d styles and scripts, want 3", name, len(blocks))
		}
		for _, b := range blocks {
			sum := sha256.Sum256(b[1])
			if !strings.Contains(policy, "'sha256-"+base64.StdEncoding.EncodeToString(sum[:])+"'") {
				t.Errorf("%s: a style or script is not named in the policy", name)
			}
		}
		plain := notText.ReplaceAll(data, nil)
		for _, m := range outside.FindAll(plain, -1) {
			t.Errorf("%s: the page says %q", name, m)
		}
		for _, m := range styles.FindAllSubmatch(data, -1) {
			if found := regexp.MustCompile(`url\([^#]|@import|//`).Find(m[1]); found != nil {
				t.Errorf("%s: the style says %q", name, found)
			}
		}
	}
}

// Names of a job are words, whatever they look like.
func TestNamesAreNoMarkup(t *testing.T) {
	p := handmade.Inch()
	p.Part.Name = `</title></svg><script>alert(1)</script>` + "\x00\u202e"
	p.Fabrics[0].FaceIs = `"><img src=x onerror=alert(1)>`
	p.Rolls[0].Roll = "\x00roll\u202e"
	p.Notes = []laminate.Note{{Rule: "x", Where: "<b>", Text: "{{.SHA}}"}}
	data := written(t, p)
	for _, bad := range []string{"<script>alert", "<img", "<b>&'", "\u202e", "\x00"} {
		if bytes.Contains(data, []byte(bad)) {
			t.Errorf("the page holds %q", bad)
		}
	}
	text := readPage(t, data).text()
	for _, want := range []string{`=cmd|"x" <b>&'Ø ± ∠`, "<script>alert(1)</script>[U+0000][U+202E]", "{{.SHA}}"} {
		if !strings.Contains(text, want) {
			t.Errorf("the page does not say %q", want)
		}
	}
}

// Every way on the page leads somewhere, and no place has two.
func TestWaysLeadSomewhere(t *testing.T) {
	for name, p := range plansHere() {
		page := readPage(t, written(t, p))
		ids := map[string]int{}
		page.each(func(e *element) {
			if id := e.attr["id"]; id != "" {
				ids[id]++
			}
		})
		for id, n := range ids {
			if n > 1 {
				t.Errorf("%s: %d places are called %s", name, n, id)
			}
		}
		page.each(func(e *element) {
			if to, ok := strings.CutPrefix(e.attr["href"], "#"); ok && ids[to] != 1 {
				t.Errorf("%s: nothing is called %s", name, to)
			}
			for _, id := range strings.Fields(e.attr["aria-labelledby"]) {
				if ids[id] != 1 {
					t.Errorf("%s: no heading %s", name, id)
				}
			}
		})
	}
}

// A roll map is no lay-up map: it has neither the part's arrow nor its corners,
// and names each piece that is laid face down as such.
func TestRollPages(t *testing.T) {
	for name, p := range plansHere() {
		page := readPage(t, written(t, p))
		for i, r := range p.Rolls {
			section := page.id(t, "roll-"+strconv.Itoa(i+1))
			text := section.text()
			for _, never := range []string{"0°", "laying side", "datum", "Corner"} {
				if strings.Contains(text, never) {
					t.Errorf("%s: the roll's page says %q", name, never)
				}
			}
			for _, use := range section.all("use", "") {
				t.Errorf("%s: the roll's page draws %s", name, use.attr["href"])
			}
			for _, always := range []string{"Check the width before cutting", "FACE UP", "FREE END"} {
				if !strings.Contains(text, always) {
					t.Errorf("%s: the roll's page does not say %q", name, always)
				}
			}
			for _, piece := range r.Pieces {
				places := strings.Split(text, piece.ID)[1:]
				if len(places) == 0 {
					t.Errorf("%s: %s is not on its roll's page", name, piece.ID)
				}
				for _, words := range places {
					words = strings.TrimPrefix(words, " …")
					down := strings.HasPrefix(words, " lay FACE DOWN") || strings.HasPrefix(words, " FACE DOWN")
					if down != piece.Mirrored {
						t.Errorf("%s: %s: the roll's page says face down: %v", name, piece.ID, down)
					}
				}
			}
		}
	}
}

// Every strip's id stands on the map of its ply, and on that of no other.
func TestIDsOnTheMaps(t *testing.T) {
	for name, p := range plansHere() {
		page := readPage(t, written(t, p))
		for _, ply := range p.Plies {
			words := ""
			for _, svg := range page.id(t, "ply-"+strconv.Itoa(ply.Ply)).all("svg", "map") {
				words += " " + svg.text() + " "
			}
			for _, other := range p.Plies {
				for _, s := range other.Strips {
					if on := strings.Contains(words, " "+s.ID+" "); on != (other.Ply == ply.Ply) {
						t.Errorf("%s: %s on the map of ply %d: %v", name, s.ID, ply.Ply, on)
					}
				}
			}
		}
	}
}

// Every page of a plan at fault says so with the reason, and no page of a sound
// one does.
func TestStampedPages(t *testing.T) {
	for _, faulty := range []bool{false, true} {
		p := handmade.Hatch()
		if faulty {
			p = handmade.Faulty(p)
		}
		sections := readPage(t, written(t, p)).all("section", "page")
		if len(sections) < len(p.Plies)+8 {
			t.Fatalf("%d pages", len(sections))
		}
		for _, s := range sections {
			text := s.text()
			stamped := strings.Contains(text, "DO NOT CUT") && strings.Contains(text, "plies 4 and 6, joints 34 mm apart")
			if stamped != faulty {
				t.Errorf("page %s of a plan at fault %v is stamped %v", s.attr["id"], faulty, stamped)
			}
		}
	}
}

// The worst pair of the joints view is the least of the pairs listed, and is the
// pair worked out by hand: plies 2 and 7 of the hatch lid, 50 mm apart.
func TestWorstPair(t *testing.T) {
	page := readPage(t, written(t, handmade.Hatch()))
	if got := page.id(t, "worst").text(); got != "plies 2 and 7: 50 mm" {
		t.Errorf("the worst pair is %q", got)
	}
	rows := page.id(t, "pairs").rows()
	if len(rows) < 3 || rows[0][0].text() != "plies 2 and 7: 50 mm" {
		t.Errorf("the first of %d pairs is %q", len(rows), rows[0][0].text())
	}
}

func TestSameBytes(t *testing.T) {
	for name, p := range plansHere() {
		if !bytes.Equal(written(t, p), written(t, p)) {
			t.Errorf("%s: other bytes the second time", name)
		}
	}
}

// A deck of 12 m and 40 plies of more than 1,200 pieces stays below 5 MB.
func TestALongPartStaysSmall(t *testing.T) {
	p := handmade.Plate(40, 12000, 2600, 220)
	n := 0
	for _, ply := range p.Plies {
		n += len(ply.Strips)
	}
	data := written(t, p)
	if n < 1200 || len(data) > 5_000_000 {
		t.Errorf("%d pieces take %d bytes", n, len(data))
	}
}

func BenchmarkWriteHatch(b *testing.B) {
	p := handmade.Hatch()
	for b.Loop() {
		if _, err := Write(p, handmade.Hash); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkWriteLong(b *testing.B) {
	p := handmade.Plate(40, 12000, 2600, 220)
	for b.Loop() {
		data, err := Write(p, handmade.Hash)
		if err != nil {
			b.Fatal(err)
		}
		b.ReportMetric(float64(len(data))/1e6, "MB")
	}
}
