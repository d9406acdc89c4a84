package job

import (
	"errors"
	"slices"
	"strings"

	"gopkg.in/yaml.v3"

	"stripwright/laminate"
	"stripwright/laminate/stack/code"
)

// headings reads the directions of the rolls of an entry of the schedule: one
// from angle, or those of a schedule code, first ply laid first.
func (r *reading) headings(b block, fabric string) []float64 {
	if !b.has("code") {
		deg := 0.0
		if n := b.need("angle", `write the direction of the roll in the part: angle: 0, or a schedule code: code: "[0/90]s"`); n != nil {
			deg, _ = r.angle(n, "angle")
		}
		return []float64{heading(deg)}
	}
	n := b.value("code")
	if at := b.value("angle"); at != nil {
		r.refuse(at, "code", "write one of them", "a ply has an angle or a code, not both")
	}
	if n == nil {
		return nil
	}
	return r.coded(n, fabric)
}

// coded expands a schedule code and notes what was understood.
func (r *reading) coded(n *yaml.Node, fabric string) []float64 {
	if n.Kind == yaml.SequenceNode {
		r.refuse(n, "code", `put it in quotes: code: "[0/90]2s"`, "a laminate code in brackets is read as a list")
		return nil
	}
	text, ok := r.written(n, "code")
	if !ok {
		return nil
	}
	c, err := code.Parse(strings.TrimSpace(text))
	var e *code.Error
	if errors.As(err, &e) {
		r.refuse(n, "code", e.Cure, "code %s, character %d: %s", e.Quoted(), e.At, e.Text)
		return nil
	}
	plies := c.Plies()
	r.wovenCode(n, plies, fabric)
	r.note(n, "code", "code %s is read as %s", c, c.Words())
	if f := r.fabricNamed(fabric); f != nil && c.Mirrors() && len(f.Layers) > 1 && f.Form != laminate.Woven {
		r.note(n, "code", "s mirrors the plies of code %s, not the layers inside the stitched cloth %s: the stack report judges layer by layer", c, fabric)
	}
	var out []float64
	for _, p := range plies {
		out = append(out, heading(p.Angle))
	}
	return out
}

// wovenCode holds the f or w of a code against the cloth.
func (r *reading) wovenCode(n *yaml.Node, plies []code.Ply, fabric string) {
	woven := 0
	for _, p := range plies {
		if p.Woven {
			woven++
		}
	}
	f := r.fabricNamed(fabric)
	if woven == 0 || f == nil {
		return
	}
	switch {
	case woven < len(plies):
		r.refuse(n, "code", "write a line of the schedule for each fabric", "the code has woven plies (f) beside others, and fabric %s is one cloth", fabric)
	case f.Form == laminate.Woven:
	case f.Form == "" && f.Layers == nil:
		r.refuse(n, "code", "write form: woven at the fabric, or leave the f out", "the code says woven cloth (f), and fabric %s does not say that it is woven", fabric)
	default:
		r.refuse(n, "code", "leave the f out, or name another fabric", "the code says woven cloth (f), and fabric %s is not woven", fabric)
	}
}

// fabricNamed gives a fabric of the job, nil for none.
func (r *reading) fabricNamed(name string) *laminate.Fabric {
	i := slices.IndexFunc(r.job.Fabrics, func(f laminate.Fabric) bool { return f.Name == name })
	if i < 0 {
		return nil
	}
	return &r.job.Fabrics[i]
}
