package job

import (
	"fmt"
	"strings"

	"stripwright/geometry/length"
)

// mostRolls is how many times as long as the widest roll is wide a drawn part may
// be: beyond it the drawing is likely to be in another unit.
const mostRolls = 100

// drawingStated says in a note what the job states on how its drawing is read.
func (r *reading) drawingStated() {
	o := r.partDrawing.options
	var said []string
	switch len(o.Layers) {
	case 0:
	case 1:
		said = append(said, "layer "+o.Layers[0])
	default:
		said = append(said, "layers "+strings.Join(o.Layers, ", "))
	}
	if o.Units != "" {
		said = append(said, "drawing_units "+o.Units)
	}
	if o.JoinMM > 0 {
		said = append(said, "join "+length.MM(o.JoinMM))
	}
	if o.Which > 0 {
		said = append(said, fmt.Sprintf("which %d", o.Which))
	}
	if len(said) > 0 {
		r.note(r.partDrawing.at, "drawing", "%s is read as the job states: %s", r.partDrawing.name, strings.Join(said, "; "))
	}
}

// drawnSize stops at a drawn part that is so long beside its rolls that the unit
// of the drawing must be wrong, until the job states that unit.
func (r *reading) drawnSize() {
	if r.partDrawing == nil || r.partDrawing.options.Units != "" || r.inDrawing.Empty() {
		return
	}
	widest := 0.0
	for _, f := range r.job.Fabrics {
		for _, roll := range f.Rolls {
			widest = max(widest, roll.WidthMM)
		}
	}
	w, h := r.inDrawing.Size()
	if widest == 0 || max(w, h) <= mostRolls*widest {
		return
	}
	r.refuse(r.partDrawing.at, ruleSize, "write drawing_units: with the unit of the drawing (mm, cm, m, in, ft), and it is taken at its word",
		"the part measures %s by %s (%s by %s), more than %d times the width of the widest roll, %s",
		length.MM(w), length.MM(h), length.Inches(w), length.Inches(h), mostRolls, length.MM(widest))
}
