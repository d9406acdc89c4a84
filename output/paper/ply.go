package paper

import (
	"strconv"

	"github.com/paulmach/orb"

	"stripwright/laminate"
	"stripwright/output/layup"
	"stripwright/output/page"
	"stripwright/output/sheet"
)

// plySection composes the pages of one ply.
type plySection struct {
	*press
	ply    laminate.PlanPly
	joints layup.PlyMeasures
	marks  []layup.Mark
	lay    layout
	row    float64 // height of the tables' rows
}

func (b *press) plyPages(index int, lay layout) {
	s := &plySection{press: b, ply: b.plan.Plies[index], joints: b.measured[index], lay: lay}
	s.marks = layup.Marks(b.plan, s.ply)
	s.row = s.fittingRow()
	b.section(layup.Title(b.plan, s.ply), []string{s.ply.Fabric}, s.head)
	s.drawings(index)
	s.jointRows()
	s.markRows()
	s.stripRows()
	s.signOff()
}

// Heights of the parts of a ply's page in mm.
const (
	plyHead  = 33.0
	signHigh = 25.0
	leastRow = 4.7
)

// fittingRow gives the height of rows that keeps a ply on one page, where that
// can be.
func (s *plySection) fittingRow() float64 {
	room := s.size.High - page.Margin - floor - plyHead - signHigh
	if len(sheet.Faults(s.plan.Checks)) > 0 {
		room -= page.StampHigh + 3
	}
	rows := 0
	for _, n := range []int{len(s.joints.Joints), len(s.marks), (len(s.ply.Strips) + 1) / 2} {
		if n > 0 {
			room -= tableHead + 3
			rows += n
		}
	}
	if len(s.joints.Joints) == 0 {
		room -= 8
	}
	if s.lay.whole {
		room -= s.framedHigh(s.lay.stretches[0]) + 3
	}
	if row := room / float64(max(rows, 1)); row < rowHigh && row >= leastRow {
		return row - 0.01
	}
	return rowHigh
}

// head draws ply, fabric, angle and side; small on further pages.
func (s *plySection) head(further bool) {
	title := layup.Title(s.plan, s.ply)
	if s.ply.Outline != "" {
		title += ": " + s.ply.Outline
	}
	if further {
		s.say(page.Margin, s.y-4.5, 4.5, s.size.Inner()-26, true, title+", "+sheet.Degrees(s.ply.AngleDeg)+", "+layup.FaceWords(s.ply))
		s.say(s.right()-24, s.y-4.5, page.BodyHigh, 24, false, "continued")
		s.y -= 9
		return
	}
	inner := s.size.Inner() - 34
	s.say(page.Margin, s.y-page.TitleHigh, page.TitleHigh, inner, true, title)
	top := s.y - 11.5
	wide := [3]float64{0.38 * inner, 0.2 * inner, float64(0.42*inner) - 4}
	s.big(page.Margin, top, wide[0], "FABRIC", s.ply.Fabric, s.weightWords(), false)
	s.big(page.Margin+wide[0]+2, top, wide[1], "ANGLE", sheet.Degrees(s.ply.AngleDeg), "", false)
	s.big(page.Margin+wide[0]+wide[1]+4, top, wide[2], "SIDE", layup.FaceWords(s.ply), layup.SideWords(s.plan, s.ply), s.ply.Face == laminate.FaceDown)
	layup.Dial(s.l, orb.Point{s.right() - 17, s.y - 14}, 11, 0.6, s.ply)
	s.y -= plyHead
}

// big draws one box of the head; dark: white words on black.
func (s *plySection) big(x, top, wide float64, caption, words, under string, dark bool) {
	fill, ink, soft := sheet.Fill{Ink: sheet.White}, sheet.Black, sheet.Grey
	if dark {
		fill.Ink, ink, soft = sheet.Black, sheet.White, sheet.Pale
	}
	s.l.Box(sheet.Solid(sheet.Black, 0.4), fill, orb.Bound{Min: orb.Point{x, top - 19}, Max: orb.Point{x + wide, top}})
	for _, t := range []sheet.Text{
		{At: orb.Point{x + 1.8, top - 3}, Height: 1.7, Ink: soft, Words: caption},
		{At: orb.Point{x + 1.8, top - 12.2}, Height: 7, Bold: true, Ink: ink, Words: words},
		{At: orb.Point{x + 1.8, top - 17.2}, Height: 2.4, Bold: true, Ink: ink, Words: under},
	} {
		s.l.Write(t.Fitted(wide - 3.6))
	}
}

func (s *plySection) weightWords() string {
	for _, f := range s.plan.Fabrics {
		if f.Name == s.ply.Fabric {
			return sheet.Number(f.WeightGSM, 1) + " g/m², this ply " + gramsOf(s.plan, s.ply.Ply) + " dry"
		}
	}
	return ""
}

// jointRows lists the joints with both edge distances and the nearest below.
func (s *plySection) jointRows() {
	if len(s.joints.Joints) == 0 {
		s.need(8)
		s.say(page.Margin, s.y-4, page.HeadHigh, s.size.Inner(), true, "No joints: one strip covers the ply.")
		s.y -= 8
		return
	}
	var rows [][]cell
	for _, m := range s.joints.Joints {
		row := []cell{{figure: m.Name}, {figure: "in the trim", words: "not in the finished part"}, {}, {figure: "none"}, {tick: true}}
		if !m.InTrim {
			for i, t := range m.Ends {
				w := layup.TickWords(s.plan, t)
				row[1+i] = cell{figure: w[0], words: w[1]}
			}
		}
		if m.Below != nil {
			row[3] = cell{figure: sheet.Tape(m.Below.MM, s.plan.Units), words: "ply " + strconv.Itoa(m.Below.Ply)}
		}
		rows = append(rows, row)
	}
	table{columns: []column{{"JOINT", 12}, {"ONE END, along the net edge", 62}, {"OTHER END, along the net edge", 62}, {"NEAREST BELOW", 36}, {"MARKED", 15}}, high: s.row}.write(s.press, rows)
}

// markRows lists where the ply's own outline lies.
func (s *plySection) markRows() {
	var rows [][]cell
	for _, m := range s.marks {
		rows = append(rows, []cell{{figure: m.Name}, {m.Ends[0][0], m.Ends[0][1], false}, {m.Ends[1][0], m.Ends[1][1], false}, {tick: true}})
	}
	table{columns: []column{{"MARK", 12}, {"OUTLINE " + s.ply.Outline + ": where it lies", 81}, {"", 78}, {"MARKED", 15}}, high: s.row}.write(s.press, rows)
}

// stripRows lists the strips in laying order.
func (s *plySection) stripRows() {
	var rows [][]cell
	for i, strip := range s.ply.Strips {
		long, roll := layup.Length(s.ply, strip), s.cut[strip.ID]
		rows = append(rows, []cell{
			{figure: strconv.Itoa(i + 1)}, {figure: strip.ID}, s.mark(strip.WidthMM), s.mark(long), {words: roll.words()}, {tick: true},
		})
	}
	table{columns: []column{{"LAY", 8}, {"STRIP", 23}, {"WIDTH", 20}, {"LENGTH", 21}, {"CUT FROM", 16}, {"LAID", 9}}, beside: 2, high: s.row}.write(s.press, rows)
}

// mark is a length to be marked, in the job's own unit alone: there is no room.
func (s *plySection) mark(mm float64) cell {
	figure, _ := sheet.MarkFigure(mm, s.plan.Units)
	return cell{figure: figure}
}

// signOff says how strips are laid, and is ticked and signed when the ply is
// down.
func (s *plySection) signOff() {
	const high = signHigh
	s.need(high)
	top := s.y
	s.l.Box(sheet.Solid(sheet.Black, 0.3), sheet.Fill{}, orb.Bound{Min: orb.Point{page.Margin, top - high + 2}, Max: orb.Point{s.right(), top}})
	s.say(page.Margin+2, top-4.6, page.HeadHigh, s.size.Inner()-4, true, layup.GapWords(s.plan))
	x, step := page.Margin+2.0, (s.size.Inner()-4)/3
	for i, words := range []string{"fabric, side and angle right", "joints marked and measured", "strips laid in order"} {
		at := x + float64(float64(i)*step)
		s.tick(at, top-13.5, 5.5)
		s.say(at+7.5, top-12, page.BodyHigh, step-9, false, words)
	}
	s.blank(x, top-20.5, step-4, "initials")
	s.blank(x+step, top-20.5, step-4, "date")
	s.blank(x+float64(2*step), top-20.5, step-2, "time")
	s.y -= high
}
