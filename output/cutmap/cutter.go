package cutmap

import (
	"math"
	"strconv"

	"github.com/paulmach/orb"

	"stripwright/laminate"
	"stripwright/output/sheet"
)

// Layers of a cutter's file, in the order in which they are drawn.
var cutterLayers = []string{"TEXT", "MARK", "NOTCH", "GRAIN", "ROLL", "DATUM", "SCALE"}

// Layers of the cuts: of a sound plan, and of one that failed its check.
const (
	cutLayer    = "CUT"
	barredLayer = laminate.BarredLayer
)

// Strokes of a cutter's file are thin: the cutter follows their middle.
const (
	stroke   = 0.3
	scaleBar = 100.0
)

// CutLayer names the layer of the cuts: "CUT", or "DO-NOT-CUT" for a plan that
// failed its check.
func CutLayer(p laminate.Plan) string {
	if len(sheet.Faults(p.Checks)) > 0 {
		return barredLayer
	}
	return cutLayer
}

// Cutter draws a length for a cutter, strokes only, in the roll frame: u = 0 at
// the free end, v = 0 at the right-hand edge of the usable width.
func Cutter(p laminate.Plan, l Length, sha string) sheet.Scene {
	s := sheet.Scene{Title: "Cut map " + name(l), About: mapWords(p, l)}
	for _, layer := range cutterLayers {
		s.Layer(layer)
	}
	low, high := -l.Edge(), l.Roll.WidthMM-l.Edge()
	s.Box = orb.Bound{Min: orb.Point{-20, low - 90}, Max: orb.Point{math.Max(l.Long(), 400) + 20, high + 20}}
	pen := sheet.Solid(sheet.Black, stroke)
	s.Layer("ROLL").Box(pen, sheet.Fill{}, orb.Bound{Min: orb.Point{0, low}, Max: orb.Point{l.Long(), high}})
	drawDatum(s.Layer("DATUM"), pen, orb.Point{})
	drawScale(s.Layer("SCALE"), pen, orb.Point{0, low - 20})
	drawGrain(s.Layer("GRAIN"), pen, orb.Point{140, low - 20}, 120)
	writeHead(s.Layer("TEXT"), headLines(p, l, sha), orb.Point{0, low - 34})
	for _, piece := range l.Pieces {
		label(s.Layer("TEXT"), piece, 10)
	}
	s.Layer(CutLayer(p)).Shapes = strokes(Cuts(l.Pieces))
	return s
}

func strokes(lines []sheet.Line) []sheet.Shape {
	shapes := make([]sheet.Shape, len(lines))
	for i, l := range lines {
		shapes[i] = sheet.Shape{Lines: []sheet.Line{l}, Pen: sheet.Solid(sheet.Black, stroke)}
	}
	return shapes
}

// drawDatum marks where u and v begin, with lines away from the cloth.
func drawDatum(l *sheet.Layer, pen sheet.Pen, at orb.Point) {
	l.Stroke(pen, at, orb.Point{at[0] - 15, at[1]})
	l.Stroke(pen, at, orb.Point{at[0], at[1] - 10})
}

// drawScale draws a bar of 100 mm to measure before cutting.
func drawScale(l *sheet.Layer, pen sheet.Pen, at orb.Point) {
	end := orb.Point{at[0] + scaleBar, at[1]}
	l.Stroke(pen, at, end)
	for _, p := range []orb.Point{at, end} {
		l.Stroke(pen, orb.Point{p[0], p[1] - 4}, orb.Point{p[0], p[1] + 4})
	}
	l.Write(sheet.Text{At: orb.Point{at[0] + 50, at[1] + 2}, Height: 6, Align: sheet.Middle, Pen: true, Words: "100 mm"})
}

// drawGrain draws an arrow with two ends along the roll.
func drawGrain(l *sheet.Layer, pen sheet.Pen, at orb.Point, long float64) {
	end := orb.Point{at[0] + long, at[1]}
	l.Stroke(pen, at, end)
	for _, tip := range []struct {
		at  orb.Point
		way float64
	}{{at, 1}, {end, -1}} {
		l.Stroke(pen, orb.Point{tip.at[0] + float64(8*tip.way), tip.at[1] + 3}, tip.at, orb.Point{tip.at[0] + float64(8*tip.way), tip.at[1] - 3})
	}
	l.Write(sheet.Text{At: orb.Point{at[0] + float64(long/2), at[1] + 2}, Height: 6, Align: sheet.Middle, Pen: true, Words: "GRAIN"})
}

func writeHead(l *sheet.Layer, lines []string, at orb.Point) {
	for i, words := range lines {
		l.Write(sheet.Text{At: orb.Point{at[0], at[1] - float64(12*float64(i))}, Height: 7, Pen: true, Words: words})
	}
}

// headLines says what lies on the table, below the cloth.
func headLines(p laminate.Plan, l Length, sha string) []string {
	if len(sha) > sheet.HashShown {
		sha = sha[:sheet.HashShown]
	}
	return []string{
		sheet.Verdict(p) + "  PLAN " + sha,
		"JOB " + p.Title + "  PART " + p.Part.Name + "  UNIT mm",
		name(l) + "  FABRIC " + l.Fabric.Name,
		"LAY THE ROLL FACE UP" + faceWords(l.Fabric) + "  CHECK WIDTH " + sheet.Tape(l.Roll.WidthMM, p.Units),
		"STAGGER " + sheet.Tape(l.Fabric.StaggerMM, p.Units) + "  PLIES BETWEEN " + strconv.Itoa(l.Fabric.PliesBetween),
	}
}

// name says which roll, which copy of it, and which table length.
func name(l Length) string {
	text := "ROLL " + l.Roll.Roll + "  COPY " + strconv.Itoa(l.Roll.Copy)
	if l.Of > 1 {
		text += "  TABLE LENGTH " + strconv.Itoa(l.Number) + " OF " + strconv.Itoa(l.Of)
	}
	return text
}

// faceWords adds the face in words, where the fabric has them.
func faceWords(f laminate.PlanFabric) string {
	if f.FaceIs == "" {
		return ""
	}
	return ": " + f.FaceIs + " up"
}

func mapWords(p laminate.Plan, l Length) string {
	return "Roll " + l.Roll.Roll + ", fabric " + l.Fabric.Name + ", face up, " + strconv.Itoa(len(l.Pieces)) +
		" pieces on " + sheet.Tape(l.Long(), p.Units) + "; unit mm. " + sheet.Verdict(p)
}

// label writes a piece's id where there is room in it, for a pen.
func label(l *sheet.Layer, piece laminate.Piece, most float64) {
	t := sheet.Text{Height: 1, Pen: true, Words: piece.ID}
	at, h := sheet.Spot(piece.Shape, t.Width()/1.6, most*1.6, 1)
	if h == 0 {
		b := piece.Shape.Bounds()
		at, h = orb.Point{(b.Min[0] + b.Max[0]) / 2, (b.Min[1] + b.Max[1]) / 2}, 1
	}
	t.Height = h / 1.6
	l.Write(t.Centred(at))
}
