package job

import (
	"gopkg.in/yaml.v3"

	"stripwright/geometry"
	"stripwright/geometry/length"
	"stripwright/laminate"
)

// layers reads the stitched layers of a fabric from the face to the back:
// angles alone, or angle and weight of each.
func (r *reading) layers(b block, gsm float64) []laminate.Layer {
	n := b.value("layers")
	if n == nil {
		return nil
	}
	items, ok := r.list(n, "layers", "[45, -45], from the face to the back")
	if !ok {
		return nil
	}
	if len(items) > 20 {
		r.refuse(n, "layers", "check the list", "%d layers are too many for one fabric", len(items))
		return nil
	}
	var out []laminate.Layer
	sum, weighed := 0.0, 0
	for _, item := range items {
		l := r.layer(item)
		if l.WeightGSM > 0 {
			weighed++
		}
		sum += l.WeightGSM
		out = append(out, l)
	}
	r.layerWeights(n, weighed, len(out), sum, gsm)
	return out
}

func (r *reading) layer(item *yaml.Node) (l laminate.Layer) {
	if item.Kind != yaml.MappingNode {
		l.AngleDeg = r.layerAngle(item)
		return l
	}
	b, ok := r.block(item, item, "layer", layerKeys)
	if !ok {
		return l
	}
	if n := b.need("angle", "write the angle of the layer to the roll direction"); n != nil {
		l.AngleDeg = r.layerAngle(n)
	}
	if n := b.value("weight"); n != nil {
		l.WeightGSM, _ = r.weight(n, "weight")
	}
	return l
}

func (r *reading) layerAngle(n *yaml.Node) float64 {
	deg, _ := r.angle(n, "layers")
	return geometry.NewAngle(deg).Degrees()
}

// layerWeights holds the weights of layers against that of the fabric. What is
// missing up to a tenth is stitching yarn.
func (r *reading) layerWeights(n *yaml.Node, weighed, layers int, sum, gsm float64) {
	switch {
	case weighed == 0 || gsm == 0:
	case weighed < layers:
		r.refuse(n, "layers", "write it for each, or for none where they share the fabric's weight equally", "%d of %d layers have a weight", weighed, layers)
	case sum > gsm*1.005 || sum < gsm*0.9:
		r.refuse(n, "layers", "correct one of them", "the layers weigh %s together, the fabric %s", length.Weight(sum), length.Weight(gsm))
	case sum < gsm*0.999:
		r.note(n, "layers", "the layers weigh %s of the fabric's %s: the rest is taken for stitching yarn", length.Weight(sum), length.Weight(gsm))
	}
}

// twoSided says whether a fabric turned over about the roll direction has the
// same stack again: the order of its layers reverses and their angles change
// sign. So [45, -45] is the same from both sides, [0, 90] is not.
func twoSided(layers []laminate.Layer) bool {
	for i, l := range layers {
		back := layers[len(layers)-1-i]
		if geometry.NewAngle(-back.AngleDeg) != geometry.NewAngle(l.AngleDeg) || back.WeightGSM != l.WeightGSM {
			return false
		}
	}
	return true
}
