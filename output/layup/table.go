package layup

import (
	"math"
	"strconv"

	"stripwright/laminate"
	"stripwright/output/sheet"
)

// Measures of the table of joints and of the boxes to tick, in units.
const (
	tableLeft = edgeMargin + drawWide + 6
	tableWide = sheetWide - edgeMargin - tableLeft
	rowHigh   = 11.0
	tickHigh  = 57.0
	columns   = 3 // of the joints that do not fit beside the drawing
)

// Shares of the table's width: name, one end, other end, nearest below.
var tableShares = [4]float64{0.12, 0.31, 0.31, 0.26}

// jointTable writes joints in rows, from its top left corner down, and gives the
// bottom of them.
func (s *plySheet) jointTable(x, top float64, joints []Measured) float64 {
	s.tableHead(x, top, tableWide)
	if len(s.measured.Joints) == 0 {
		s.s.Layer("TITLE").Write(s.text(x+2, top-15, 4, true, "No joints: one strip covers the ply."))
	}
	for i, m := range joints {
		s.jointRow(x, top-8-float64(float64(i)*rowHigh), tableWide, m)
	}
	return top - 8 - float64(rowHigh*float64(max(1, len(joints))))
}

func (s *plySheet) tableHead(x, top, wide float64) {
	s.head(x, top, wide, [4]string{"JOINT", "ONE END", "OTHER END", "NEAREST BELOW"})
}

func (s *plySheet) head(x, top, wide float64, captions [4]string) {
	l := s.s.Layer("TITLE")
	l.Box(sheet.Pen{}, sheet.Fill{Ink: sheet.Black}, s.box(x, top-7, x+wide, top))
	for i, words := range captions {
		t := s.text(x+1.5, top-5, 2.8, true, words)
		t.Ink = sheet.White
		l.Write(t.Fitted((float64(tableShares[i]*wide) - 2) * s.k))
		x += float64(tableShares[i] * wide)
	}
}

func (s *plySheet) jointRow(x, top, wide float64, m Measured) {
	cells := [4][2]string{{m.Name, ""}, {"in the trim:", "not in the finished part"}, {"", ""}, {"none", ""}}
	if !m.InTrim {
		cells[1], cells[2] = TickWords(s.plan, m.Ends[0]), TickWords(s.plan, m.Ends[1])
	}
	if m.Below != nil {
		figure, beside := sheet.TapeFigure(m.Below.MM, s.plan.Units)
		cells[3] = [2]string{figure, beforeWords(beside) + "ply " + strconv.Itoa(m.Below.Ply)}
	}
	s.row(x, top, wide, cells)
}

// row writes one row of a table: a figure over small words in each cell.
func (s *plySheet) row(x, top, wide float64, cells [4][2]string) {
	l := s.s.Layer("TITLE")
	l.Stroke(sheet.Solid(sheet.Grey, 0.2*s.k), s.at(x, top-rowHigh), s.at(x+wide, top-rowHigh))
	for i, c := range cells {
		room := (float64(tableShares[i]*wide) - 2) * s.k
		l.Write(s.text(x+1.5, top-5.6, 4, true, c[0]).Fitted(room))
		l.Write(s.text(x+1.5, top-9.6, 2.6, false, c[1]).Fitted(room))
		x += float64(tableShares[i] * wide)
	}
}

// TickWords gives the distance of a mark, and how to lay the tape: from which
// corner along which edge, or which way round.
func TickWords(p laminate.Plan, t Tick) [2]string {
	figure, beside := sheet.MarkFigure(t.AlongMM, p.Units)
	how := "from " + t.From + ", edge " + t.Edge
	if len(p.Part.Corners) == 2 {
		how = "from " + t.From + " " + t.Way
	}
	return [2]string{figure, beforeWords(beside) + how}
}

// beforeWords sets what stands beside a figure off from words that follow.
func beforeWords(beside string) string {
	if beside == "" {
		return ""
	}
	return beside + " "
}

// furtherJoints writes the joints that did not fit beside the drawing in columns
// under it; it returns the top of them.
func (s *plySheet) furtherJoints(bottom float64, joints []Measured) float64 {
	rows := (len(joints) + columns - 1) / columns
	high := 8 + float64(rowHigh*float64(rows)) + 4
	wide := (sheetWide - 2*edgeMargin - 6*(columns-1)) / columns
	for c := 0; c < columns && c*rows < len(joints); c++ {
		x := edgeMargin + float64(float64(c)*(wide+6))
		s.tableHead(x, bottom+high-2, wide)
		for i, m := range joints[c*rows : min((c+1)*rows, len(joints))] {
			s.jointRow(x, bottom+high-10-float64(float64(i)*rowHigh), wide, m)
		}
	}
	return bottom + high + 2
}

// tickBoxes draws what is ticked and signed off when the ply is down, under the rule
// that strips are laid by.
func (s *plySheet) tickBoxes(x, bottom float64) {
	l := s.s.Layer("TITLE")
	l.Box(sheet.Solid(sheet.Black, 0.3*s.k), sheet.Fill{}, s.box(x, bottom, x+tableWide, bottom+tickHigh-2))
	law := s.text(x+3, bottom+tickHigh-8, 3.8, true, GapWords(s.plan))
	for i, line := range sheet.Wrapped(law, (tableWide-6)*s.k, 2) {
		line.At[1] -= float64(5.5 * s.k * float64(i))
		l.Write(line)
	}
	for i, words := range []string{"fabric, side and angle right", "joints marked and measured", "strips laid in order"} {
		y := bottom + tickHigh - 25 - float64(float64(i)*9.5)
		l.Box(sheet.Solid(sheet.Black, 0.6*s.k), sheet.Fill{Ink: sheet.White}, s.box(x+3, y, x+10.5, y+7.5))
		l.Write(s.text(x+14, y+2, 3.8, false, words))
	}
	l.Write(s.text(x+3, bottom+3, 3.2, false, "initials"))
	l.Stroke(sheet.Solid(sheet.Black, 0.3*s.k), s.at(x+20, bottom+3), s.at(x+62, bottom+3))
	l.Write(s.text(x+68, bottom+3, 3.2, false, "date"))
	l.Stroke(sheet.Solid(sheet.Black, 0.3*s.k), s.at(x+79, bottom+3), s.at(x+math.Min(128, tableWide-3), bottom+3))
}
