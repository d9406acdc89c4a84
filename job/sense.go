package job

import (
	"math"

	"stripwright/geometry/length"
	"stripwright/laminate"
)

// sense judges what only the whole job can tell: from which side it is drawn,
// which face is up, and whether the rolls are of a size with the part.
func (r *reading) sense() {
	r.sides()
	r.faces()
	r.coreSense()
	for _, f := range r.job.Fabrics {
		if !r.uses(f.Name) {
			r.note(r.fabricNodes[f.Name], "fabrics", "fabric %s is in no ply: nothing is cut from it", f.Name)
			continue
		}
		r.wideEnough(f)
		r.manyStrips(f)
	}
	for _, name := range r.outlineSeen {
		if o := r.outlines[name]; !o.used {
			r.note(o.at, "outlines", "outline %s is in no ply", name)
		}
	}
}

// sides asks for drawn_from where the wrong side would swap angles or faces.
func (r *reading) sides() {
	if r.drawnFrom != nil || r.partNode == nil {
		return
	}
	for i, p := range r.job.Plies {
		why := ""
		switch {
		case p.Angle().Oblique():
			why = "lies at an oblique angle"
		case p.FaceDown:
			why = "lies face down"
		default:
			continue
		}
		r.refuse(r.partNode, ruleMissing, "write drawn_from: laying side, or drawn_from: tool side",
			"part has no \"drawn_from\", and ply %d (line %d) %s: seen from the other side it would be the other hand", p.Number, r.plyNodes[i].Line, why)
		return
	}
	r.assume(r.partNode, "drawn_from", "that it is drawn from the laying side: all plies lie face up at 0° or 90°")
}

// faces asks for the name of a face where it matters which one is up.
func (r *reading) faces() {
	for _, f := range r.job.Fabrics {
		at := r.fabricNodes[f.Name]
		if f.FaceIs != "" {
			continue
		}
		cure := "write which face the fabric's face is, in words: face_is: stitch-loop side"
		if down, ok := r.faceDown(f.Name); ok {
			r.refuse(at, ruleMissing, cure, "fabric %s has no \"face_is\", and ply %d (line %d) lies face down", f.Name, down, r.plyNodes[down-1].Line)
		} else if r.uses(f.Name) && !twoSided(f.Layers) {
			r.refuse(at, ruleMissing, cure, "fabric %s has no \"face_is\", and its layers are not the same from both sides", f.Name)
		}
	}
}

func (r *reading) faceDown(fabric string) (ply int, found bool) {
	for _, p := range r.job.Plies {
		if p.Fabric == fabric && p.FaceDown {
			return p.Number, true
		}
	}
	return 0, false
}

func (r *reading) uses(fabric string) bool {
	for _, p := range r.job.Plies {
		if p.Fabric == fabric {
			return true
		}
	}
	return false
}

// wideEnough refuses a narrowest piece that no roll is wide enough for.
func (r *reading) wideEnough(f laminate.Fabric) {
	widest := 0.0
	for _, roll := range f.Rolls {
		widest = max(widest, roll.UsableMM())
	}
	if narrowest := r.job.Rules.NarrowestMM; len(f.Rolls) > 0 && widest > 0 && widest < narrowest {
		at := r.fabricNodes[f.Name]
		says := "narrowest"
		if r.narrowest == nil {
			says = "narrowest, which is not written and assumed,"
		}
		r.refuse(at, "narrowest", "lower narrowest, or use a wider roll", "%s is %s, and the widest roll of %s is %s between its bad edges",
			says, length.MM(narrowest), f.Name, length.MM(widest))
	}
}

// Strips across a part beyond which the roll's unit is asked for, and the width
// above which they are only noted.
const (
	manyStrips = 100
	slitTape   = 50.0
)

// manyStrips holds rolls against the part: a roll of 12 for a part of 1370 is
// one of 12 in. A narrow roll whose unit is written with it is taken.
func (r *reading) manyStrips(f laminate.Fabric) {
	w, h := r.job.Part.Blank.Size()
	long := math.Hypot(w, h)
	for i, roll := range f.Rolls {
		at := r.widthNodes[f.Name][i]
		if roll.WidthMM == 0 || long <= manyStrips*roll.WidthMM {
			continue
		}
		says := "roll %s of %s is %s wide and the part %s across: more than 100 strips a ply"
		args := []any{roll.ID, f.Name, length.MM(roll.WidthMM), length.MM(math.Round(long))}
		other := " in"
		if !r.units.Metric() {
			other = " ft"
		}
		if roll.WidthMM < slitTape && length.Bare(at.Value) {
			r.refuse(at, "width", "check it, and write its unit with it: width: "+at.Value+other+", or width: "+length.In(roll.WidthMM, r.units), says, args...)
		} else {
			r.note(at, "width", says, args...)
		}
	}
}
