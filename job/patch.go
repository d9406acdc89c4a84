package job

import (
	"gopkg.in/yaml.v3"

	"stripwright/geometry"
	"stripwright/geometry/length"
)

// outline is a blank of its own for patches and ply drops, in the part frame.
type outline struct {
	blank geometry.Region
	at    *yaml.Node // its name in the file
	used  bool
	read  bool // without problems
}

// patches reads the outlines of plies that do not cover the whole part. They
// are blanks as they are: no trim allowance is added, and they must lie within
// the part's blank.
func (r *reading) patches(top block) {
	r.outlines = map[string]outline{}
	n := top.value("outlines")
	if n == nil {
		return
	}
	for _, named := range r.named(n, "outlines", "outline") {
		o := outline{at: named.key}
		if g, ok := r.patch(named); ok {
			o.blank, o.read = r.place(g), true
			r.patchInBlank(named.key, o.blank)
		}
		r.outlines[named.key.Value] = o
		r.outlineSeen = append(r.outlineSeen, named.key.Value)
	}
}

// patch reads one outline: a shape, a drawing, or a layer of the part's
// drawing.
func (r *reading) patch(named entry) (geometry.Region, bool) {
	what := "outline " + named.key.Value
	if named.value.Kind == yaml.ScalarNode {
		return r.drawnPatch(named.value)
	}
	b, ok := r.block(named.value, named.key, what, patchKeys)
	if !ok {
		return geometry.Region{}, false
	}
	if b.has("layer") {
		if r.oneOf(b, "layer", "points", "rectangle", "circle", "ellipse") == "" {
			return geometry.Region{}, false
		}
		return r.layerPatch(b)
	}
	return r.shapeOf(b, partChord)
}

// patchInBlank refuses a patch that reaches out of the part's blank.
func (r *reading) patchInBlank(at *yaml.Node, patch geometry.Region) {
	blank := r.job.Part.Blank
	if blank.Empty() || patch.Empty() {
		return
	}
	if p, by := sticksOut(patch, blank); by > 0 {
		r.refuse(at, "outlines", "move it or cut it back: patches are in the coordinates of the part's outline, and no trim is added to them",
			"outline %q reaches %s out of the part's blank at %s of the part frame", at.Value, length.MM(by), atPoint(p))
	}
}

// entry is one named thing of a block whose keys are names.
type entry struct{ key, value *yaml.Node }

// named lists the entries of a block whose keys are names given by the shop:
// kept letter for letter, each once.
func (r *reading) named(n *yaml.Node, rule, what string) []entry {
	if n.Kind != yaml.MappingNode {
		r.refuse(n, rule, "write a name, a colon, and its keys", "%s is %s and not a block of names", rule, kindOf(n))
		return nil
	}
	if len(n.Content) == 0 {
		r.refuse(n, ruleEmpty, "write at least one, or take the key out", "%s holds nothing", rule)
	}
	seen := map[string]*yaml.Node{}
	var out []entry
	for i := 0; i+1 < len(n.Content); i += 2 {
		key, value := n.Content[i], n.Content[i+1]
		if spoilt(key) || spoilt(value) || key.Tag == "!!merge" {
			continue
		}
		if _, ok := r.name(key, what, mostName); !ok {
			continue
		}
		if first := seen[key.Value]; first != nil {
			r.refuse(key, ruleTwice, "give each its own name", "%s %q stands twice, first in line %d", what, key.Value, first.Line)
			continue
		}
		seen[key.Value] = key
		if null(value) {
			r.refuse(key, ruleEmpty, "write its keys under it", "%s %q has nothing under it", what, key.Value)
			continue
		}
		out = append(out, entry{key, value})
	}
	return out
}
