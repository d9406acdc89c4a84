package layup

import (
	"math"

	"github.com/paulmach/orb"

	"stripwright/laminate"
	"stripwright/output/sheet"
)

// plySheet is the lay-up sheet of one ply while it is drawn.
type plySheet struct {
	*board
	ply      laminate.PlanPly
	fabric   laminate.PlanFabric
	measured PlyMeasures
	within   *within    // the ply's blank
	view     *orb.Bound // what of the part is seen; nil: all
}

// Ply draws the lay-up sheet of the ply at an index of the plan, measured by
// Measure.
func Ply(p laminate.Plan, index int, measured PlyMeasures, sha string) sheet.Scene {
	ply := p.Plies[index]
	s := &plySheet{board: newBoard(p, sha), ply: ply, fabric: laminate.PlanFabric{Name: ply.Fabric}, measured: measured}
	s.within = newWithin(ply.Blank)
	for _, f := range p.Fabrics {
		if f.Name == ply.Fabric {
			s.fabric = f
		}
	}
	s.s = sheet.Scene{Title: s.plyWords(), About: s.about()}
	for _, layer := range []string{"SHEET", "STRIPS", "EARLIER", "OUTLINE", "JOINTS", "DATUM", "LEADERS", "MEASURES", "TEXT", "TITLE"} {
		s.s.Layer(layer)
	}
	s.draw()
	return s.finish([]string{ply.Fabric}, s.entries())
}

func (s *plySheet) plyWords() string { return Title(s.plan, s.ply) }

func (s *plySheet) about() string {
	return s.ply.Fabric + ", angle " + sheet.Degrees(s.ply.AngleDeg) + ", " + s.faceWords() +
		", seen from the laying side; unit mm. " + sheet.Verdict(s.plan)
}

func (s *plySheet) faceWords() string { return FaceWords(s.ply) }

func (s *plySheet) sideWords() string { return SideWords(s.plan, s.ply) }

func (s *plySheet) entries() []sheet.Entry {
	grams := "-"
	for _, q := range s.plan.Quantities {
		if q.Ply == s.ply.Ply {
			grams = sheet.Number(q.DryG, 0) + " g dry"
		}
	}
	return []sheet.Entry{
		{Caption: "THIS PLY", Words: sheet.Counted(len(s.ply.Strips), "strip", "strips") + ", " + sheet.Counted(len(s.ply.Joints), "joint", "joints"), Share: 3},
		{Caption: "WEIGHT", Words: grams, Share: 2},
		{Caption: "MEASURED ALONG", Words: "the net edge (finished part), " + sheet.MarkWords(s.plan.Units), Share: 4},
		{Caption: "FABRIC", Words: s.fabric.Name + "  " + sheet.Number(s.fabric.WeightGSM, 1) + " g/m²", Share: 4},
	}
}

// draw lays the sheet out from the bottom up: title block, further joints,
// drawing and table, heading.
func (s *plySheet) draw() {
	n, marks := len(s.measured.Joints), Marks(s.plan, s.ply)
	beside := tickHigh + 16 + patchHigh(marks)
	head := 8.0 // lines over the part
	if s.ply.Face == laminate.FaceDown {
		head = 14
	}
	high := math.Max(s.partHigh()+12+head, math.Min(beside+float64(rowHigh*float64(n)), 205))
	high = math.Max(high, math.Max(100, beside))
	fit := int((high - beside) / rowHigh)
	bottom := edgeMargin + blockHigh + 5
	if n > fit {
		bottom = s.furtherJoints(bottom, s.measured.Joints[fit:])
	}
	s.layDown(edgeMargin, bottom+12, high-12-head)
	s.frame(bottom, high)
	s.outlines(&s.ply)
	s.corners()
	s.measureEnds()
	s.markPatch(marks)
	s.strips()
	s.joints()
	s.over(s.box(edgeMargin, bottom, edgeMargin+drawWide, bottom+high))
	beneath := s.jointTable(tableLeft, bottom+high, s.measured.Joints[:min(n, fit)])
	s.patchTable(tableLeft, beneath-4, marks)
	s.tickBoxes(tableLeft, bottom)
	s.heading(bottom + high)
	s.height = bottom + high + headHigh
}

// frame draws what is about the part: from where it is seen, 0°, the lines by
// name; lettering of the part keeps out of it.
func (s *plySheet) frame(bottom, high float64) {
	top := bottom + high
	s.room.take(s.box(edgeMargin, bottom, edgeMargin+drawWide, bottom+10))
	s.room.take(s.box(edgeMargin, top-8, edgeMargin+drawWide, top))
	s.zeroArrow(edgeMargin+4, bottom+5)
	l := s.s.Layer("TEXT")
	l.Write(s.text(edgeMargin+4, top-6, 4, true, "SEEN FROM THE LAYING SIDE, looking down on the tool"))
	if s.ply.Face == laminate.FaceDown {
		s.room.take(s.box(edgeMargin, top-14, edgeMargin+drawWide, top-8))
		l.Write(s.text(edgeMargin+4, top-12.5, 4, true, "FACE DOWN: the pieces are cut mirrored; turn each one over about its length"))
	}
	s.legend(edgeMargin+70, bottom+5)
	s.s.Layer("TITLE").Box(sheet.Solid(sheet.Black, 0.3*s.k), sheet.Fill{}, s.box(edgeMargin, bottom, edgeMargin+drawWide, top))
}

// heading writes ply, fabric, angle and side across the top.
func (s *plySheet) heading(y float64) {
	l := s.s.Layer("TITLE")
	title := s.text(edgeMargin, y+44, 13, true, s.plyWords())
	whole := title
	if s.ply.Outline != "" {
		whole.Words += ":  OUTLINE " + s.ply.Outline
	}
	title.Height = whole.Fitted(330 * s.k).Height
	l.Write(title)
	if s.ply.Outline != "" {
		whole.Words, whole.Height = "OUTLINE "+s.ply.Outline, title.Height
		whole.At = sheet.Along(title.At, orb.Point{1, 0}, title.Width()+title.Height)
		l.Write(whole)
	}
	s.big(edgeMargin, y+5, 118, "FABRIC", s.fabric.Name, "", false)
	s.big(edgeMargin+122, y+5, 74, "ANGLE", sheet.Degrees(s.ply.AngleDeg), "", false)
	s.big(edgeMargin+200, y+5, 134, "SIDE", s.faceWords(), s.sideWords(), s.ply.Face == laminate.FaceDown)
	Dial(s.s.Layer("DATUM"), s.at(sheetWide-edgeMargin-32, y+33), 21*s.k, s.k, s.ply)
}

// big draws one box of the heading; dark: white words on black.
func (s *plySheet) big(x, y, w float64, caption, words, under string, dark bool) {
	l, k := s.s.Layer("TITLE"), s.k
	fill, ink, soft := sheet.Fill{Ink: sheet.White}, sheet.Black, sheet.Grey
	if dark {
		fill.Ink, ink, soft = sheet.Black, sheet.White, sheet.Pale
	}
	l.Box(sheet.Solid(sheet.Black, 0.6*k), fill, s.box(x, y, x+w, y+33))
	t := s.text(x+3, y+27.5, 2.6, false, caption)
	t.Ink = soft
	l.Write(t)
	t = s.text(x+3, y+10.5, 13, true, words)
	t.Ink = ink
	l.Write(t.Fitted((w - 6) * k))
	t = s.text(x+3, y+3.2, 4, true, under)
	t.Ink = ink
	l.Write(t.Fitted((w - 6) * k))
}

// legend names the lines of the drawing, beside the 0° arrow.
func (s *plySheet) legend(x, y float64) {
	l := s.s.Layer("TEXT")
	for _, e := range []struct {
		pen   sheet.Pen
		words string
		wide  float64
	}{
		{jointPen(s.k, s.narrowest()), "joint of this ply", 46},
		{earlierPen(s.k), "joint below that counts", 55},
		{netPen(s.k), "net edge", 34},
		{blankPen(s.k), "blank", 30},
	} {
		l.Stroke(e.pen, s.at(x, y), s.at(x+10, y))
		l.Write(s.text(x+11.5, y-1.2, 2.6, false, e.words))
		x += e.wide
	}
}
