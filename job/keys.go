package job

// The keys of a job file, block by block, and those that a later version will
// read.
var (
	topKeys = keySet{
		known: []string{
			"title", "units", "part", "outlines", "fabrics", "cores", "schedule", "joints", "resin", "consumables", "order", "table", "measured",
			"fibres", "resins", "dxf", "search",
		},
		later: []string{"measure_along"},
	}
	partKeys = keySet{
		known: []string{"name", "outline", "layer", "drawing_units", "join", "which", "trim", "corners", "drawn_from", "zero", "load"},
		later: []string{"copies", "mirrored"},
	}
	shapeKeys  = keySet{known: []string{"points", "holes", "rectangle", "corner", "circle", "ellipse", "at"}}
	patchKeys  = keySet{known: []string{"points", "holes", "rectangle", "corner", "circle", "ellipse", "at", "layer"}}
	fabricKeys = keySet{known: []string{
		"weight", "fibre", "density", "form", "face_is", "layers", "fibre_volume", "fibre_mass", "elastic", "turn", "stagger", "plies_between", "rolls",
	}}
	layerKeys = keySet{known: []string{"angle", "weight"}}
	rollKeys  = keySet{known: []string{"id", "width", "bad_edge", "length", "count", "price", "remnant"}}
	plyKeys   = keySet{known: []string{"fabric", "angle", "code", "face", "times", "outline", "core"}}
	jointKeys = keySet{known: []string{
		"stagger", "plies_between", "narrowest", "cutting_gap", "laying_tolerance", "max_gap", "ends", "style", "end_joints", "keep_clear",
	}}
	clearKeys = keySet{known: []string{
		"points", "rectangle", "corner", "circle", "ellipse", "at", "layer", "holes_up_to", "grow", "angles",
	}}
	resinKeys = keySet{known: []string{
		"name", "density", "fibre_volume", "fibre_mass", "resin_ratio", "band", "lines_and_pot", "spare", "mix", "batch", "sold_by", "on_hand", "price",
	}}
	mixKeys        = keySet{known: []string{"by", "parts", "densities"}}
	consumableKeys = keySet{known: []string{
		"kind", "margin", "uptake", "test", "layers", "pleats", "pleat", "width", "length", "sold_by", "spare", "on_hand", "price",
	}}
	testKeys      = keySet{known: []string{"area", "size", "dry", "wet"}}
	coreKeys      = keySet{known: []string{"thickness", "density", "uptake", "sheet", "on_hand", "price"}}
	measuredKeys  = keySet{known: []string{"weight", "area", "size", "thickness", "dry", "cloth_band", "scale_band"}}
	elasticKeys   = keySet{known: []string{"e1", "e2", "g12", "nu12", "alpha1", "alpha2"}}
	fibreKeys     = keySet{known: []string{"density", "e1", "e2", "g12", "nu12", "alpha1", "alpha2"}}
	resinKindKeys = keySet{known: []string{"density", "e", "nu", "alpha"}}

	orderKeys  = keySet{known: []string{"spare", "sold_by"}}
	dxfKeys    = keySet{known: []string{"release", "layers"}}
	searchKeys = keySet{known: []string{"effort", "seed"}}
)

// homeOf gives the block that a key belongs to, "" when none or when several
// hold it.
func homeOf(key string) string {
	home := ""
	for _, b := range homes {
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
	for _, b := range supplies {
		if home == "" && b.set.has(key) {
			home = b.name
		}
	}
	return home
}

// home is a block with its name in messages.
type home struct {
	name string
	set  keySet
}

// Blocks that a key may belong to. What a supply has in common with the cloth,
// as a width, belongs under the cloth.
var (
	homes = []home{
		{"the job itself", topKeys}, {"part", partKeys}, {"a fabric", fabricKeys}, {"a roll", rollKeys}, {"schedule", plyKeys},
		{"joints", jointKeys}, {"keep_clear", clearKeys}, {"order", orderKeys}, {"search", searchKeys}, {"dxf", dxfKeys},
	}
	supplies = []home{
		{"resin", resinKeys}, {"mix of the resin", mixKeys}, {"a consumable", consumableKeys}, {"a core", coreKeys}, {"measured", measuredKeys},
	}
)

// meant leads from words of the workshop to the key that says the same.
var meant = map[string]string{
	"plies": "schedule", "laminate": "schedule", "layup": "schedule", "lay_up": "schedule", "materials": "fabrics", "cloth": "fabric",
	"material": "fabric", "name": "title", "allowance": "trim", "margin": "trim", "areal_weight": "weight", "gsm": "weight",
	"fiber": "fibre", "selvedge": "bad_edge", "selvage": "bad_edge", "repeat": "times", "quantity": "count", "number": "id", "roll": "id",
	"direction": "angle", "side": "face", "min_edge_strip": "narrowest", "keepouts": "keep_clear", "no_joints": "keep_clear",
	"hardener": "mix", "ratio": "mix", "pot": "lines_and_pot", "offset": "stagger", "radius": "circle", "diameter": "circle", "centre": "at", "center": "at", "waste": "spare",
}
