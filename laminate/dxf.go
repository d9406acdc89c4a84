package laminate

import "regexp"

// Releases of DXF that drawings for a cutter are written in.
const (
	R12   = "r12"   // AC1009, which every cutter reads
	R2000 = "r2000" // AC1015
)

// DXF says how the drawings for a cutter are written. The zero value is R12 with
// the layer names of CutterLayers.
type DXF struct {
	Release string      `json:"release"`
	Layers  []LayerName `json:"layers"` // other names for layers
}

// LayerName is the name that a layer of CutterLayers gets in a drawing.
type LayerName struct {
	Layer string `json:"layer"`
	Name  string `json:"name"`
}

// BarredLayer holds the cuts of a plan that failed its check.
const BarredLayer = "DO-NOT-CUT"

// CutterLayers lists the layers of a drawing for a cutter. The cuts of a plan that
// failed its check lie on BarredLayer instead, whatever the others are called.
func CutterLayers() []string {
	return []string{"TEXT", "MARK", "NOTCH", "GRAIN", "ROLL", "DATUM", "SCALE", "CUT"}
}

// NumberedLayers gives layer numbers as in ASTM D6673 (D6673-10, from copies):
// 1 boundary, 4 notch, 7 grain line, 8 internal line that is not cut, 15 text. What
// the standard has no number for is an internal line here.
func NumberedLayers() []LayerName {
	return []LayerName{
		{"TEXT", "15"}, {"MARK", "8"}, {"NOTCH", "4"}, {"GRAIN", "7"}, {"ROLL", "8"}, {"DATUM", "8"}, {"SCALE", "8"}, {"CUT", "1"},
	}
}

var layerText = regexp.MustCompile(`^[A-Za-z0-9_$-]{1,31}$`)

// IsLayerName says whether every reader of DXF takes a text as the name of a layer.
func IsLayerName(text string) bool { return layerText.MatchString(text) }

// With gives a copy of how drawings are written, with the release and numbered
// layers where they are asked for.
func (d *DXF) With(release string, numbered bool) *DXF {
	if release == "" && !numbered {
		return d
	}
	out := DXF{Release: R12, Layers: []LayerName{}}
	if d != nil {
		out = *d
	}
	if release != "" {
		out.Release = release
	}
	if numbered {
		out.Layers = NumberedLayers()
	}
	return &out
}
