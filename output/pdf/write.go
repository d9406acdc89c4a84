package pdf

import (
	"bytes"
	"compress/zlib"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"strconv"

	"stripwright/output/sheet"
)

// LongestMM is the longest side of a page that the format knows: 14,400 points.
const LongestMM = 5080.0

// ErrSize is returned for a page without size, or longer than LongestMM.
var ErrSize = errors.New("a page has no size, or a side over 5080 mm")

// pointsPerMM: a point is 1/72 in.
const pointsPerMM = 72 / 25.4

// file numbers objects from 1 in the order in which they are added.
type file struct {
	b      bytes.Buffer
	start  []int // of each object; 0: promised, not written yet
	packed bytes.Buffer
	packer *zlib.Writer
}

func newFile() *file {
	f := &file{packer: zlib.NewWriter(nil)}
	f.b.WriteString("%PDF-1.7\n%\xE2\xE3\xCF\xD3\n")
	return f
}

// promise gives the number of an object that is written later.
func (f *file) promise() int {
	f.start = append(f.start, 0)
	return len(f.start)
}

// keep writes a promised object.
func (f *file) keep(number int, body string) {
	f.start[number-1] = f.b.Len()
	f.b.WriteString(strconv.Itoa(number) + " 0 obj\n" + body + "\nendobj\n")
}

func (f *file) add(body string) int {
	n := f.promise()
	f.keep(n, body)
	return n
}

// stream writes data packed, with further entries of its dictionary.
func (f *file) stream(entries string, data []byte) int {
	f.packed.Reset()
	f.packer.Reset(&f.packed)
	// Writing to memory does not fail.
	_, _ = f.packer.Write(data)
	_ = f.packer.Close()
	n := f.promise()
	f.start[n-1] = f.b.Len()
	fmt.Fprintf(&f.b, "%d 0 obj\n<<%s/Filter/FlateDecode/Length %d>>\nstream\n", n, entries, f.packed.Len())
	f.b.Write(f.packed.Bytes())
	f.b.WriteString("\nendstream\nendobj\n")
	return n
}

// Write gives the pages as the bytes of a PDF file with a title. Pages that
// follow each other under one Title share one entry of the reader's table of
// contents. Errors are sheet.ErrNumber and ErrSize.
func Write(title string, pages []sheet.Scene) ([]byte, error) {
	f := newFile()
	fonts := newFonts()
	catalogue, parent, resources := f.promise(), f.promise(), f.promise()
	numbers := make([]int, len(pages))
	kids := ""
	for i, s := range pages {
		n, err := writePage(f, s, fonts, parent, resources)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", s.Title, err)
		}
		numbers[i] = n
		kids += reference(n) + " "
	}
	f.keep(parent, fmt.Sprintf("<</Type/Pages/Count %d/Kids[%s]>>", len(pages), kids))
	f.keep(resources, "<</Font<<"+fonts.write(f)+">>>>")
	f.keep(catalogue, "<</Type/Catalog/Lang(en)/Pages "+reference(parent)+contents(f, pages, numbers)+
		"/ViewerPreferences<</PrintScaling/None/DisplayDocTitle true>>>>")
	info := f.add("<</Title " + words(sheet.Spelt(title)) + ">>")
	f.end(catalogue, info)
	return f.b.Bytes(), nil
}

func reference(n int) string { return strconv.Itoa(n) + " 0 R" }

// writePage writes one page with its content.
func writePage(f *file, s sheet.Scene, fonts *fonts, parent, resources int) (int, error) {
	wide, high := s.Box.Max[0]-s.Box.Min[0], s.Box.Max[1]-s.Box.Min[1]
	if !(wide > 0 && wide <= LongestMM && high > 0 && high <= LongestMM) {
		return 0, ErrSize
	}
	p := &page{left: s.Box.Min[0], bottom: s.Box.Min[1], fonts: fonts}
	p.scene(s)
	if p.far {
		return 0, sheet.ErrNumber
	}
	content := f.stream("", p.b)
	box := strconv.FormatFloat(wide*pointsPerMM, 'f', 4, 64) + " " + strconv.FormatFloat(high*pointsPerMM, 'f', 4, 64)
	return f.add("<</Type/Page/Parent " + reference(parent) + "/MediaBox[0 0 " + box + "]/Resources " + reference(resources) +
		"/Contents " + reference(content) + ">>"), nil
}

// contents writes the reader's table of contents and gives its entry of the
// catalogue.
func contents(f *file, pages []sheet.Scene, numbers []int) string {
	var first []int // page of each entry
	for i, s := range pages {
		if i == 0 || s.Title != pages[i-1].Title {
			first = append(first, i)
		}
	}
	if len(first) < 2 {
		return ""
	}
	top := f.promise()
	entries := make([]int, len(first))
	for i := range first {
		entries[i] = f.promise()
	}
	for i, at := range first {
		body := "<</Title " + words(sheet.Spelt(pages[at].Title)) + "/Parent " + reference(top) + "/Dest[" + reference(numbers[at]) + "/Fit]"
		if i > 0 {
			body += "/Prev " + reference(entries[i-1])
		}
		if i+1 < len(entries) {
			body += "/Next " + reference(entries[i+1])
		}
		f.keep(entries[i], body+">>")
	}
	f.keep(top, fmt.Sprintf("<</Type/Outlines/First %s/Last %s/Count %d>>", reference(entries[0]), reference(entries[len(entries)-1]), len(entries)))
	return "/Outlines " + reference(top)
}

// words writes text for a reader's window: UTF-16 with its mark.
func words(s string) string {
	b := []byte("<FEFF")
	for _, r := range s {
		b = appendHex(b, r)
	}
	return string(append(b, '>'))
}

// appendHex appends a letter in UTF-16, four figures for each unit.
func appendHex(b []byte, r rune) []byte {
	if r > 0xFFFF {
		r -= 0x10000
		return fmt.Appendf(b, "%04X%04X", 0xD800+r>>10, 0xDC00+r&0x3FF)
	}
	return fmt.Appendf(b, "%04X", r)
}

// end writes the table of objects; the file's mark is a hash of what it holds.
func (f *file) end(catalogue, info int) {
	mark := sha256.Sum256(f.b.Bytes())
	id := hex.EncodeToString(mark[:16])
	at := f.b.Len()
	fmt.Fprintf(&f.b, "xref\n0 %d\n0000000000 65535 f \n", len(f.start)+1)
	for _, s := range f.start {
		fmt.Fprintf(&f.b, "%010d 00000 n \n", s)
	}
	fmt.Fprintf(&f.b, "trailer\n<</Size %d/Root %s/Info %s/ID[<%s><%s>]>>\nstartxref\n%d\n%%%%EOF\n",
		len(f.start)+1, reference(catalogue), reference(info), id, id, at)
}
