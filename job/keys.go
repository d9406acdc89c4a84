package job

// The keys of a job file, block by block, and those that a later version will
// read.
var (
	topKeys = keySet{
		known: []string{"title", "units", "part", "outlines", "fabrics", "schedule", "joints", "order", "table", "search"},
		later: []string{"resin", "consumables", "measured", "measure_along"},
	}
	partKeys = keySet{
		known: []string{"name", "outline", "layer", "drawing_units", "join", "which", "trim", "corners", "drawn_from", "zero", "load"},
		later: []string{"copies", "mirrored"},
	}
	shapeKeys  = keySet{known: []string{"points", "holes", "rectangle", "corner", "circle", "ellipse", "at"}}
	patchKeys  = keySet{known: []string{"points", "holes", "rectangle", "corner", "circle", "ellipse", "at", "layer"}}
	fabricKeys = keySet{known: []string{"weight", "fibre", "density", "face_is", "layers", "turn", "stagger", "plies_between", "rolls"}}
	layerKeys  = keySet{known: []string{"angle", "weight"}}
	rollKeys   = keySet{known: []string{"id", "width", "bad_edge", "length", "count", "price", "remnant"}}
	plyKeys    = keySet{known: []string{"fabric", "angle", "code", "face", "times", "outline"}}
	jointKeys  = keySet{known: []string{
		"stagger", "plies_between", "narrowest", "cutting_gap", "laying_tolerance", "max_gap", "style", "end_joints", "keep_clear",
	}}
	clearKeys = keySet{known: []string{
		"points", "rectangle", "corner", "circle", "ellipse", "at", "layer", "holes_up_to", "grow", "angles",
	}}
	orderKeys  = keySet{known: []string{"spare", "sold_by"}}
	searchKeys = keySet{known: []string{"effort", "seed"}}
)

// homeOf gives the block that a key belongs to, "" when none or when several
// hold it.
func homeOf(key string) string {
	home := ""
	for _, b := range []struct {
		name string
		set  keySet
	}{
		{"the job itself", topKeys}, {"part", partKeys}, {"a fabric", fabricKeys}, {"a roll", rollKeys}, {"schedule", plyKeys},
		{"joints", jointKeys}, {"keep_clear", clearKeys}, {"order", orderKeys}, {"search", searchKeys},
	} {
		if b.set.has(key) || contains(b.set.later, key) {
			if home != "" {
				if key == "stagger" || key == "plies_between" {
					return "joints"
				}
				return ""
			}
			home = b.name
		}
	}
	return home
}

// meant leads from words of the workshop to the key that says the same.
var meant = map[string]string{
	"plies": "schedule", "laminate": "schedule", "layup": "schedule", "lay_up": "schedule", "materials": "fabrics", "cloth": "fabric",
	"material": "fabric", "name": "title", "allowance": "trim", "margin": "trim", "areal_weight": "weight", "gsm": "weight",
	"fiber": "fibre", "selvedge": "bad_edge", "selvage": "bad_edge", "repeat": "times", "quantity": "count", "number": "id", "roll": "id",
	"direction": "angle", "side": "face", "min_edge_strip": "narrowest", "keepouts": "keep_clear", "no_joints": "keep_clear",
	"offset": "stagger", "radius": "circle", "diameter": "circle", "centre": "at", "center": "at", "waste": "spare",
}
