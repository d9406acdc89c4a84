package job

import (
	"strings"

	"gopkg.in/yaml.v3"

	"stripwright/geometry/length"
	"stripwright/laminate"
)

// fabrics reads the cloth and its rolls, in the order of the file.
func (r *reading) fabrics(top block) {
	r.fabricNodes, r.widthNodes = map[string]*yaml.Node{}, map[string][]*yaml.Node{}
	n := top.need("fabrics", "write fabrics: with a name, weight and rolls")
	if n == nil {
		return
	}
	for _, named := range r.named(n, "fabrics", "fabric") {
		r.fabricNodes[named.key.Value] = named.key
		if b, ok := r.block(named.value, named.key, "fabric "+named.key.Value, fabricKeys); ok {
			r.job.Fabrics = append(r.job.Fabrics, r.fabric(b, named.key.Value))
		}
	}
}

func (r *reading) fabric(b block, name string) laminate.Fabric {
	f := laminate.Fabric{Name: name, Turn: true}
	if n := b.need("weight", "write the areal weight of the data sheet: weight: 450 g/m2"); n != nil {
		var ok bool
		if f.WeightGSM, ok = r.weight(n, "weight"); ok && length.Bare(n.Value) {
			r.assume(n, "weight", "g/m2 for the weight %s of %s", n.Value, name)
		}
	}
	r.fibre(b, &f)
	if n := b.value("face_is"); n != nil {
		f.FaceIs, _ = r.name(n, "face_is", mostName)
	}
	if n := b.value("turn"); n != nil {
		f.Turn, _ = r.truth(n, "turn")
	} else if !b.has("turn") {
		r.assume(b.at, "turn", "that pieces of %s may be turned end for end on the roll", name)
	}
	if n := b.value("stagger"); n != nil {
		f.StaggerMM = r.stagger(n)
	}
	f.PliesBetween = -1 // until the job's own is known
	if n := b.value("plies_between"); n != nil {
		f.PliesBetween, _ = r.count(n, "plies_between", 0, mostPlies)
	}
	f.Layers = r.layers(b, f.WeightGSM)
	r.cloth(b, &f)
	if n := b.need("rolls", "list its rolls: rolls: [{id: A, width: 300}]"); n != nil {
		f.Rolls = r.rolls(n, name)
	}
	return f
}

// fibre reads the fibre and its density, which comes from the job's fibres or
// from the library where it is not written.
func (r *reading) fibre(b block, f *laminate.Fabric) {
	if n := b.value("fibre"); n != nil {
		f.Fibre, _ = r.name(n, "fibre", mostName)
	}
	f.DensityGCM3 = r.figure(b, "density", fibreDensities)
	if b.has("density") || b.has("fibre") && f.Fibre == "" {
		return
	}
	if k, ok := r.library.Fibre(f.Fibre); ok && k.DensityGCM3.Known() {
		f.DensityGCM3 = k.DensityGCM3
		if k.DensityGCM3.Basis == laminate.Assumed {
			r.assume(b.keys["fibre"], "density", "fibre density %v g/cm3 of %s, a table value", k.DensityGCM3.Value, k.Name)
		}
		return
	}
	switch near := length.Nearest(strings.ToLower(f.Fibre), r.library.FibreNames()); {
	case f.Fibre == "":
		r.note(b.at, "density", "%s has neither fibre nor density: no thickness can be worked out", f.Name)
	case near != "":
		r.note(b.keys["fibre"], "density", "no density is known for fibre %q (did you mean %s?): write density: where thickness is wanted", f.Fibre, near)
	default:
		r.note(b.keys["fibre"], "density", "no density is known for fibre %q: write density: where thickness is wanted", f.Fibre)
	}
}

// stagger reads a stagger, which is above zero.
func (r *reading) stagger(n *yaml.Node) float64 {
	mm, ok := r.length(n, "stagger")
	switch {
	case !ok:
	case mm <= 0:
		r.refuse(n, "stagger", "write the least distance between joints, above 0", "stagger %s would let joints lie on one another", r.both(n, mm))
	case mm > 2000:
		r.refuse(n, "stagger", r.unitCure(n), "stagger %s is out of reason: up to 2000 mm is taken", r.both(n, mm))
	case mm < 10:
		r.note(n, "stagger", "a stagger of %s is small (13 mm to 100 mm are usual; common practice, no source): is the unit right?", length.MM(mm))
	}
	return mm
}
