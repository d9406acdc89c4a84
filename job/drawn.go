package job

import (
	"io/fs"
	"path"
	"slices"
	"strconv"
	"strings"

	"gopkg.in/yaml.v3"

	"stripwright/geometry"
	"stripwright/geometry/drawing"
	"stripwright/geometry/length"
	"stripwright/laminate"
)

// drawn is the drawing of the part and how it is read.
type drawn struct {
	name    string
	data    []byte
	options drawing.Options
	at      *yaml.Node // where the job names it
}

// drawnPart reads the part's outline from a drawing beside the job file.
func (r *reading) drawnPart(b block, n *yaml.Node) (geometry.Region, bool) {
	d := &drawn{at: b.keys["outline"]}
	r.partDrawing = d
	options, ok := r.drawingOptions(b)
	d.options = options
	name, data, found := r.file(n, "outline")
	if !found || !ok {
		return geometry.Region{}, false
	}
	d.name, d.data = name, data
	r.drawingStated()
	return r.single(n, name, data, d.options, "write which: with the number of the part, or layer: with the layer it is on")
}

// single reads the one outline of a drawing.
func (r *reading) single(n *yaml.Node, name string, data []byte, o drawing.Options, cure string) (geometry.Region, bool) {
	d := drawing.Read(name, data, o)
	r.pass(d)
	switch {
	case len(d.Problems) > 0:
		return geometry.Region{}, false
	case len(d.Regions) != 1:
		r.refuse(n, "which", cure, "%s holds %d outlines%s", name, len(d.Regions), listOf(d))
		return geometry.Region{}, false
	}
	return r.thinned(n, d.Regions[0].Snapped()), true
}

// drawingOptions reads the keys that say how a drawing is read.
func (r *reading) drawingOptions(b block) (o drawing.Options, ok bool) {
	before := len(r.problems)
	if n := b.value("layer"); n != nil {
		o.Layers = r.layerNames(n)
	}
	if n := b.value("drawing_units"); n != nil {
		o.Units = r.drawingUnits(n)
	}
	if n := b.value("join"); n != nil {
		o.JoinMM, _ = r.lengthIn(n, "join", limits{0.0001, 20})
	}
	if n := b.value("which"); n != nil {
		o.Which, _ = r.count(n, "which", 1, 1e6)
	}
	return o, len(r.problems) == before
}

// layerNames reads one name or a list of names.
func (r *reading) layerNames(n *yaml.Node) []string {
	items := []*yaml.Node{n}
	if n.Kind != yaml.ScalarNode {
		items, _ = r.list(n, "layer", "[LID, HOLES]")
	}
	var out []string
	for _, item := range items {
		if name, ok := r.name(item, "layer", mostName); ok {
			out = append(out, name)
		}
	}
	return out
}

// drawingUnits reads the unit of a drawing: of length, or so many to the inch.
func (r *reading) drawingUnits(n *yaml.Node) string {
	text, ok := r.written(n, "drawing_units")
	if !ok {
		return ""
	}
	if per := strings.ReplaceAll(text, " ", ""); strings.HasSuffix(per, "/in") && drawing.IsUnit(per) {
		return per
	}
	u, err := length.ParseUnit(text)
	if err != nil {
		r.refuse(n, "drawing_units", "write mm, cm, m, in, ft, yd or a number of units an inch such as 72/in", "%q is no unit of a drawing", text)
	}
	return string(u)
}

// file opens a drawing named in the job.
func (r *reading) file(n *yaml.Node, rule string) (name string, data []byte, ok bool) {
	name, ok = r.name(n, rule, 250)
	if !ok || !r.beside(n, rule, name) {
		return name, nil, false
	}
	name = path.Clean(name)
	if data, ok := r.drawings[name]; ok {
		return name, data, data != nil
	}
	data, err := []byte(nil), fs.ErrNotExist
	if r.open != nil {
		data, err = r.open(name)
	}
	if err != nil {
		r.drawings[name] = nil
		r.refuse(n, rule, "put it in the folder of the job file, or correct the name", "drawing %q: %s", name, reason(err))
		return name, nil, false
	}
	r.drawings[name] = append([]byte{}, data...)
	r.job.Drawings = append(r.job.Drawings, fileRef(name, data))
	return name, data, true
}

// beside refuses a name that leads out of the job's folder: a job is then
// understood with the folder alone.
func (r *reading) beside(n *yaml.Node, rule, name string) bool {
	cure := "put the drawing beside the job file or in a folder there, with / between: drawings/hatch.dxf"
	switch {
	case strings.Contains(name, `\`):
		r.refuse(n, rule, cure, "drawing %q is written with \\", name)
	case strings.HasPrefix(name, "/") || len(name) > 1 && name[1] == ':' || strings.Contains(name, "://"):
		r.refuse(n, rule, cure, "drawing %q is not a name beside this file", name)
	case strings.HasPrefix(path.Clean(name), ".."):
		r.refuse(n, rule, cure, "drawing %q lies outside the folder of the job file", name)
	case path.Clean(name) == ".":
		r.refuse(n, rule, cure, "drawing %q is a folder", name)
	default:
		return true
	}
	return false
}

// pass hands on what the drawing reader says.
func (r *reading) pass(d drawing.Drawing) {
	for _, p := range d.Problems {
		file, line := splitPlace(p.Where)
		r.problems = append(r.problems, Problem{File: file, Line: line, Rule: p.Rule, Text: p.Text, Cure: p.Cure})
	}
	for _, n := range d.Notes {
		if said := (laminate.Note{Rule: n.Rule, Where: n.Where, Text: n.Text}); !slices.Contains(r.notes, said) {
			r.notes = append(r.notes, said)
		}
	}
}

// listOf gives the drawing reader's list of several outlines.
func listOf(d drawing.Drawing) string {
	for _, n := range d.Notes {
		if _, list, ok := strings.Cut(n.Text, ": "); ok && n.Rule == "several" {
			return ": " + list
		}
	}
	return ""
}

// splitPlace parts "hatch.dxf:14" into file and line.
func splitPlace(where string) (string, int) {
	i := strings.LastIndexByte(where, ':')
	if i > 0 {
		if line, err := strconv.Atoi(where[i+1:]); err == nil && line > 0 {
			return where[:i], line
		}
	}
	return where, 0
}
