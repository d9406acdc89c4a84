package list

import (
	"math"
	"strconv"

	"stripwright/laminate"
	"stripwright/laminate/waste"
	"stripwright/output/sheet"
)

// lostTo are the words for where cloth is lost.
var lostTo = map[waste.Kind]string{
	waste.Ends:     "between ends",
	waste.Beside:   "beside edge strips",
	waste.Openings: "notches, openings",
	waste.Cuts:     "first and last cut",
	waste.Gaps:     "cutting gap",
	waste.BadEdges: "bad edges",
	waste.Earlier:  "left on earlier rolls",
	waste.Trimmed:  "trimmed on the tool",
}

// wasteRows tells for each cloth where it goes, in mm of roll and percent of
// what counts; kinds without any are left out.
func wasteRows(p laminate.Plan) [][]string {
	cloths := waste.Of(p)
	rows := [][]string{{"fabric", "width", "in the plies"}}
	for i := range cloths {
		c := &cloths[i]
		rows = append(rows, []string{sheet.Spelt(c.Fabric), sheet.Tape(c.WidthMM, p.Units), share(c, c.LaidMM2)})
	}
	for _, k := range waste.Kinds() {
		some := false
		for i := range cloths {
			some = some || cloths[i].LengthMM(cloths[i].Lost[k]) >= 0.05
		}
		if !some {
			continue
		}
		rows[0] = append(rows[0], lostTo[k])
		for i := range cloths {
			rows[i+1] = append(rows[i+1], share(&cloths[i], cloths[i].Lost[k]))
		}
	}
	return rows
}

func share(c *waste.Cloth, area float64) string {
	return number(c.LengthMM(area), 1) + " mm " + number(c.Percent(area), 1) + " %"
}

// mostLeft is how many left-over pieces of cloth a summary lists.
const mostLeft = 6

// leftRows lists the largest left-over pieces of cloth; rest is how many more
// there are.
func leftRows(p laminate.Plan) (rows [][]string, rest int) {
	left := waste.LeftOver(p)
	rows = [][]string{{"left over", "roll", "size", "from the free end", "from the right-hand edge"}}
	for _, l := range waste.Largest(left, mostLeft) {
		rows = append(rows, []string{
			sheet.Spelt(l.Fabric), rollName(p, l), tapeDown(l.LengthMM, p.Units) + " x " + tapeDown(l.WidthMM, p.Units),
			sheet.MetreMark(l.FromMM, p.Units), sheet.Tape(l.AcrossMM, p.Units),
		})
	}
	return rows, len(left) - len(rows) + 1
}

// down rounds a length down to 0.1 mm: never more than there is.
func down(mm float64) float64 { return math.Floor(float64(mm*10)+1e-6) / 10 }

func tapeDown(mm float64, units string) string { return sheet.Tape(down(mm), units) }

// rollName names a roll, with its number where there are several alike.
func rollName(p laminate.Plan, l waste.Left) string {
	for _, r := range p.Rolls {
		if r.Fabric == l.Fabric && r.Roll == l.Roll && r.Copy != l.Copy {
			return sheet.Spelt(l.Roll) + ", no. " + strconv.Itoa(l.Copy)
		}
	}
	return sheet.Spelt(l.Roll)
}

var leftHead = []string{
	"roll", "copy", "fabric", "kind", "length_mm", "width_mm", "from_mm", "across_from_mm", "length_in", "width_in",
}

// LeftOver gives as CSV what is left of the rolls and large enough to be kept:
// the rest of a roll, or an offcut that lies from_mm from the free end and
// across_from_mm from the right-hand edge of the usable width, as in the cut
// list. Sizes are rounded down to 0.1 mm.
func LeftOver(p laminate.Plan) ([]byte, error) {
	rows := [][]string{leftHead}
	for _, l := range waste.LeftOver(p) {
		kind := "rest of the roll"
		if l.Offcut {
			kind = "offcut"
		}
		rows = append(rows, []string{
			named("roll", l.Roll), strconv.Itoa(l.Copy), named("fabric", l.Fabric), kind,
			mm(down(l.LengthMM)), mm(down(l.WidthMM)), mm(l.FromMM), mm(l.AcrossMM), inch(down(l.LengthMM)), inch(down(l.WidthMM)),
		})
	}
	return write(rows)
}
