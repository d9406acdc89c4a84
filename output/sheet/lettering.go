package sheet

import (
	"fmt"
	"strings"
	"sync"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// Glyph is the outline of one letter in units of the face: x right, y up.
type Glyph struct {
	Segments []Segment
	Advance  int // to the next letter
}

// Segment is a part of an outline: Op 'M' moves to the first point, 'L' draws a
// line to it, 'Q' a quadratic curve by the first to the second.
type Segment struct {
	Op   byte
	Args [2][2]int
}

// face holds one weight of the lettering; ready-made for the letters that are
// used most, so that sheets share their outlines.
type face struct {
	font  *sfnt.Font
	units int
	cap   float64 // height of capitals in units
	ready [0x180]*Glyph
}

var (
	regular = sync.OnceValue(func() *face { return readFace(goregular.TTF) })
	bold    = sync.OnceValue(func() *face { return readFace(gobold.TTF) })
)

func faceOf(heavy bool) *face {
	if heavy {
		return bold()
	}
	return regular()
}

// readFace reads a face that is linked into the program: it cannot fail but by
// a fault of the build.
func readFace(data []byte) *face {
	f, err := sfnt.Parse(data)
	if err != nil {
		panic("lettering is damaged: " + err.Error())
	}
	out := &face{font: f, units: int(f.UnitsPerEm())}
	for r := rune(' '); r < rune(len(out.ready)); r++ {
		out.ready[r] = out.load(r)
	}
	for _, s := range out.ready['H'].Segments {
		for _, p := range s.Args {
			out.cap = max(out.cap, float64(p[1]))
		}
	}
	return out
}

// load reads one outline; nil for a letter that the face does not have.
func (f *face) load(r rune) *Glyph {
	var b sfnt.Buffer
	index, err := f.font.GlyphIndex(&b, r)
	if err != nil || index == 0 {
		return nil
	}
	ppem := fixed.I(f.units)
	advance, err := f.font.GlyphAdvance(&b, index, ppem, font.HintingNone)
	if err != nil {
		return nil
	}
	segments, err := f.font.LoadGlyph(&b, index, ppem, nil)
	if err != nil {
		return nil
	}
	g := &Glyph{Advance: advance.Round()}
	for _, s := range segments {
		g.Segments = append(g.Segments, segment(s))
	}
	return g
}

func segment(s sfnt.Segment) Segment {
	out := Segment{Op: 'M'}
	switch s.Op {
	case sfnt.SegmentOpLineTo:
		out.Op = 'L'
	case sfnt.SegmentOpQuadTo:
		out.Op = 'Q'
	}
	for i := range out.Args {
		out.Args[i] = [2]int{s.Args[i].X.Round(), -s.Args[i].Y.Round()}
	}
	return out
}

func (f *face) glyph(r rune) *Glyph {
	if r >= 0 && int(r) < len(f.ready) {
		return f.ready[r]
	}
	return f.load(r)
}

// LetterGlyph gives the outline of a letter, nil for one that the face lacks.
func LetterGlyph(r rune, heavy bool) *Glyph { return faceOf(heavy).glyph(r) }

// LetterScale gives the factor from units of the face to mm for capitals of the
// given height.
func LetterScale(height float64, heavy bool) float64 { return height / faceOf(heavy).cap }

// Advance gives the length of words that are Spelt already, in units of the
// face.
func Advance(words string, heavy bool) int {
	f, sum := faceOf(heavy), 0
	for _, r := range words {
		if g := f.glyph(r); g != nil {
			sum += g.Advance
		}
	}
	return sum
}

// advance gives the length of a text for capitals of height 1.
func advance(words string, heavy bool) float64 {
	return float64(Advance(Spelt(words), heavy)) / faceOf(heavy).cap
}

// Spelt writes letters that the lettering lacks by what they are called in
// Unicode, as [U+4E2D], so that two names never look the same; a few signs of
// the shop get a near one.
func Spelt(words string) string {
	if plain(words) {
		return words
	}
	var b strings.Builder
	for _, r := range words {
		switch {
		case r == '⌀':
			b.WriteRune('Ø')
		case r == '−' || r == '‐' || r == '‑':
			b.WriteRune('-')
		case r < ' ' || r == 0x7f || LetterGlyph(r, false) == nil || LetterGlyph(r, true) == nil:
			fmt.Fprintf(&b, "[U+%04X]", r)
		default:
			b.WriteRune(r)
		}
	}
	return b.String()
}

func plain(words string) bool {
	for i := 0; i < len(words); i++ {
		if words[i] < ' ' || words[i] > '~' {
			return false
		}
	}
	return true
}
