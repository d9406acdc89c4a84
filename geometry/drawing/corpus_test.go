package drawing_test

import (
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/paulmach/orb"

	"stripwright/geometry/drawing"
)

const corpus = "../../testdata/drawings"

// expected is one case of the corpus: areas and sizes from formulas, confirmed
// by a second reader (ezdxf) and a second geometry engine (shapely) where they
// read the file; probes are [x, y, inside?] from the lower left corner of the
// box, y up as the drawing is seen.
type expected struct {
	File, Verdict, About string
	Outer, Holes         int
	Area, W, H           float64
	Tol                  float64
	Probes               [][3]any
	Options              string
	Says                 string // in the harder cases: words of a problem or note
}

// notYet lists the cases that are still refused; each must be, with a problem
// that names what is not read. An entry that has come to work must be deleted.
var notYet = map[string]string{}

// said is a word or place that the problem or note of a case must hold.
var said = map[string]string{
	"dxf_units_unitless_metric.dxf":     "$MEASUREMENT 1 says metric: taken as mm",
	"dxf_units_r12_none.dxf":            "does not say its unit",
	"dxf_units_contradict.dxf":          "over 20 m",
	"dxf_insert_array.dxf":              "6 separate outlines",
	"dxf_duplicate_lines.dxf":           "4 lines drawn twice",
	"dxf_gap_0p1.dxf":                   "3 gaps closed, the biggest 0.1 mm",
	"dxf_gap_0p5.dxf":                   "ends at (880, 0) and (880, 0.5), 0.5 mm apart",
	"dxf_open_contour.dxf":              "ends at (0, 0) and (0, 530), 530 mm apart",
	"dxf_hole_and_island.dxf":           "1 island:",
	"dxf_bowtie.dxf":                    "(350, 250)",
	"dxf_layers_select.dxf":             "name the layer of the outline (CONSTRUCTION, OUTLINE)",
	"dxf_layer_off_frozen.dxf":          "which is off",
	"dxf_paper_space.dxf":               "in paper space",
	"dxf_comma_decimals.dxf":            "dxf_comma_decimals.dxf:24: number: \"0,0\" has a decimal comma",
	"dxf_truncated.dxf":                 "dxf_truncated.dxf:92",
	"dxf_comments_unknown_entities.dxf": "XYZZY",
	"dxf_z_not_zero.dxf":                "heights run from z = 125 to 125.4",
	"dxf_hatch_duplicate.dxf":           "1 HATCH",
	"dxf_two_parts.dxf":                 "2 separate outlines",
	"dxf_nan.dxf":                       "dxf_nan.dxf:48: number: \"nan\" is not a number",
	"dxf_zero_area.dxf":                 "encloses no area",
	"dxf_empty.dxf":                     "no outline to lay up",
	"dxf_is_dwg.dxf":                    "DWG",
	"dxf_polyline_width.dxf":            "centre line",
	"svg_px_no_unit.svg":                "96",
	"svg_viewbox_only.svg":              "does not say its size",
	"svg_percent_size.svg":              "100%",
	"svg_em_size.svg":                   "60em",
	"svg_polyline_open.svg":             "200 mm apart",
	"svg_hidden.svg":                    "display",
	"svg_layer_groups.svg":              "name the layer of the outline (dims, old, outline)",
	"svg_entity_bomb.svg":               "entit",
	"svg_nan.svg":                       "bad",
	"svg_zero_area.svg":                 "encloses no area",
	"svg_path_syntax_error.svg":         "plate",
	"svg_truncated.svg":                 "svg_truncated.svg:2",
	"svg_text_only.svg":                 "text",
}

func readCorpus(t testing.TB) []expected {
	t.Helper()
	data, err := os.ReadFile(filepath.Join(corpus, "expected.json"))
	if err != nil {
		t.Fatal(err)
	}
	var cases []expected
	if err := json.Unmarshal(data, &cases); err != nil {
		t.Fatal(err)
	}
	return cases
}

func readFile(t testing.TB, file string) []byte {
	t.Helper()
	data, err := os.ReadFile(filepath.Join(corpus, file))
	if err != nil {
		t.Fatal(err)
	}
	return data
}

// options turns the words of a case into options.
func (c expected) options(t testing.TB) drawing.Options {
	t.Helper()
	switch layer, named := strings.CutPrefix(c.Options, "layer="); {
	case c.Options == "":
		return drawing.Options{}
	case c.Options == "layer=A which=2":
		return drawing.Options{Layers: []string{"A"}, Which: 2}
	case named:
		return drawing.Options{Layers: []string{layer}}
	case c.Options == "--units in":
		return drawing.Options{Units: "in"}
	case c.Options == "--units mm", c.Options == "user units are mm":
		return drawing.Options{Units: "mm"}
	case c.Options == "--units cm":
		return drawing.Options{Units: "cm"}
	case c.Options == "72 units per inch":
		return drawing.Options{Units: "72/in"}
	case c.Options == "96 units per inch":
		return drawing.Options{Units: "96/in"}
	case c.Options == "join tolerance 1 mm":
		return drawing.Options{JoinMM: 1}
	}
	t.Fatalf("%s: options %q are not known to the test", c.File, c.Options)
	return drawing.Options{}
}

func TestCorpus(t *testing.T) {
	cases := readCorpus(t)
	if len(cases) != 84 {
		t.Errorf("%d cases, 84 were there", len(cases))
	}
	for _, c := range cases {
		t.Run(c.File, func(t *testing.T) {
			data := readFile(t, c.File)
			plain := drawing.Read(c.File, data, drawing.Options{})
			if what, refused := notYet[c.File]; refused {
				if !strings.Contains(told(plain), what) || len(plain.Problems) == 0 {
					t.Errorf("must be refused with %q (or the entry deleted): %s", what, told(plain))
				}
				return
			}
			with := drawing.Read(c.File, data, c.options(t))
			if !strings.Contains(told(plain)+told(with), said[c.File]) {
				t.Errorf("must say %q, says:\n%s", said[c.File], told(plain)+told(with))
			}
			holdVerdict(t, c, plain, with)
			if c.Area > 0 {
				holdValues(t, c, with)
			}
		})
	}
}

func holdVerdict(t *testing.T, c expected, plain, with drawing.Drawing) {
	t.Helper()
	switch {
	case c.Verdict == "error" && (len(plain.Problems) == 0 || len(plain.Regions) > 0):
		t.Errorf("must be refused: %s", told(plain))
	case c.Verdict == "warn" && len(plain.Problems)+len(plain.Notes) == 0:
		t.Error("must tell something")
	case c.Verdict != "error" || c.Area > 0:
		if len(with.Problems) > 0 {
			t.Errorf("must be read: %s", told(with))
		}
	}
	for _, p := range append(plain.Problems, with.Problems...) {
		if p.Rule == "" || p.Where == "" || p.Text == "" || p.Cure == "" {
			t.Errorf("problem lacks a part: %+v", p)
		}
	}
}

func holdValues(t *testing.T, c expected, d drawing.Drawing) {
	t.Helper()
	tol := c.Tol
	if tol == 0 {
		tol = 1e-6
	}
	holes := 0
	for _, r := range d.Regions {
		holes += len(r.Holes)
	}
	if len(d.Regions) != c.Outer || holes != c.Holes {
		t.Errorf("%d outlines and %d holes, want %d and %d", len(d.Regions), holes, c.Outer, c.Holes)
	}
	near := func(what string, got, want float64) {
		t.Helper()
		if math.Abs(got-want) > tol*want+0.001 {
			t.Errorf("%s %.4f, want %.4f", what, got, want)
		}
	}
	near("area", d.AreaMM2, c.Area)
	near("width", d.SizeMM[0], c.W)
	near("height", d.SizeMM[1], c.H)
	for _, p := range c.Probes {
		at, inside := orb.Point{p[0].(float64), p[1].(float64)}, p[2].(bool)
		if contains(d, at) != inside {
			t.Errorf("probe %v: inside is %v, want %v", at, !inside, inside)
		}
	}
}

// contains says whether a point, measured from the lower left corner of the
// box around all regions, lies in one of them.
func contains(d drawing.Drawing, at orb.Point) bool {
	if len(d.Regions) == 0 {
		return false
	}
	b := d.Regions[0].Bounds()
	for _, r := range d.Regions {
		b = b.Union(r.Bounds())
	}
	for _, r := range d.Regions {
		if r.Contains(orb.Point{b.Min[0] + at[0], b.Min[1] + at[1]}) {
			return true
		}
	}
	return false
}

// told gives everything a drawing says, a line each.
func told(d drawing.Drawing) string {
	var out strings.Builder
	for _, p := range d.Problems {
		out.WriteString("problem: " + p.Error() + "\n")
	}
	for _, n := range d.Notes {
		out.WriteString("note: " + n.Where + ": " + n.Rule + ": " + n.Text + "\n")
	}
	return out.String()
}
