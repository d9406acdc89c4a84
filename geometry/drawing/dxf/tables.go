package dxf

import (
	"sort"
	"strconv"
	"strings"
)

// readHeader keeps the groups of each header variable.
func (f *File) readHeader(groups []group) {
	name := ""
	for _, g := range groups {
		if g.code == 9 {
			name = strings.ToUpper(g.value)
			continue
		}
		f.header[name] = append(f.header[name], g)
	}
}

// variable gives the first value of a header variable, "" if it is not there.
func (f *File) variable(name string) string {
	if g := f.header[name]; len(g) > 0 {
		return g[0].value
	}
	return ""
}

// Variable gives a header variable that is a whole number, "$INSUNITS" or
// "$MEASUREMENT"; not there when it is missing or no number. A value that is
// stated but is no number is a problem.
func (f *File) Variable(name string) (v int, there bool) {
	g := f.header[name]
	if len(g) == 0 {
		return 0, false
	}
	v, err := strconv.Atoi(g[0].value)
	if err != nil {
		f.report.Problem("number", f.report.Line(g[0].line), "save the drawing as DXF again, unedited",
			"%s is %q, which is not a whole number", name, g[0].value)
		return 0, false
	}
	return v, true
}

// readLayers keeps the state of each layer: off when its colour is negative,
// frozen when bit 1 of its flags is set.
func (f *File) readLayers(groups []group) {
	for _, e := range split(groups) {
		if e.kind != "LAYER" {
			continue
		}
		l := layer{}
		for _, g := range e.groups {
			n, _ := strconv.Atoi(g.value)
			switch g.code {
			case 2:
				l.name = f.decode(g.value)
			case 62:
				l.off = n < 0
			case 70:
				l.frozen = n&1 != 0
			}
		}
		f.layers[strings.ToLower(l.name)] = l
	}
}

// readBlocks keeps the blocks by name, with their base point; a block that
// lies in another file has nothing here.
func (f *File) readBlocks(groups []group) {
	var open *block
	for _, e := range split(groups) {
		switch {
		case e.kind == "BLOCK":
			open = f.newBlock(e)
			f.blocks[strings.ToLower(open.name)] = open
		case e.kind == "ENDBLK":
			open = nil
		case open != nil:
			open.entities = append(open.entities, e)
		}
	}
}

func (f *File) newBlock(e entity) *block {
	b := &block{}
	v := f.values(e)
	for _, g := range e.groups {
		switch g.code {
		case 2:
			b.name = f.decode(g.value)
		case 70:
			n, _ := strconv.Atoi(g.value)
			b.external = n&(4|8|32) != 0
		}
	}
	b.base = [2]float64{v.number(10, 0), v.number(20, 0)}
	return b
}

// LayerNames lists the layers of the table and of all entities, each once, in
// alphabetical order.
func (f *File) LayerNames() []string {
	seen := map[string]string{}
	for _, l := range f.layers {
		seen[strings.ToLower(l.name)] = l.name
	}
	add := func(es []entity) {
		for _, e := range es {
			name := f.layerName(e)
			if _, ok := seen[strings.ToLower(name)]; !ok {
				seen[strings.ToLower(name)] = name
			}
		}
	}
	add(f.entities)
	for _, b := range f.blocks {
		add(b.entities)
	}
	out := []string{}
	for _, name := range seen {
		out = append(out, name)
	}
	sort.Strings(out)
	return out
}
