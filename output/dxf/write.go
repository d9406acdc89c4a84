package dxf

import (
	"fmt"
	"math"
	"strconv"

	"github.com/paulmach/orb"

	"stripwright/output/sheet"
)

type writer struct {
	b   []byte
	far bool
}

// Write gives the scene as the bytes of a DXF file. The only error is
// sheet.ErrNumber. Names of layers must be plain ASCII words.
func Write(s sheet.Scene) ([]byte, error) {
	w := &writer{b: make([]byte, 0, size(s))}
	w.header(s)
	w.tables(s)
	w.section("BLOCKS")
	w.pair(0, "ENDSEC")
	w.section("ENTITIES")
	for _, l := range s.Layers {
		for _, t := range l.Texts {
			w.lettering(l.Name, t)
		}
		for _, shape := range l.Shapes {
			w.shape(l.Name, shape)
		}
	}
	w.pair(0, "ENDSEC")
	w.pair(0, "EOF")
	if w.far {
		return nil, fmt.Errorf("%s: %w", s.Title, sheet.ErrNumber)
	}
	return w.b, nil
}

// size estimates the length of the file, so that it is not copied while it
// grows.
func size(s sheet.Scene) int {
	n := 4000
	for _, l := range s.Layers {
		n += 160 * len(l.Texts)
		for _, shape := range l.Shapes {
			n += 130
			for _, line := range shape.Lines {
				n += 60 * len(line.Points)
			}
		}
	}
	return n
}

func (w *writer) pair(code int, value string) {
	w.b = strconv.AppendInt(w.b, int64(code), 10)
	w.b = append(w.b, '\n')
	w.b = append(w.b, value...)
	w.b = append(w.b, '\n')
}

func (w *writer) number(code int, v float64) {
	w.far = w.far || !sheet.Drawable(v)
	w.b = strconv.AppendInt(w.b, int64(code), 10)
	w.b = append(w.b, '\n')
	start := len(w.b)
	w.b = sheet.AppendMM(w.b, v)
	if !hasPoint(w.b[start:]) {
		w.b = append(w.b, ".0"...) // a real is written as one
	}
	w.b = append(w.b, '\n')
}

func hasPoint(digits []byte) bool {
	for _, d := range digits {
		if d == '.' {
			return true
		}
	}
	return false
}

func (w *writer) point(code int, p orb.Point) {
	w.number(code, p[0])
	w.number(code+10, p[1])
}

func (w *writer) section(name string) {
	w.pair(0, "SECTION")
	w.pair(2, name)
}

func (w *writer) header(s sheet.Scene) {
	w.section("HEADER")
	w.pair(9, "$ACADVER")
	w.pair(1, "AC1009")
	w.pair(9, "$INSUNITS")
	w.pair(70, "4")
	w.pair(9, "$MEASUREMENT")
	w.pair(70, "1")
	w.pair(9, "$EXTMIN")
	w.point(10, s.Box.Min)
	w.number(30, 0)
	w.pair(9, "$EXTMAX")
	w.point(10, s.Box.Max)
	w.number(30, 0)
	w.pair(0, "ENDSEC")
}

func (w *writer) tables(s sheet.Scene) {
	w.section("TABLES")
	w.table("LTYPE", 1)
	w.pair(0, "LTYPE")
	w.pair(2, "CONTINUOUS")
	w.pair(70, "0")
	w.pair(3, "Solid line")
	w.pair(72, "65")
	w.pair(73, "0")
	w.number(40, 0)
	w.pair(0, "ENDTAB")
	w.table("LAYER", len(s.Layers)+1)
	w.layer("0", 7)
	for i, l := range s.Layers {
		w.layer(l.Name, 1+i%7)
	}
	w.pair(0, "ENDTAB")
	w.style()
	w.pair(0, "ENDSEC")
}

func (w *writer) table(name string, entries int) {
	w.pair(0, "TABLE")
	w.pair(2, name)
	w.pair(70, strconv.Itoa(entries))
}

func (w *writer) layer(name string, colour int) {
	w.pair(0, "LAYER")
	w.pair(2, name)
	w.pair(70, "0")
	w.pair(62, strconv.Itoa(colour))
	w.pair(6, "CONTINUOUS")
}

func (w *writer) style() {
	w.table("STYLE", 1)
	w.pair(0, "STYLE")
	w.pair(2, "STANDARD")
	w.pair(70, "0")
	w.number(40, 0)
	w.number(41, 1)
	w.number(50, 0)
	w.pair(71, "0")
	w.number(42, 2.5)
	w.pair(3, "txt")
	w.pair(4, "")
	w.pair(0, "ENDTAB")
}

func (w *writer) shape(layer string, s sheet.Shape) {
	if s.Pen.Ink == "" {
		return
	}
	if s.Radius > 0 {
		w.entity("CIRCLE", layer)
		w.point(10, s.Centre)
		w.number(30, 0)
		w.number(40, s.Radius)
		return
	}
	for _, l := range s.Lines {
		w.line(layer, l)
	}
}

func (w *writer) entity(kind, layer string) {
	w.pair(0, kind)
	w.pair(8, layer)
}

func (w *writer) line(layer string, l sheet.Line) {
	switch {
	case len(l.Points) < 2:
		return
	case len(l.Points) == 2:
		w.entity("LINE", layer)
		w.point(10, l.Points[0])
		w.number(30, 0)
		w.point(11, l.Points[1])
		w.number(31, 0)
		return
	}
	w.entity("POLYLINE", layer)
	w.pair(66, "1")
	w.point(10, orb.Point{})
	w.number(30, 0)
	flag := "0"
	if l.Closed {
		flag = "1"
	}
	w.pair(70, flag)
	for _, p := range l.Points {
		w.entity("VERTEX", layer)
		w.point(10, p)
		w.number(30, 0)
	}
	w.entity("SEQEND", layer)
}

func (w *writer) lettering(layer string, t sheet.Text) {
	w.entity("TEXT", layer)
	w.point(10, t.Start())
	w.number(30, 0)
	w.number(40, t.Height)
	w.pair(1, ascii(t.Words))
	w.number(50, math.Mod(t.Turn+360, 360))
	if t.Align != sheet.Left {
		w.pair(72, strconv.Itoa(int(t.Align)))
		w.point(11, t.At)
		w.number(31, 0)
	}
}
