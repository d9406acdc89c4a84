package drawing_test

import (
	"fmt"
	"runtime"
	"strings"
	"testing"

	"stripwright/geometry/drawing"
)

// dxfOf makes a text DXF of entities; header and tables are optional.
func dxfOf(header, tables, blocks, entities string) []byte {
	section := func(name, body string) string {
		if body == "" {
			return ""
		}
		return "0 SECTION 2 " + name + " " + body + " 0 ENDSEC "
	}
	text := section("HEADER", header) + section("TABLES", tables) + section("BLOCKS", blocks) +
		section("ENTITIES", entities) + "0 EOF"
	return []byte(strings.Join(strings.Fields(text), "\n") + "\n")
}

const inMM = "9 $INSUNITS 70 4"

const squareDXF = "0 LWPOLYLINE 8 cut 90 4 70 1 10 0 20 0 10 100 20 0 10 100 20 100 10 0 20 100"

func svgOf(body string) []byte {
	return []byte(`<svg xmlns="http://www.w3.org/2000/svg" width="900mm" height="600mm" viewBox="0 0 900 600">` + body + `</svg>`)
}

// One-line drawings: what must be read, and what must be said.
func TestReadSmall(t *testing.T) {
	const plate = `<rect x="100" y="100" width="300" height="200"/>`
	cases := []struct {
		name string
		data []byte
		o    drawing.Options
		area float64 // 0: refused
		says string
	}{
		{"unit is the user's", dxfOf(inMM, "", "", squareDXF), drawing.Options{Units: "in"}, 6451600, "read with units of in as stated"},
		{"unit of no part", dxfOf("9 $INSUNITS 70 18", "", "", squareDXF), drawing.Options{}, 0, "no unit for a part"},
		{"unit unknown to the user", dxfOf(inMM, "", "", squareDXF), drawing.Options{Units: "furlong"}, 0, `"furlong" is not a unit`},
		{"layer in other letters", dxfOf(inMM, "", "", squareDXF), drawing.Options{Layers: []string{"CUT"}}, 10000, ""},
		{"layer that is not there", dxfOf(inMM, "", "", squareDXF), drawing.Options{Layers: []string{"trim"}}, 0, "name one of these: cut"},
		{"join of nothing sensible", dxfOf(inMM, "", "", squareDXF), drawing.Options{JoinMM: -1}, 0, "cannot be -1 mm"},
		{"outline that is not there", dxfOf(inMM, "", "", squareDXF), drawing.Options{Which: 2}, 0, "choose one from 1 to 1"},
		{"vertex lost", dxfOf(inMM, "", "", strings.Replace(squareDXF, "90 4", "90 5", 1)), drawing.Options{}, 0, "5 vertices, 4 are there"},
		{"3D polyline", dxfOf(inMM, "", "", "0 POLYLINE 8 0 70 8 0 VERTEX 10 0 20 0 0 SEQEND"), drawing.Options{}, 0, "3D polyline is not read"},
		{"region", dxfOf(inMM, "", "", squareDXF+" 0 REGION 8 cut"), drawing.Options{}, 0, "REGION is not read"},
		{"region on another layer", dxfOf(inMM, "", "", squareDXF+" 0 REGION 8 model"), drawing.Options{Layers: []string{"cut"}}, 10000, "1 REGION"},
		{"tilted circle", dxfOf(inMM, "", "", "0 CIRCLE 8 0 10 0 20 0 40 50 210 0 220 1 230 0"), drawing.Options{}, 0, "tilted out of the drawing plane"},
		{"block that is not there", dxfOf(inMM, "", "", "0 INSERT 8 0 2 plate 10 0 20 0"), drawing.Options{}, 0, `block "plate" is not in the file`},
		{"block that holds itself", dxfOf(inMM, "", "0 BLOCK 2 a 10 0 20 0 0 INSERT 2 a 10 1 20 1 0 ENDBLK", "0 INSERT 2 a 10 0 20 0"), drawing.Options{}, 0, "holds itself"},
		{"no end", []byte("0\nSECTION\n2\nENTITIES\n0\nENDSEC\n"), drawing.Options{}, 0, "without its EOF"},
		{"no group code", []byte("0\nSECTION\n2\nENTITIES\nLINE\n0\n"), drawing.Options{}, 0, `:5: syntax: "LINE" is not a group code`},
		{"lines branch", dxfOf(inMM, "", "", "0 LINE 10 0 20 0 11 9 21 0 0 LINE 10 0 20 0 11 0 21 9 0 LINE 10 0 20 0 11 9 21 9"), drawing.Options{}, 0, "at (0, 0): branch"},
		{"spline through points", dxfOf(inMM, "", "", "0 SPLINE 70 1 71 3 74 4 11 100 21 0 11 0 21 100 11 -100 21 0 11 0 21 -100"), drawing.Options{}, 31000, "the smooth cubic"},
		{"PDF", []byte("%PDF-1.7"), drawing.Options{}, 0, "PDF"},
		{"nothing", nil, drawing.Options{}, 0, "empty"},
		{"prose", []byte("the outline is 700 by 500"), drawing.Options{}, 0, "neither DXF nor SVG"},
		{"XML, not SVG", []byte("<html><body/></html>"), drawing.Options{}, 0, "no SVG"},
		{"hidden by a style sheet", svgOf(`<style>.off{display:none} #b, rect.x { opacity: 0 }</style><circle class="off" r="9"/><rect id="b" width="5" height="5"/>` + plate), drawing.Options{}, 60000, "1 circle not displayed"},
		{"style sheet too clever", svgOf(`<style>g ~ circle{display:none}</style><g><circle r="9"/></g>` + plate), drawing.Options{}, 0, `"g ~ circle" is not read`},
		{"name space by an entity", []byte(`<!DOCTYPE svg [<!ENTITY ns "http://www.w3.org/2000/svg">]><svg xmlns="&ns;" width="900mm" viewBox="0 0 900 600">` + plate + `</svg>`), drawing.Options{}, 60000, ""},
		{"entity of entities", []byte(`<!DOCTYPE svg [<!ENTITY a "1"><!ENTITY b "&a;&a;">]><svg width="900mm" viewBox="0 0 900 600">` + plate + `</svg>`), drawing.Options{}, 0, "made of entities"},
		{"entity from a file", []byte(`<!DOCTYPE svg [<!ENTITY a SYSTEM "a.txt">]><svg width="900mm" viewBox="0 0 900 600">` + plate + `</svg>`), drawing.Options{}, 0, "entities"},
		{"unpainted", svgOf(`<rect width="900" height="600" fill="none"/>` + plate), drawing.Options{}, 60000, "1 rect without fill or stroke"},
		{"moved by style", svgOf(`<g style="transform: scale(2)">` + plate + `</g>`), drawing.Options{}, 240000, ""},
		{"turned by style", svgOf(`<g style="rotate: 20deg">` + plate + `</g>`), drawing.Options{}, 0, "rotate set by style is not read"},
		{"foreign element", svgOf(`<x:rect xmlns:x="urn:x" width="5" height="5"/>` + plate), drawing.Options{}, 60000, ""},
		{"use of itself", svgOf(`<g id="a"><use href="#a"/></g>` + plate), drawing.Options{}, 0, "which holds this use"},
		{"use from elsewhere", svgOf(`<use href="parts.svg#a"/>` + plate), drawing.Options{}, 0, "not in the file"},
		{"cut by a clip", svgOf(`<g clip-path="url(#c)">` + plate + `</g>`), drawing.Options{}, 0, "cut by the clip-path url(#c)"},
		{"negative width", svgOf(`<rect width="-5" height="5"/>` + plate), drawing.Options{}, 0, "width is negative"},
		{"odd polygon", svgOf(`<polygon points="0,0 9,0 9"/>` + plate), drawing.Options{}, 0, "the last one has no y"},
		{"bad transform", svgOf(`<g transform="rotate(5, 6)">` + plate + `</g>`), drawing.Options{}, 0, "rotate with 2 numbers"},
		{"chosen by id", svgOf(`<g id="cut">` + plate + `</g><g id="old"><rect width="50" height="50"/></g>`), drawing.Options{Layers: []string{"cut"}}, 60000, ""},
		{"no size", []byte(`<svg xmlns="http://www.w3.org/2000/svg">` + plate + `</svg>`), drawing.Options{}, 0, "does not say its size"},
		{"no size, but stated", []byte(`<svg xmlns="http://www.w3.org/2000/svg">` + plate + `</svg>`), drawing.Options{Units: "cm"}, 6000000, "user units of cm"},
		{"points", []byte("x_mm,y_mm\n0,0\n300,0\n300,200\n0,200\n"), drawing.Options{}, 60000, ""},
		{"points with a hole, in cm", []byte("0;0\n30;0\n30;20\n0;20\n\n1;1\n2;1\n2;2\n1;2"), drawing.Options{Units: "cm"}, 59900, ""},
		{"points by its name, DXF by what it holds", dxfOf(inMM, "", "", squareDXF), drawing.Options{}, 10000, ""},
		{"points without a unit", []byte("0,0\n300,0\n300,200\n"), drawing.Options{}, 0, "does not say its unit"},
		{"points with decimal commas", []byte("x_mm;y_mm\n0,5;0\n300;0\n300;200"), drawing.Options{}, 0, `x:2: number: "0,5;0" is not a point`},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			name := "x"
			if strings.HasPrefix(c.name, "points") {
				name = "x.csv"
			}
			d := drawing.Read(name, c.data, c.o)
			holdPromisesUnlessProblem(t, d, c.area == 0)
			if c.area > 0 && (d.AreaMM2 < c.area*0.98 || d.AreaMM2 > c.area*1.02) {
				t.Errorf("area %v, want %v", d.AreaMM2, c.area)
			}
			if c.says != "" && !strings.Contains(strings.ReplaceAll(told(d), "x.csv:", "x:"), c.says) {
				t.Errorf("must say %q, says:\n%s", c.says, told(d))
			}
		})
	}
}

func holdPromisesUnlessProblem(t *testing.T, d drawing.Drawing, refused bool) {
	t.Helper()
	if refused != (len(d.Problems) > 0) {
		t.Errorf("refused: %v, want %v\n%s", !refused, refused, told(d))
	}
	holdPromises(t, d)
}

func TestWhichPicksOne(t *testing.T) {
	data := readFile(t, "dxf_two_parts.dxf")
	sum := 0.0
	for which := 1; which <= 2; which++ {
		d := drawing.Read("two.dxf", data, drawing.Options{Which: which})
		if len(d.Regions) != 1 {
			t.Fatalf("which %d: %d regions", which, len(d.Regions))
		}
		sum += d.AreaMM2
	}
	if both := drawing.Read("two.dxf", data, drawing.Options{}).AreaMM2; sum != both {
		t.Errorf("the two have %v mm² together, all %v", sum, both)
	}
}

// Files made to fill the memory or the time are refused or read, but both
// within bounds.
func TestHostile(t *testing.T) {
	many := func(n int, f func(i int) string) string {
		var b strings.Builder
		for i := range n {
			b.WriteString(f(i))
		}
		return b.String()
	}
	nested := many(20, func(i int) string {
		return fmt.Sprintf(" 0 BLOCK 2 b%d 10 0 20 0", i) + strings.Repeat(fmt.Sprintf(" 0 INSERT 2 b%d 10 1 20 0", i+1), 10) + " 0 ENDBLK"
	})
	uses := many(20, func(i int) string {
		return fmt.Sprintf(`<g id="g%d">`, i) + strings.Repeat(fmt.Sprintf(`<use href="#g%d"/>`, i+1), 10) + `</g>`
	})
	cases := map[string][]byte{
		"blocks in blocks":       dxfOf(inMM, "", nested+" 0 BLOCK 2 b20 10 0 20 0 "+squareDXF+" 0 ENDBLK", "0 INSERT 2 b0 10 0 20 0"),
		"an array of arrays":     dxfOf(inMM, "", "0 BLOCK 2 a 10 0 20 0 0 ENDBLK", "0 INSERT 2 a 10 0 20 0 70 32767 71 32767 44 1 45 1"),
		"circles past counting":  dxfOf(inMM, "", "", strings.Repeat(" 0 CIRCLE 10 0 20 0 40 1e10", 300)),
		"uses in uses":           svgOf(`<defs>` + uses + `<rect id="g20" width="5" height="5"/></defs><use href="#g0"/>`),
		"groups past depth":      svgOf(strings.Repeat("<g>", 100000) + strings.Repeat("</g>", 100000)),
		"lines in one place":     dxfOf(inMM, "", "", strings.Repeat(" 0 LINE 10 0 20 0 11 100 21 100 0 LINE 10 0 20 0 11 100 21 0", 20000)),
		"ends in one place":      dxfOf(inMM, "", "", many(10000, func(i int) string { return fmt.Sprintf(" 0 LINE 10 0 20 0 11 %d 21 100", i) })),
		"gaps past counting":     dxfOf(inMM, "", "", many(10000, func(i int) string { return fmt.Sprintf(" 0 LINE 10 %g 20 0 11 %d 21 100", float64(i)*1e-6, i) })),
		"contours past counting": svgOf(many(30000, func(i int) string { return fmt.Sprintf(`<rect x="%d" y="%d" width=".5" height=".5"/>`, i%173, i/173) })),
		"names past counting":    dxfOf(inMM, "", "", squareDXF+many(50000, func(i int) string { return fmt.Sprintf(" 0 KIND%d 8 LAYER%d", i, i) })),
	}
	for name, data := range cases {
		t.Run(name, func(t *testing.T) {
			var before, after runtime.MemStats
			runtime.ReadMemStats(&before)
			d := drawing.Read("hostile", data, drawing.Options{})
			runtime.ReadMemStats(&after)
			holdPromises(t, d)
			if mib := (after.TotalAlloc - before.TotalAlloc) >> 20; mib > 1500 {
				t.Errorf("%d MiB were asked for in all", mib)
			}
			if len(told(d)) > 20000 {
				t.Errorf("the report has %d letters", len(told(d)))
			}
		})
	}
}

func BenchmarkRead(b *testing.B) {
	for _, file := range []string{"dxf_100k_points.dxf", "dxf_bolt_holes.dxf", "svg_bezier_outline.svg"} {
		b.Run(file, func(b *testing.B) {
			data := readFile(b, file)
			b.ReportAllocs()
			for b.Loop() {
				if d := drawing.Read(file, data, drawing.Options{}); len(d.Problems) > 0 {
					b.Fatal(told(d))
				}
			}
		})
	}
}
