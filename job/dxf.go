package job

import (
	"slices"
	"strings"

	"gopkg.in/yaml.v3"

	"stripwright/laminate"
)

// dxf reads how drawings for a cutter are written.
func (r *reading) dxf(top block) {
	b, ok := r.optional(top, "dxf", dxfKeys)
	if !ok {
		return
	}
	d := &laminate.DXF{Release: laminate.R12, Layers: []laminate.LayerName{}}
	if n := b.value("release"); n != nil {
		d.Release, _ = r.choice(n, "release", laminate.R12, laminate.R2000)
	}
	if n := b.value("layers"); n != nil {
		d.Layers = r.otherNames(n)
	}
	r.job.DXF = d
}

// otherNames reads other names for layers: d6673, or a block of them.
func (r *reading) otherNames(n *yaml.Node) []laminate.LayerName {
	if n.Kind == yaml.ScalarNode {
		if _, ok := r.choice(n, "layers", "d6673"); ok {
			return laminate.NumberedLayers()
		}
		return nil
	}
	out := []laminate.LayerName{}
	for _, named := range r.named(n, "layers", "layer") {
		layer := named.key.Value
		if !slices.Contains(laminate.CutterLayers(), layer) {
			r.refuse(named.key, "layers", "write one of "+strings.Join(laminate.CutterLayers(), ", "), "%q is no layer of the drawings", layer)
			continue
		}
		if name, ok := r.otherName(named.value); ok {
			out = append(out, laminate.LayerName{Layer: layer, Name: name})
		}
	}
	r.cutsApart(n, out)
	return out
}

func (r *reading) otherName(n *yaml.Node) (string, bool) {
	name, ok := r.name(n, "layers", mostName)
	switch {
	case !ok:
		return "", false
	case !laminate.IsLayerName(name):
		r.refuse(n, "layers", "use up to 31 letters A to Z, digits, - _ and $", "%q cannot be the name of a layer", name)
		return "", false
	case strings.EqualFold(name, laminate.BarredLayer) || name == "0":
		r.refuse(n, "layers", "take another name", "%q has a meaning of its own", name)
		return "", false
	}
	return name, true
}

// cutsApart holds that nothing else lies on the layer of the cuts.
func (r *reading) cutsApart(n *yaml.Node, names []laminate.LayerName) {
	called := map[string]string{}
	for _, l := range laminate.CutterLayers() {
		called[l] = l
	}
	for _, l := range names {
		called[l.Layer] = l.Name
	}
	for _, l := range laminate.CutterLayers() {
		if l != "CUT" && strings.EqualFold(called[l], called["CUT"]) {
			r.refuse(n, "layers", "give the cuts a layer of their own", "%s and CUT would both lie on layer %q, and be cut", l, called["CUT"])
		}
	}
}
