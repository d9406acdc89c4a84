package pdf

import (
	"bytes"
	"encoding/binary"
	"errors"
	"math"
	"regexp"
	"strings"
	"testing"

	"github.com/paulmach/orb"
	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"stripwright/output/internal/readback"
	"stripwright/output/sheet"
)

func sheetOf(wide, high float64) sheet.Scene {
	return sheet.Scene{Title: "page", Box: orb.Bound{Max: orb.Point{wide, high}}}
}

func written(t *testing.T, pages ...sheet.Scene) []byte {
	t.Helper()
	b, err := Write("trial", pages)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// All letters of a job come back as they were, those that the face lacks by what
// Unicode calls them.
func TestWordsComeBack(t *testing.T) {
	s := sheetOf(210, 297)
	words := []string{"P03-S02", "±45° × 3 µm ≤ Ø", "Größe, Łódź, é", "漢"}
	for i, w := range words {
		s.Layer("A").Write(sheet.Text{At: orb.Point{10, 20 * float64(i+1)}, Height: 3, Bold: i%2 == 0, Turn: float64(30 * i), Words: w})
	}
	got := readback.Words(t, written(t, s))
	want := "P03-S02|±45° × 3 µm ≤ Ø|Größe, Łódź, é|[U+6F22]"
	if len(got) != 1 || strings.Join(got[0], "|") != want {
		t.Errorf("words %q, want %q", got, want)
	}
}

// ISO 32000-1, 7.7.3.3 and 8.3.2: MediaBox in points of 1/72 in, so that an A4
// page (ISO 216) is 595.2756 by 841.8898; the reader is asked not to scale.
func TestPageIsTrueToSize(t *testing.T) {
	plain := string(readback.Plain(t, written(t, sheetOf(210, 297))))
	for _, want := range []string{"/MediaBox[0 0 595.2756 841.8898]", "/PrintScaling/None", "2.8346456693 0 0 2.8346456693 0 0 cm"} {
		if !strings.Contains(plain, want) {
			t.Errorf("%s is missing", want)
		}
	}
	if strings.Contains(plain, "/CreationDate") || strings.Contains(plain, "/ModDate") {
		t.Error("a date is written")
	}
}

func TestSameBytesTwice(t *testing.T) {
	s := sheetOf(210, 297)
	s.Layer("A").Write(sheet.Text{At: orb.Point{10, 10}, Height: 3, Words: "the same"})
	if !bytes.Equal(written(t, s, s), written(t, s, s)) {
		t.Error("the same pages give other bytes")
	}
}

func TestRefusesWhatCannotBeDrawn(t *testing.T) {
	far := sheetOf(210, 297)
	far.Layer("A").Stroke(sheet.Solid(sheet.Black, 1), orb.Point{0, 0}, orb.Point{math.NaN(), 1})
	for name, c := range map[string]struct {
		s    sheet.Scene
		want error
	}{
		"no number": {far, sheet.ErrNumber}, "too long": {sheetOf(5081, 10), ErrSize}, "no size": {sheetOf(0, 10), ErrSize}, "size no number": {sheetOf(math.NaN(), 10), ErrSize},
	} {
		if _, err := Write("trial", []sheet.Scene{c.s}); !errors.Is(err, c.want) {
			t.Errorf("%s: %v, want %v", name, err, c.want)
		}
	}
	if _, err := Write("trial", []sheet.Scene{sheetOf(LongestMM, 10)}); err != nil {
		t.Errorf("the longest page that the format knows: %v", err)
	}
}

// The table of objects at the end points at each of them (ISO 32000-1, 7.5.4).
func TestTableOfObjects(t *testing.T) {
	data := written(t, sheetOf(100, 100), sheetOf(50, 50))
	entries := regexp.MustCompile(`(?m)^(\d{10}) 00000 n $`).FindAllSubmatch(data, -1)
	if len(entries) < 6 {
		t.Fatalf("%d objects", len(entries))
	}
	for i, e := range entries {
		at := 0
		for _, c := range e[1] {
			at = 10*at + int(c-'0')
		}
		if want := []byte("\n" + itoa(i+1) + " 0 obj\n"); at == 0 || !bytes.HasPrefix(data[at-1:], want) {
			t.Errorf("object %d is not at %d", i+1, at)
		}
	}
}

func itoa(n int) string {
	if n < 10 {
		return string(rune('0' + n))
	}
	return itoa(n/10) + string(rune('0'+n%10))
}

// The embedded subset read by another program (x/image's sfnt): its glyphs are
// those of the whole face, with their widths.
func TestSubsetIsAFont(t *testing.T) {
	whole, err := sfnt.Parse(goregular.TTF)
	if err != nil {
		t.Fatal(err)
	}
	var b sfnt.Buffer
	glyphs := []int{0}
	letters := []rune("Aé°ßŁ±3Ø")
	for _, r := range letters {
		i, _ := whole.GlyphIndex(&b, r)
		glyphs = append(glyphs, int(i))
	}
	data := subset(goregular.TTF, glyphs)
	if sum(data) != 0xB1B0AFBA {
		t.Errorf("checksum %08X", sum(data))
	}
	// sfnt asks for tables that a PDF does without.
	full := tables(goregular.TTF)
	parts := tables(data)
	for _, name := range []string{"cmap", "name", "post", "OS/2"} {
		parts[name] = full[name]
	}
	post := append([]byte{}, full["post"][:32]...)
	binary.BigEndian.PutUint32(post, 0x00030000) // no names of glyphs
	parts["post"] = post
	part, err := sfnt.Parse(assembled(parts))
	if err != nil {
		t.Fatal(err)
	}
	for k, r := range letters {
		want, err := whole.LoadGlyph(&b, sfnt.GlyphIndex(glyphs[k+1]), fixed.I(2048), nil)
		if err != nil {
			t.Fatal(err)
		}
		want = append(sfnt.Segments{}, want...)
		got, err := part.LoadGlyph(&b, sfnt.GlyphIndex(k+1), fixed.I(2048), nil)
		if err != nil {
			t.Fatalf("%c: %v", r, err)
		}
		if len(got) != len(want) || len(got) == 0 || got[len(got)-1] != want[len(want)-1] {
			t.Errorf("%c: %d segments, want %d", r, len(got), len(want))
		}
		a, _ := whole.GlyphAdvance(&b, sfnt.GlyphIndex(glyphs[k+1]), fixed.I(2048), font.HintingNone)
		c, _ := part.GlyphAdvance(&b, sfnt.GlyphIndex(k+1), fixed.I(2048), font.HintingNone)
		if a != c {
			t.Errorf("%c: %v wide, want %v", r, c, a)
		}
	}
}

// No outline of a face is composed of others: such ones begin with a count of
// contours below zero, and a subset would have to renumber their parts.
func TestNoComposedOutlines(t *testing.T) {
	for _, data := range [][]byte{goregular.TTF, gobold.TTF} {
		full := tables(data)
		o := outlines{full["glyf"], full["loca"], binary.BigEndian.Uint16(full["head"][50:]) != 0}
		for g := range int(binary.BigEndian.Uint16(full["maxp"][4:])) {
			if outline := o.of(g); len(outline) > 1 && int16(binary.BigEndian.Uint16(outline)) < 0 {
				t.Errorf("glyph %d is composed", g)
			}
		}
	}
}

// A layer with a clip is drawn through it, others are not, and inks set inside
// do not reach beyond it.
func TestClip(t *testing.T) {
	s := sheetOf(100, 100)
	in := s.Layer("IN")
	in.Clip = orb.Bound{Min: orb.Point{10, 20}, Max: orb.Point{40, 60}}
	in.Stroke(sheet.Solid(sheet.Fault, 1), orb.Point{0, 0}, orb.Point{50, 50})
	s.Layer("OUT").Stroke(sheet.Solid(sheet.Black, 1), orb.Point{0, 0}, orb.Point{50, 50})
	plain := string(readback.Plain(t, written(t, s)))
	want := "q 10 20 30 40 re W n\n0.69 0 0.125 RG 1 w [] 0 d 0 0 m 50 50 l S\nQ\n1 w [] 0 d 0 0 m 50 50 l S\n"
	if !strings.Contains(plain, want) {
		t.Errorf("no clip as wanted in\n%s", plain)
	}
}
