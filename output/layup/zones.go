package layup

import (
	"math"
	"strconv"
	"strings"

	"github.com/paulmach/orb"

	"stripwright/laminate"
	"stripwright/laminate/content"
	"stripwright/output/sheet"
)

// Measures of the list of zones beside the map, in units.
const (
	zoneRow  = 25.0
	zoneHead = 26.0
	zoneFoot = 26.0
)

// Zones draws the zones of the finished part with their thickness and lists
// them: what lies in each and what a m² of it weighs. It is worth a sheet where
// there are two zones or more.
func Zones(p laminate.Plan, r content.Report, sha string) sheet.Scene {
	b := newBoard(p, sha)
	b.s = sheet.Scene{
		Title: "THICKNESS MAP",
		About: "The zones of the part by the plies that lie there, with their thickness, seen from the laying side; unit mm. " + sheet.Verdict(p),
	}
	for _, layer := range []string{"SHEET", "MAP", "OUTLINE", "DATUM", "TEXT", "TITLE"} {
		b.s.Layer(layer)
	}
	bottom := edgeMargin + blockHigh + 5
	high := math.Max(b.partHigh()+20, zoneHead+float64(zoneRow*float64(len(r.Zones)))+zoneFoot)
	b.layDown(edgeMargin, bottom+8, high-14)
	b.zoneAreas(r.Zones)
	b.outlines(nil)
	b.corners()
	b.zoneLabels(r.Zones)
	b.zeroArrow(edgeMargin+4, bottom+5)
	b.over(b.box(edgeMargin, bottom, edgeMargin+drawWide, bottom+high))
	b.s.Layer("TEXT").Write(b.text(edgeMargin+4, bottom+high-6, 4, true, "SEEN FROM THE LAYING SIDE"))
	b.s.Layer("TITLE").Box(sheet.Solid(sheet.Black, 0.3*b.k), sheet.Fill{}, b.box(edgeMargin, bottom, edgeMargin+drawWide, bottom+high))
	b.zoneList(edgeMargin+drawWide+8, bottom+high, r)
	head := b.text(edgeMargin, bottom+high+6, 11, true, b.s.Title+": "+sheet.Counted(len(r.Zones), "zone", "zones"))
	b.s.Layer("TITLE").Write(head.Fitted((sheetWide - 2*edgeMargin) * b.k))
	b.height = bottom + high + 25
	return b.finish(nil, nil)
}

// zoneFill tells zones apart by their hatching: the largest is plain, then ever
// closer lines, crossed after that, then the same again in heavier lines.
func (b *board) zoneFill(i int) sheet.Fill {
	if i == 0 {
		return sheet.Fill{Ink: sheet.White}
	}
	spacing := []float64{7, 4.6, 3, 2}
	i--
	return sheet.Fill{Ink: sheet.Grey, Spacing: spacing[i%len(spacing)] * b.k, Width: (0.25 + float64(0.25*float64(i/(2*len(spacing))))) * b.k, Crossed: i/len(spacing)%2 == 1}
}

// zoneAreas hatches the zones, and draws the outlines that part them.
func (b *board) zoneAreas(zones []content.Zone) {
	l := b.s.Layer("MAP")
	for i, z := range zones {
		shape := sheet.Shape{Fill: b.zoneFill(i)}
		for _, f := range z.Fields {
			corners := []orb.Point{{f.LeftLow, f.Low}, {f.RightLow, f.Low}, {f.RightHigh, f.High}, {f.LeftHigh, f.High}}
			for k := range corners {
				corners[k] = b.place(corners[k])
			}
			shape.Lines = append(shape.Lines, sheet.Line{Points: corners, Closed: true})
		}
		l.Shapes = append(l.Shapes, shape)
	}
	pen := sheet.Solid(sheet.Black, 0.4*b.k)
	drawn := map[string]bool{"": true}
	for _, y := range b.plan.Plies {
		if !drawn[y.Outline] {
			drawn[y.Outline] = true
			b.s.Layer("OUTLINE").Region(pen, sheet.Fill{}, y.Blank, b.place)
		}
	}
	for _, c := range b.plan.Cores {
		if !drawn[c.Outline] {
			drawn[c.Outline] = true
			b.s.Layer("OUTLINE").Region(pen, sheet.Fill{}, c.Blank, b.place)
		}
	}
}

// zoneList lists the zones beside the map.
func (b *board) zoneList(x, top float64, r content.Report) {
	l := b.s.Layer("TITLE")
	room := float64((sheetWide - edgeMargin - x) * b.k)
	y := top - 8
	l.Write(b.text(x, y, 4, true, "ZONES, THE LARGEST FIRST"))
	l.Write(b.text(x, y-6, 2.8, false, "thickness without voids; weight of the finished part").Fitted(room))
	y -= zoneHead - 8
	for i, z := range r.Zones {
		l.Box(sheet.Solid(sheet.Black, 0.3*b.k), b.zoneFill(i), b.box(x, y-12, x+20, y+5))
		thick, beside := b.zoneThickness(z)
		l.Write(b.text(x+25, y, 5, true, z.Name+": "+thick+beside).Fitted(room - float64(25*b.k)))
		for k, words := range b.zoneWords(z) {
			l.Write(b.text(x+25, y-6-float64(5*float64(k)), 3, false, words).Fitted(room - float64(25*b.k)))
		}
		y -= zoneRow
	}
	for _, t := range sheet.Wrapped(b.text(x, y, 2.8, false, zoneNote(r)), room, 4) {
		t.At = b.at(x, y)
		l.Write(t)
		y -= 5
	}
}

// zoneWords say what lies in a zone, and what it weighs.
func (b *board) zoneWords(z content.Zone) []string {
	var numbers []int
	for _, i := range z.Plies {
		numbers = append(numbers, b.plan.Plies[i].Ply)
	}
	lies := sheet.Counted(len(numbers), "ply: ", "plies: ") + runs(numbers)
	if len(numbers) == 0 {
		lies = "no ply"
	}
	for _, i := range z.Cores {
		lies += ", core " + b.plan.Cores[i].Name
	}
	size := sheet.Number(z.AreaMM2/1e6, 3) + " m²"
	if z.AreaMM2 < 1e4 {
		size = sheet.Number(z.AreaMM2/100, 1) + " cm²"
	}
	if z.Weighed {
		size += ", " + sheet.Number(z.MassG().Value/z.AreaMM2*1e6, 0) + " g/m², " + sheet.Number(z.MassG().Value/1000, 3) + " kg"
	}
	spread := ""
	if z.ThicknessMM.Wide() && z.Thick {
		spread = "from " + sheet.Number(z.ThicknessMM.Low, 2) + " to " + sheet.Number(z.ThicknessMM.High, 2) + " mm by the span of the fibre content"
	}
	return []string{lies, size, spread}
}

// zoneNote says what is missing, or what the figures stand on.
func zoneNote(r content.Report) string {
	if len(r.Missing) > 0 {
		return "MISSING: " + strings.Join(r.Missing, "; ")
	}
	for _, c := range r.Cloths {
		if c.FibreVolume.Basis == laminate.Assumed {
			return "The fibre content is assumed: see the stack report."
		}
	}
	return ""
}

// runs prints rising numbers: "1-4, 7".
func runs(numbers []int) string {
	var words []string
	for i := 0; i < len(numbers); {
		k := i
		for k+1 < len(numbers) && numbers[k+1] == numbers[k]+1 {
			k++
		}
		word := strconv.Itoa(numbers[i])
		if k > i {
			word += "-" + strconv.Itoa(numbers[k])
		}
		words = append(words, word)
		i = k + 1
	}
	return strings.Join(words, ", ")
}
