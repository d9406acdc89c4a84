package job

import (
	"gopkg.in/yaml.v3"

	"stripwright/geometry"
	"stripwright/geometry/drawing"
)

// layerRegions reads all outlines on a layer of the part's drawing, for
// keep-clear regions, each filled: what lies in a ring is kept clear as well.
// They lie where they are drawn, in the part's coordinates.
func (r *reading) layerRegions(n *yaml.Node) (found []geometry.Region) {
	names := r.layerNames(n)
	if len(names) == 0 || !r.fromDrawing(n) {
		return nil
	}
	d := drawing.OnLayers(r.partDrawing.name, r.partDrawing.data, r.partDrawing.options, names)
	r.pass(d)
	return d.Regions
}

// onLayers gives the options of the part's drawing for other layers.
func (r *reading) onLayers(names []string) drawing.Options {
	o := r.partDrawing.options
	o.Layers, o.Which = names, 0
	return o
}

// fromDrawing refuses a layer where the part's outline is written in the job,
// and says whether its drawing was read.
func (r *reading) fromDrawing(n *yaml.Node) bool {
	if r.partDrawing == nil {
		r.refuse(n, "layer", "write the shape here, or name a drawing under part: outline:", "a layer is named, and the part's outline is no drawing")
		return false
	}
	return r.partDrawing.data != nil && !r.inDrawing.Empty()
}

// drawnPatch reads an outline of its own from a drawing beside the job file; it
// lies where it is drawn.
func (r *reading) drawnPatch(n *yaml.Node) (geometry.Region, bool) {
	name, data, ok := r.file(n, "outlines")
	if !ok {
		return geometry.Region{}, false
	}
	return r.single(n, name, data, drawing.Options{}, "keep one outline in the drawing of a patch")
}

// layerPatch reads an outline of its own from a layer of the part's drawing.
func (r *reading) layerPatch(b block) (geometry.Region, bool) {
	n := b.value("layer")
	if n == nil {
		return geometry.Region{}, false
	}
	names := r.layerNames(n)
	if len(names) == 0 || !r.fromDrawing(n) {
		return geometry.Region{}, false
	}
	return r.single(n, r.partDrawing.name, r.partDrawing.data, r.onLayers(names), "keep one outline on the layer of a patch")
}
