package job

import (
	"gopkg.in/yaml.v3"

	"stripwright/geometry/length"
	"stripwright/laminate"
)

// mostPlies is the largest number of plies of a job, and of plies between.
const mostPlies = 2000

// schedule reads the plies from the tool up and numbers them.
func (r *reading) schedule(top block) {
	items, ok := r.list(top.need("schedule", "list the plies from the tool up: schedule: [{fabric: A, angle: 0}]"), "schedule", "[{fabric: A, angle: 0}, …], from the tool up")
	if !ok {
		return
	}
	for _, item := range items {
		b, ok := r.block(item, item, "ply", plyKeys)
		if !ok {
			continue
		}
		if b.has("core") {
			r.corePly(b)
			continue
		}
		ply, headings, times := r.ply(b)
		if len(r.job.Plies)+times*len(headings) > mostPlies {
			r.refuse(item, "schedule", "check times", "more than %d plies", mostPlies)
			return
		}
		for range times {
			for _, ply.Heading = range headings {
				ply.Number = len(r.job.Plies) + 1
				r.job.Plies = append(r.job.Plies, ply)
				r.plyNodes = append(r.plyNodes, item)
			}
		}
	}
}

// ply reads one entry of the schedule: what its plies have in common, the
// directions of their rolls, from the tool up, and how often all of them are
// laid.
func (r *reading) ply(b block) (ply laminate.Ply, headings []float64, times int) {
	ply.Blank = r.job.Part.Blank
	if n := b.need("fabric", "write the name of a fabric"); n != nil {
		ply.Fabric, _ = r.name(n, "fabric", mostName)
		r.known(n, "fabric", ply.Fabric, r.fabricNames(), r.fabricNodes[ply.Fabric] != nil)
	}
	headings = r.headings(b, ply.Fabric)
	if n := b.value("face"); n != nil {
		side, _ := r.choice(n, "face", laminate.FaceUp, laminate.FaceDown)
		ply.FaceDown = side == laminate.FaceDown
	}
	if n := b.value("outline"); n != nil {
		r.plyOutline(n, &ply)
	}
	times = 1
	if n := b.value("times"); n != nil {
		if t, ok := r.count(n, "times", 1, mostPlies); ok {
			times = t
		}
	}
	return ply, headings, times
}

// plyOutline gives a ply the blank of a named outline.
func (r *reading) plyOutline(n *yaml.Node, ply *laminate.Ply) {
	name, ok := r.name(n, "outline", mostName)
	if !ok {
		return
	}
	o, known := r.outlines[name]
	r.known(n, "outline", name, r.outlineSeen, known)
	o.used = true
	if known {
		r.outlines[name] = o
	}
	ply.Outline, ply.Blank = name, o.blank
}

// known refuses a name that nothing in the job has.
func (r *reading) known(n *yaml.Node, rule, name string, names []string, found bool) {
	if found || name == "" {
		return
	}
	cure := "write it under " + rule + "s, or correct the name"
	if near := length.Nearest(name, names); near != "" {
		cure = "did you mean " + near + "?"
	}
	r.refuse(n, rule, cure, "there is no %s %q", rule, name)
}

func (r *reading) fabricNames() []string {
	var names []string
	for _, f := range r.job.Fabrics {
		names = append(names, f.Name)
	}
	return names
}

// heading brings a direction into (-180, 180].
func heading(deg float64) float64 {
	for deg > 180 {
		deg -= 360
	}
	for deg <= -180 {
		deg += 360
	}
	return deg + 0
}
