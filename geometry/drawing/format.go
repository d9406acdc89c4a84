package drawing

import (
	"bytes"
	"path"
	"regexp"
	"strconv"
	"strings"

	"golang.org/x/text/encoding/unicode"

	"stripwright/geometry/drawing/dxf"
)

// format says what kind of drawing the data is, by its content first and by
// the name's ending where that does not tell; "" with the reason and the cure
// when it is none that can be read.
func format(name string, data []byte) (kind, why, cure string) {
	if kind := headless(data); kind != "" {
		return "", kind, "save it as UTF-8"
	}
	head := bytes.TrimLeft(bytes.TrimPrefix(data, []byte("\ufeff")), " \t\r\n\x00")
	ending := strings.ToLower(path.Ext(strings.ReplaceAll(name, `\`, "/")))
	for _, m := range magics {
		if m.at+len(m.mark) <= len(data) && string(data[m.at:m.at+len(m.mark)]) == m.mark {
			return "", m.is, m.cure
		}
	}
	switch {
	case len(head) == 0:
		return "", "the file is empty", "export the drawing again"
	case len(data) >= 6 && string(data[:3]) == "AC1" && digits(data[3:6]):
		return "", "this is a DWG file, not DXF", "save it as DXF (R12 or 2000, text)"
	case dxf.IsBinary(data) || section.Match(head):
		return "dxf", "", ""
	case head[0] == '<':
		return "svg", "", ""
	case ending == ".csv":
		return "csv", "", ""
	case ending == ".dxf" || groupCode(head):
		return "dxf", "", ""
	case ending == ".svg":
		return "svg", "", ""
	}
	return "", "this is neither DXF nor SVG nor a list of points", "save the drawing as DXF or SVG"
}

// section is how a text DXF begins, whatever its name: with its first section,
// comments before it.
var section = regexp.MustCompile(`^(?:999[ \t]*\r?\n[^\n]*\n\s*)*0[ \t]*\r?[\n\r]\s*SECTION\s`)

// magics mark files of other kinds.
var magics = []struct {
	at       int
	mark     string
	is, cure string
}{
	{0, "%PDF", "this is a PDF", "save the drawing as DXF or SVG"},
	{0, "%!PS", "this is PostScript", "save the drawing as DXF or SVG"},
	{0, "\x1f\x8b", "this file is compressed (gzip)", "unpack it, or save it as plain SVG"},
	{0, "PK\x03\x04", "this file is an archive (zip)", "unpack it first"},
	{0, "\x89PNG", "this is a picture, not a drawing", "save the drawing as DXF or SVG"},
	{0, "\xff\xd8\xff", "this is a picture, not a drawing", "save the drawing as DXF or SVG"},
	{0, "AC1.", "this is a DWG file, not DXF", "save it as DXF (R12 or 2000, text)"},
	{0, "AC2.", "this is a DWG file, not DXF", "save it as DXF (R12 or 2000, text)"},
	{0, "MC0.0", "this is a DWG file, not DXF", "save it as DXF (R12 or 2000, text)"},
	{0, "GIF8", "this is a picture, not a drawing", "save the drawing as DXF or SVG"},
	{0, "II*\x00", "this is a picture, not a drawing", "save the drawing as DXF or SVG"},
	{0, "\xd0\xcf\x11\xe0", "this is an office document", "save the points as CSV, or the drawing as DXF or SVG"},
	{0, "ISO-10303-21", "this is a STEP model", "save the outline as DXF or SVG"},
	{0, "solid ", "this is a mesh (STL)", "save the outline as DXF or SVG"},
}

func digits(b []byte) bool {
	for _, c := range b {
		if c < '0' || c > '9' {
			return false
		}
	}
	return true
}

// groupCode says whether the first line is a whole number, as in every DXF.
func groupCode(head []byte) bool {
	line, _, _ := bytes.Cut(head, []byte("\n"))
	_, err := strconv.Atoi(strings.TrimSpace(string(line)))
	return err == nil
}

// plain turns UTF-16 text that begins with its mark into UTF-8, and takes the
// mark of UTF-8 off; everything else stays as it is.
func plain(data []byte) []byte {
	if !bytes.HasPrefix(data, []byte("\xff\xfe")) && !bytes.HasPrefix(data, []byte("\xfe\xff")) {
		return bytes.TrimPrefix(data, []byte("\ufeff"))
	}
	text, err := unicode.UTF16(unicode.LittleEndian, unicode.ExpectBOM).NewDecoder().Bytes(data)
	if err != nil {
		return data
	}
	return text
}

// headless says of UTF-16 text without its mark what it is.
func headless(data []byte) string {
	if len(data) >= 4 && data[0] != 0 && data[1] == 0 && data[2] != 0 && data[3] == 0 ||
		len(data) >= 4 && data[0] == 0 && data[1] == '<' && data[2] == 0 && data[3] != 0 {
		return "this file is UTF-16 text without its mark"
	}
	return ""
}
