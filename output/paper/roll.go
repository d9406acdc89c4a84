package paper

import (
	"math"
	"strconv"
	"strings"

	"github.com/paulmach/orb"

	"stripwright/output/cutmap"
	"stripwright/output/list"
	"stripwright/output/page"
	"stripwright/output/sheet"
)

// rollSection composes the pages of one length of cloth on the table.
type rollSection struct {
	*press
	length    cutmap.Length
	reduction float64
}

// rollPages composes the map and the cut list of each length.
func (b *press) rollPages(lengths []cutmap.Length) {
	whole := b.plan
	b.plan = sheet.OfRoll(whole)
	for _, l := range lengths {
		s := &rollSection{b, l, rollReduction(l.Roll.WidthMM)}
		b.section(s.name(), []string{l.Roll.Fabric}, s.head)
		s.rows()
		s.pieces()
	}
	b.plan = whole
}

func (s *rollSection) name() string {
	words := "ROLL " + cutPlace{roll: s.length.Roll.Roll, copy: s.length.Roll.Copy}.words()
	if s.length.Of > 1 {
		words += ", TABLE LENGTH " + strconv.Itoa(s.length.Number) + " OF " + strconv.Itoa(s.length.Of)
	}
	return words
}

// mostWideMM is how wide a roll may be on paper.
const mostWideMM = 46.0

// rollReduction chooses 1:10 or less, so that the roll is not too wide on paper.
func rollReduction(width float64) float64 {
	return math.Max(10, reduced(width/mostWideMM, true))
}

// head draws the roll, which way it lies and the width to check; small on further
// pages.
func (s *rollSection) head(further bool) {
	if further {
		s.say(page.Margin, s.y-4.5, 4.5, s.size.Inner()-26, true, s.name()+", LAY IT FACE UP")
		s.say(s.right()-24, s.y-4.5, page.BodyHigh, 24, false, "continued")
		s.y -= 9
		return
	}
	s.say(page.Margin, s.y-page.TitleHigh, page.TitleHigh, s.size.Inner(), true, s.name())
	top, inner := s.y-11.5, s.size.Inner()
	third := (inner - 4) / 3
	width := sheet.Tape(s.length.Roll.WidthMM, s.plan.Units)
	usable := "usable " + sheet.Tape(s.length.Roll.UsableWidthMM, s.plan.Units)
	for i, c := range [3][3]string{
		{"FABRIC", s.length.Roll.Fabric, sheet.Number(s.length.Fabric.WeightGSM, 1) + " g/m²"},
		{"LAY THE ROLL", "FACE UP", s.faceIs()},
		{"CHECK THE WIDTH BEFORE CUTTING", width, usable + "; measured:"},
	} {
		x := page.Margin + float64(float64(i)*(third+2))
		s.l.Box(sheet.Solid(sheet.Black, 0.4), sheet.Fill{}, orb.Bound{Min: orb.Point{x, top - 19}, Max: orb.Point{x + third, top}})
		s.say(x+1.8, top-3, 1.7, third-4, false, c[0])
		s.say(x+1.8, top-12.2, 7, third-4, true, c[1])
		s.say(x+1.8, top-17.2, 2.4, third-4-float64(18*float64(i/2)), true, c[2])
	}
	s.l.Stroke(sheet.Solid(sheet.Black, 0.25), orb.Point{s.right() - 18, top - 17.4}, orb.Point{s.right() - 2, top - 17.4})
	s.say(page.Margin, top-23.5, page.BodyHigh, inner, false, "Drawn 1:"+sheet.Number(s.reduction, 1)+". Lengths from the free end of this piece of cloth, "+sheet.MarkWords(s.plan.Units)+
		". Hatched: offcut. Grey: laid FACE DOWN, drawn mirrored already.")
	s.say(page.Margin, top-27.5, page.BodyHigh, inner, true, s.behindWords())
	s.y -= 41
}

func (s *rollSection) faceIs() string {
	if s.length.Fabric.FaceIs == "" {
		return "face not named in the job"
	}
	return "face is " + s.length.Fabric.FaceIs
}

// behindWords says where the cloth is cut off and what is left behind.
func (s *rollSection) behindWords() string {
	return "Cut off at " + sheet.Mark(s.length.Long(), s.plan.Units) + "; behind it: " + s.length.RemainderWords(s.plan.Units) + "."
}

// fromTo writes where something begins and ends, its unit once; where it is a
// point, that.
func fromTo(r [2]float64, units string) cell {
	from, _ := sheet.MarkFigure(r[0], units)
	to, _ := sheet.MarkFigure(r[1], units)
	if r[1]-r[0] < sheet.MarkMM {
		return cell{figure: from, words: "a point"}
	}
	if cut, ok := strings.CutSuffix(from, " mm"); ok {
		from = cut
	}
	return cell{figure: from + " to " + to}
}

// pieces lists the pieces in cutting order, to be marked by tape.
func (s *rollSection) pieces() {
	var rows [][]cell
	u := s.plan.Units
	for _, p := range s.length.Pieces {
		c := list.CutMeasuresOf(p)
		laid := "up"
		if p.Mirrored {
			laid = "DOWN"
		}
		ends := cell{words: shapeWords(c)}
		if c.Straight {
			ends = cell{figure: sheet.Number(c.FreeDeg, 1) + "°, " + sheet.Number(c.FarDeg, 1) + "°"}
		}
		rows = append(rows, []cell{
			{figure: strconv.Itoa(p.CutOrder)}, {figure: p.ID}, {figure: laid}, fromTo(c.Across, u), fromTo(c.Right, u), fromTo(c.Left, u), ends, {tick: true},
		})
	}
	table{columns: []column{
		{"CUT", 9}, {"PIECE", 22}, {"FACE", 13}, {"ACROSS, from the right", 34}, {"RIGHT EDGE, along", 40}, {"LEFT EDGE, along", 40}, {"ENDS: free, far", 27}, {"DONE", 12},
	}, high: rowHigh}.write(s.press, rows)
	s.shaped()
}

// shaped lists the corners of pieces whose ends are no single cuts, and names
// those that are curved.
func (s *rollSection) shaped() {
	var told, curved []string
	for _, p := range s.length.Pieces {
		c := list.CutMeasuresOf(p)
		var corners []string
		for _, q := range c.Corners {
			corners = append(corners, sheet.Number(q[0], 1)+" by "+sheet.Number(q[1], 1))
		}
		switch {
		case c.Straight:
		case len(corners) == 0:
			curved = append(curved, p.ID)
		default:
			told = append(told, p.ID+": "+strings.Join(corners, "; "))
		}
	}
	if len(told) > 0 {
		s.need(16)
		s.bar("SHAPED PIECES: corners in mm, along from the free end by across from the right")
		for _, words := range told {
			s.paragraph(page.Margin+1, s.size.Inner()-2, page.SmallHigh, false, words)
			s.y -= 0.8
			s.rule(page.Margin, s.y, s.size.Inner())
		}
		s.y -= 3
	}
	if len(curved) > 0 {
		s.need(16)
		s.bar("CURVED PIECES: cut them by a template at 1:1 (draw --template with the id), or on a cutter")
		s.paragraph(page.Margin+1, s.size.Inner()-2, page.SmallHigh, false, strings.Join(curved, ", "))
	}
}

func shapeWords(c list.CutMeasures) string {
	if len(c.Corners) == 0 {
		return "curved"
	}
	return "shaped: see below"
}
