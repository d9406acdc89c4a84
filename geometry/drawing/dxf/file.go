package dxf

import (
	"strings"

	"stripwright/geometry/drawing/trace"
)

// File is what a DXF drawing holds that an outline can come from.
type File struct {
	header   map[string][]group // by variable, "$INSUNITS"
	layers   map[string]layer   // by name in lower case
	blocks   map[string]*block  // by name in lower case
	entities []entity           // of model and paper space, in their order
	decode   func(string) string
	report   *trace.Report
}

// entity is one entity with its groups; children are the vertices of a
// POLYLINE.
type entity struct {
	kind     string
	groups   []group
	children []entity
	line     int
}

// block is a drawing in the drawing that INSERT places.
type block struct {
	name     string
	base     [2]float64
	external bool
	entities []entity
}

type layer struct {
	name        string
	off, frozen bool
}

// Parse reads a text or binary DXF. What cannot be taken is in the report; the
// file is nil then.
func Parse(data []byte, r *trace.Report) *File {
	var groups []group
	var ok bool
	if IsBinary(data) {
		r.Binary = true
		groups, ok = scanBinary(data, r)
	} else {
		groups, ok = scan(data, r)
	}
	if !ok {
		return nil
	}
	f := &File{header: map[string][]group{}, layers: map[string]layer{}, blocks: map[string]*block{}, report: r}
	if !f.sections(groups) {
		return nil
	}
	return f
}

// sections walks over SECTION … ENDSEC and hands each body on.
func (f *File) sections(groups []group) bool {
	bodies := map[string][]group{}
	for i := 0; i < len(groups); i++ {
		if g := groups[i]; g.code != 0 || g.value != "SECTION" {
			if g.code == 0 && g.value == "EOF" {
				break
			}
			f.report.Problem("syntax", f.report.Line(g.line), "save the drawing as DXF again, unedited",
				"a section was expected, found %q", trace.Printable(g.value))
			return false
		}
		if i+1 >= len(groups) || groups[i+1].code != 2 {
			f.report.Problem("syntax", f.report.Line(groups[i].line), cutCure, "the section has no name")
			return false
		}
		name, from := groups[i+1].value, i+2
		for i = from; groups[i].code != 0 || groups[i].value != "ENDSEC"; i++ {
			if g := groups[i]; g.code == 0 && (g.value == "EOF" || g.value == "SECTION") {
				f.report.Problem("truncated", f.report.Line(g.line), cutCure, "section %s has no end", trace.Printable(name))
				return false
			}
		}
		bodies[name] = append(bodies[name], groups[from:i]...)
	}
	f.readHeader(bodies["HEADER"])
	f.decode = decoder(f.variable("$ACADVER"), f.variable("$DWGCODEPAGE"))
	f.readLayers(bodies["TABLES"])
	f.readBlocks(bodies["BLOCKS"])
	f.entities = split(bodies["ENTITIES"])
	return true
}

// split cuts a section's groups into entities; the vertices of a POLYLINE and
// the attributes of an INSERT become its children.
func split(groups []group) []entity {
	var out []entity
	parent := -1 // the entity whose children are being read
	for i := 0; i < len(groups); {
		j := i + 1
		for j < len(groups) && groups[j].code != 0 {
			j++
		}
		e := entity{kind: strings.ToUpper(groups[i].value), groups: groups[i+1 : j], line: groups[i].line}
		switch {
		case groups[i].code != 0:
		case parent >= 0 && (e.kind == "VERTEX" || e.kind == "ATTRIB"):
			out[parent].children = append(out[parent].children, e)
		case parent >= 0 && e.kind == "SEQEND":
			parent = -1
		default:
			parent = -1
			if e.kind == "POLYLINE" || e.kind == "INSERT" {
				parent = len(out)
			}
			out = append(out, e)
		}
		i = j
	}
	return out
}

// layerName gives the entity's layer as the drawing spells it; "0" if none is
// stated.
func (f *File) layerName(e entity) string {
	for _, g := range e.groups {
		if g.code == 8 && g.value != "" {
			name := f.decode(g.value)
			if l, ok := f.layers[strings.ToLower(name)]; ok {
				return l.name
			}
			return name
		}
	}
	return "0"
}
