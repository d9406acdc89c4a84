package dxf

import (
	"fmt"
	"math"
	"slices"
	"strconv"

	"github.com/paulmach/orb"

	"stripwright/laminate"
	"stripwright/output/sheet"
)

type writer struct {
	b      []byte
	far    bool
	names  map[string]string // other names of layers
	handle int               // last one given; release 2000 alone has them
	newer  bool              // release 2000
}

// Write gives the scene as the bytes of a DXF file of release 12. The only error
// is sheet.ErrNumber. Names of layers must be plain ASCII words.
func Write(s sheet.Scene) ([]byte, error) { return WriteAs(s, nil) }

// WriteAs is Write in the release and with the names of layers that a plan asks
// for; nil asks for nothing.
func WriteAs(s sheet.Scene, as *laminate.DXF) ([]byte, error) {
	w := &writer{b: make([]byte, 0, size(s)), names: map[string]string{}}
	if as != nil {
		w.newer = as.Release == laminate.R2000
		for _, l := range as.Layers {
			if laminate.IsLayerName(l.Name) {
				w.names[l.Layer] = l.Name
			}
		}
	}
	if w.newer {
		w.header2000(s)
		w.tables2000(s)
		w.blocks2000()
	} else {
		w.header(s)
		w.tables(s)
		w.section("BLOCKS")
		w.pair(0, "ENDSEC")
	}
	w.entities(s)
	if w.newer {
		w.objects2000()
	}
	w.pair(0, "EOF")
	if w.far {
		return nil, fmt.Errorf("%s: %w", s.Title, sheet.ErrNumber)
	}
	return w.b, nil
}

func (w *writer) entities(s sheet.Scene) {
	w.section("ENTITIES")
	for _, l := range s.Layers {
		name := w.layerName(l.Name)
		for _, t := range l.Texts {
			w.lettering(name, t)
		}
		for _, shape := range l.Shapes {
			w.shape(name, shape)
		}
	}
	w.pair(0, "ENDSEC")
}

// layerName gives the name that a layer has in the drawing.
func (w *writer) layerName(layer string) string {
	if name, ok := w.names[layer]; ok {
		return name
	}
	return layer
}

// layerNames lists the names of a scene's layers, each once.
func (w *writer) layerNames(s sheet.Scene) []string {
	var out []string
	for _, l := range s.Layers {
		if name := w.layerName(l.Name); !slices.Contains(out, name) {
			out = append(out, name)
		}
	}
	return out
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
	w.measures(s)
}

// measures ends a header with the unit, mm, and the extents.
func (w *writer) measures(s sheet.Scene) {
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
	names := w.layerNames(s)
	w.table("LAYER", len(names)+1)
	w.layer("0", 7)
	for i, name := range names {
		w.layer(name, 1+i%7)
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
	w.letters()
}

// letters ends a table of one style of lettering.
func (w *writer) letters() {
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
		w.entity("CIRCLE", layer, "AcDbCircle")
		w.point(10, s.Centre)
		w.number(30, 0)
		w.number(40, s.Radius)
		return
	}
	for _, l := range s.Lines {
		w.line(layer, l)
	}
}

// entity begins an entity; class is what release 2000 calls it.
func (w *writer) entity(kind, layer, class string) {
	w.pair(0, kind)
	if w.newer {
		w.owned(modelSpace)
		w.pair(100, "AcDbEntity")
	}
	w.pair(8, layer)
	if w.newer {
		w.pair(100, class)
	}
}

func (w *writer) line(layer string, l sheet.Line) {
	switch {
	case len(l.Points) < 2:
		return
	case len(l.Points) == 2:
		w.entity("LINE", layer, "AcDbLine")
		w.point(10, l.Points[0])
		w.number(30, 0)
		w.point(11, l.Points[1])
		w.number(31, 0)
		return
	}
	if w.newer {
		w.polyline2000(layer, l)
		return
	}
	w.entity("POLYLINE", layer, "")
	w.pair(66, "1")
	w.point(10, orb.Point{})
	w.number(30, 0)
	flag := "0"
	if l.Closed {
		flag = "1"
	}
	w.pair(70, flag)
	for _, p := range l.Points {
		w.entity("VERTEX", layer, "")
		w.point(10, p)
		w.number(30, 0)
	}
	w.entity("SEQEND", layer, "")
}

func (w *writer) lettering(layer string, t sheet.Text) {
	w.entity("TEXT", layer, "AcDbText")
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
	if w.newer {
		w.pair(100, "AcDbText") // again, for the other alignment
	}
}
