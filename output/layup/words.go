package layup

import (
	"math"
	"strconv"

	"github.com/paulmach/orb"

	"stripwright/geometry"
	"stripwright/laminate"
	"stripwright/output/sheet"
)

// Title names a ply by its place: "PLY 3 OF 9 FROM THE TOOL".
func Title(p laminate.Plan, ply laminate.PlanPly) string {
	return "PLY " + strconv.Itoa(ply.Ply) + " OF " + strconv.Itoa(len(p.Plies)) + " FROM THE TOOL"
}

// FaceWords says which way a ply's face looks, in the words of every sheet.
func FaceWords(ply laminate.PlanPly) string {
	if ply.Face == laminate.FaceDown {
		return "FACE DOWN"
	}
	return "FACE UP"
}

// SideWords says in the fabric's own words which face goes where.
func SideWords(p laminate.Plan, ply laminate.PlanPly) string {
	face := ""
	for _, f := range p.Fabrics {
		if f.Name == ply.Fabric {
			face = f.FaceIs
		}
	}
	switch {
	case face == "":
		return "face not named in the job"
	case ply.Face == laminate.FaceDown:
		return face + " towards the tool"
	}
	return face + " towards you"
}

// GapWords says how strips are laid, with the widest gap that the job allows, and
// that square ends are trimmed.
func GapWords(p laminate.Plan) string {
	words := "Lay to the marks, not to the neighbour."
	if p.Rules.MaxGapMM == nil {
		words += " No widest gap is stated in the job; no laps."
	} else {
		words += " Widest gap " + sheet.Tape(*p.Rules.MaxGapMM, p.Units) + "; no laps."
	}
	if p.Rules.Ends == laminate.StraightEnds {
		words += " ENDS ARE CUT SQUARE: trim them to the blank."
	}
	return words
}

// TwoPeopleMM is the length from which a piece is carried and laid by two
// people: common practice, no source.
const TwoPeopleMM = 2000.0

// HandlingWords says how a piece so long is handled: by how many people, and
// whether the table of the job is too short for it.
func HandlingWords(p laminate.Plan, longMM float64) string {
	words := "one person"
	if longMM > TwoPeopleMM {
		words = "TWO PEOPLE (over " + sheet.Tape(TwoPeopleMM, p.Units) + ")"
	}
	if t := p.Rules.TableMM; t != nil && longMM > *t {
		words += ", LONGER THAN THE TABLE (" + sheet.Tape(*t, p.Units) + ")"
	}
	return words
}

// Length gives the extent of a strip along the roll direction in mm.
func Length(ply laminate.PlanPly, s laminate.Strip) float64 {
	if s.Shape.Empty() {
		return 0
	}
	b := turnedRegion(s.Shape, geometry.PlyFrame(geometry.NewAngle(ply.AngleDeg))).Bounds()
	return b.Max[0] - b.Min[0]
}

// KeyLine is a kind of line of a drawing with its name.
type KeyLine struct {
	Pen   sheet.Pen
	Words string
}

// Key names the lines of a drawing of a ply; k is its unit of lettering in mm.
func Key(k float64) []KeyLine {
	return []KeyLine{
		{jointPen(k, math.Inf(1)), "joint of this ply"},
		{earlierPen(k), "joint below that counts"},
		{netPen(k), "net edge"},
		{blankPen(k), "blank"},
	}
}

// Dial draws 0° and the direction in which the roll runs from its free end, as an
// arrow in a circle; k is the width of its thin lines × 2 in mm.
func Dial(l *sheet.Layer, c orb.Point, radius, k float64, ply laminate.PlanPly) {
	l.Disc(sheet.Solid(sheet.Grey, 0.3*k), sheet.Fill{Ink: sheet.White}, c, radius)
	if ply.AngleDeg != 0 || ply.Reversed { // else the roll's arrow is the 0° arrow
		l.Arrow(sheet.Grey, 0.4*k, 3*k, c, orb.Point{c[0] + radius, c[1]})
	}
	l.Write(sheet.Text{At: sheet.Along(c, orb.Point{radius + float64(1.5*k), -1.8 * k}, 1), Height: 3.6 * k, Bold: true, Ink: sheet.Grey, Words: "0°"})
	heading := ply.AngleDeg
	if ply.Reversed {
		heading += 180
	}
	sin, cos := math.Sincos(heading * math.Pi / 180)
	d, r := orb.Point{cos, sin}, radius-k
	l.Arrow(sheet.Black, 1.4*k, 7*k, sheet.Along(c, d, -r), sheet.Along(c, d, r))
	words := sheet.Text{Height: 2.8 * k, Words: "roll direction " + sheet.Degrees(ply.AngleDeg)}
	l.Write(words.Centred(orb.Point{c[0], c[1] - radius - float64(5.6*k)}))
}
