package drawing

import (
	"bytes"
	"path"
	"strconv"
	"strings"

	"stripwright/geometry/drawing/dxf"
)

// format says what kind of drawing the data is, by its content first and by
// the name's ending where that does not tell; "" with the reason and the cure
// when it is none that can be read.
func format(name string, data []byte) (kind, why, cure string) {
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
	case dxf.IsBinary(data):
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
	{0, "\xff\xfe", "this file is UTF-16 text", "save it as UTF-8"},
	{0, "\xfe\xff", "this file is UTF-16 text", "save it as UTF-8"},
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
