package pdf

import (
	"fmt"
	"sort"
	"strings"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"stripwright/output/sheet"
)

// fonts are the two faces, each with the letters that the pages use.
type fonts struct{ faces [2]*face }

// face numbers letters from 1 in the order of first use: these numbers are the
// codes in the text and the glyphs of the embedded font.
type face struct {
	name, title string // F1; GoRegular
	data        []byte
	bold        bool
	codes       map[rune]int
	letters     []rune // by code, from 1
}

func newFonts() *fonts {
	return &fonts{[2]*face{
		{name: "F1", title: "GoRegular", data: goregular.TTF, codes: map[rune]int{}},
		{name: "F2", title: "GoBold", data: gobold.TTF, bold: true, codes: map[rune]int{}},
	}}
}

func (f *fonts) of(bold bool) *face {
	if bold {
		return f.faces[1]
	}
	return f.faces[0]
}

// units is how many units of a face make its size.
const units = 2048

// size gives the size of a face for capitals of a height in mm.
func (f *face) size(height float64) float64 { return units * sheet.LetterScale(height, f.bold) }

// appendCodes appends the codes of spelt words, four figures each.
func (f *face) appendCodes(b []byte, words string) []byte {
	for _, r := range words {
		code, ok := f.codes[r]
		if !ok {
			f.letters = append(f.letters, r)
			code = len(f.letters)
			f.codes[r] = code
		}
		b = append(b, figures[code>>12&15], figures[code>>8&15], figures[code>>4&15], figures[code&15])
	}
	return b
}

const figures = "0123456789ABCDEF"

// write embeds the faces that are used and gives the entries for them.
func (f *fonts) write(file *file) string {
	entries := ""
	for _, face := range f.faces {
		if len(face.letters) > 0 {
			entries += "/" + face.name + " " + reference(face.embed(file))
		}
	}
	return entries
}

// embed writes a face as a composite font over a TrueType subset.
func (f *face) embed(file *file) int {
	parsed, err := sfnt.Parse(f.data)
	if err != nil {
		panic("lettering is damaged: " + err.Error()) // the face is linked into the program
	}
	var buffer sfnt.Buffer
	glyphs := []int{0}
	widths := []string{}
	for _, r := range f.letters {
		index, _ := parsed.GlyphIndex(&buffer, r)
		advance, _ := parsed.GlyphAdvance(&buffer, index, fixed.I(units), font.HintingNone)
		glyphs = append(glyphs, int(index))
		widths = append(widths, sheet.Number(float64(advance.Round())*1000/units, 3))
	}
	name := "/" + f.tag() + "+" + f.title
	data := subset(f.data, glyphs)
	program := file.stream(fmt.Sprintf("/Length1 %d", len(data)), data)
	described := file.add("<</Type/FontDescriptor/FontName" + name + "/Flags 32/FontBBox[-440 -432 2160 2073]/ItalicAngle 0" +
		"/Ascent 935/Descent -211/CapHeight 716/StemV 90/FontFile2 " + reference(program) + ">>")
	inner := file.add("<</Type/Font/Subtype/CIDFontType2/BaseFont" + name + "/CIDSystemInfo<</Registry(Adobe)/Ordering(Identity)/Supplement 0>>" +
		"/FontDescriptor " + reference(described) + "/CIDToGIDMap/Identity/W[1[" + strings.Join(widths, " ") + "]]>>")
	back := file.stream("", f.backToWords())
	return file.add("<</Type/Font/Subtype/Type0/BaseFont" + name + "/Encoding/Identity-H/DescendantFonts[" + reference(inner) + "]/ToUnicode " + reference(back) + ">>")
}

// tag gives the six capitals that mark a subset, from the letters that it holds.
func (f *face) tag() string {
	sorted := append([]rune{}, f.letters...)
	sort.Slice(sorted, func(a, b int) bool { return sorted[a] < sorted[b] })
	n := uint64(1469598103934665603) // FNV-1a
	for _, r := range sorted {
		n = (n ^ uint64(r)) * 1099511628211
	}
	tag := make([]byte, 6)
	for i := range tag {
		tag[i] = byte('A' + n%26)
		n /= 26
	}
	return string(tag)
}

// mostMapped is how many codes the format lets one list hold.
const mostMapped = 100

// backToWords maps codes to letters, for searching and reading back.
func (f *face) backToWords() []byte {
	b := []byte("/CIDInit /ProcSet findresource begin\n12 dict begin\nbegincmap\n" +
		"/CIDSystemInfo <</Registry (Adobe) /Ordering (UCS) /Supplement 0>> def\n" +
		"/CMapName /Adobe-Identity-UCS def\n/CMapType 2 def\n1 begincodespacerange\n<0000> <FFFF>\nendcodespacerange\n")
	for from := 0; from < len(f.letters); from += mostMapped {
		part := f.letters[from:min(from+mostMapped, len(f.letters))]
		b = fmt.Appendf(b, "%d beginbfchar\n", len(part))
		for i, r := range part {
			b = fmt.Appendf(b, "<%04X> <", from+i+1)
			b = append(appendHex(b, r), ">\n"...)
		}
		b = append(b, "endbfchar\n"...)
	}
	return append(b, "endcmap\nCMapName currentdict /CMap defineresource pop\nend\nend\n"...)
}
