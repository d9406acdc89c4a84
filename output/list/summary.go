package list

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"github.com/paulmach/orb"

	"stripwright/laminate"
	"stripwright/laminate/order"
	"stripwright/output/cutmap"
	"stripwright/output/sheet"
)

// Summary gives what a person wants to know first, for a terminal: the verdict
// with the part's size, what was found wrong, the cloth by fabric and by roll
// width, where it goes and what is left over, the least stagger,
// what the stack is and how thick and heavy, notes, cautions. Columns are plain ASCII but for
// names of the job.
func Summary(p laminate.Plan) string {
	var b strings.Builder
	w, h := p.Part.Net.Size()
	line := func(words string) { b.WriteString(words + "\n") }
	line(sheet.Verdict(p) + "; part " + sheet.Spelt(p.Part.Name) + " " + sheet.Size(w, h))
	for _, f := range sheet.Faults(p.Checks) {
		line("  " + sheet.Spelt(f))
	}
	for _, w := range sheet.Warnings(p.Checks) {
		line("  " + sheet.Spelt(w))
	}
	line("")
	line(columns(costRows(p)))
	for _, words := range joinedHere(p) {
		line(words)
	}
	line(columns(clothRows(p)))
	line("where the cloth goes, in mm of roll and percent of it:")
	line(columns(wasteRows(p)))
	if rows, rest := leftRows(p); len(rows) > 1 {
		b.WriteString(columns(rows))
		if rest > 0 {
			line("and " + strconv.Itoa(rest) + " smaller")
		}
		line("")
	}
	for _, words := range orderWords(p) {
		line(words)
	}
	line(staggerFound(p))
	line(stackLine(p))
	if words := materialLine(p); words != "" {
		line(words)
	}
	for _, n := range p.Notes {
		line("note: " + sheet.Spelt(strings.Trim(n.Where+": "+n.Text, ": ")))
	}
	if p.Stopped {
		line("note: the search was stopped early; the plan is sound, perhaps not the least cloth")
	}
	line("")
	line(sheet.Caution)
	line("Uncured resin: no skin contact. Cut fibre: extract the dust. Vessels under vacuum: rated ones only.")
	return b.String()
}

// costRows sets each fabric's cost beside its bound and shop practice.
func costRows(p laminate.Plan) [][]string {
	rows := [][]string{{"fabric", "counted by", "used", "bound", "shown by", "gap", "shop practice", "against practice", "status"}}
	for _, c := range p.Cost {
		rows = append(rows, []string{
			sheet.Spelt(c.Fabric), measureWords(c.Measure),
			amount(c.Used, c.Measure), amount(c.Bound, c.Measure), c.Proof.Bound, number(100*c.Gap, 2) + " %",
			amount(c.Practice, c.Measure), against(c), c.Status,
		})
	}
	return rows
}

// leastTold is the gap from which it is told what of it is due to the joints.
const leastTold = 0.002

// joinedHere tells for each fabric above its bound how little it could take with
// the joints where they are.
func joinedHere(p laminate.Plan) []string {
	var out []string
	for _, c := range p.Cost {
		if c.BoundHere > 0 && c.Gap >= leastTold {
			out = append(out, sheet.Spelt(c.Fabric)+": with the joints where they are, no less than "+amount(c.BoundHere, c.Measure)+
				" (gap "+number(100*(c.Used-c.BoundHere)/c.BoundHere, 2)+" %)")
		}
	}
	if len(out) > 0 {
		out[len(out)-1] += "\n"
	}
	return out
}

func measureWords(measure string) string {
	switch measure {
	case laminate.ByPrice:
		return "price"
	case laminate.ByLastCut:
		return "last cut"
	}
	return "length"
}

// amount prints a cost: a length, or money.
func amount(v float64, measure string) string {
	if measure == laminate.ByPrice {
		return number(v/1000, 2)
	}
	return number(v, 1) + " mm"
}

func against(c laminate.Cost) string {
	if c.Practice <= 0 {
		return "-"
	}
	return signed(c.Used-c.Practice, c.Measure) + " (" + plus(100*(c.Used-c.Practice)/c.Practice) + " %)"
}

func signed(v float64, measure string) string {
	if v > 0 {
		return "+" + amount(v, measure)
	}
	return amount(v, measure)
}

func plus(v float64) string {
	if v > 0.05 {
		return "+" + number(v, 1)
	}
	return number(v, 1)
}

// clothRows lists what is cut from each roll width; what is cut from rolls on
// hand only where there are any.
func clothRows(p laminate.Plan) [][]string {
	rows := [][]string{{"fabric", "width", "used"}}
	some := slices.ContainsFunc(p.Rolls, func(r laminate.PlanRoll) bool { return r.StockLengthMM != nil })
	if some {
		rows[0] = append(rows[0], "of it on hand")
	}
	rows[0] = append(rows[0], "to buy", "rolls", "strips", "cuts", "cut length")
	for _, l := range p.Lengths {
		row := []string{sheet.Spelt(l.Fabric), sheet.Tape(l.WidthMM, p.Units), number(l.UsedMM, 1) + " mm"}
		if some {
			row = append(row, number(order.OnHand(p, l), 1)+" mm")
		}
		rolls, pieces := rollsOf(p, l)
		cuts, long := cutsOf(p, l)
		rows = append(rows, append(row,
			number(l.ToBuyMM/1000, 3)+" m ("+number(l.ToBuyMM/914.4, 2)+" yd)",
			strconv.Itoa(rolls), strconv.Itoa(pieces), strconv.Itoa(cuts), number(long/1000, 2)+" m"))
	}
	return rows
}

// cutsOf counts the cuts of one fabric and width: lines without lifting the
// knife, a shared one once, and their length.
func cutsOf(p laminate.Plan, l laminate.RollLength) (cuts int, long float64) {
	for _, r := range p.Rolls {
		if r.Fabric != l.Fabric || r.WidthMM != l.WidthMM {
			continue
		}
		for _, line := range cutmap.Cuts(inCutOrder(r.Pieces)) {
			cuts++
			long += lineLength(line)
		}
	}
	return cuts, long
}

func lineLength(l sheet.Line) float64 {
	sum := 0.0
	for i := 1; i < len(l.Points); i++ {
		sum += apart(l.Points[i-1], l.Points[i])
	}
	if l.Closed && len(l.Points) > 0 {
		sum += apart(l.Points[len(l.Points)-1], l.Points[0])
	}
	return sum
}

func apart(a, b orb.Point) float64 { return math.Hypot(b[0]-a[0], b[1]-a[1]) }

// staggerFound names the nearest pair that the check found.
func staggerFound(p laminate.Plan) string {
	for _, c := range p.Checks {
		if c.Rule != "stagger" || c.Worst == nil {
			continue
		}
		text := "least stagger found: " + sheet.Tape(c.Worst.ValueMM, p.Units)
		if len(c.Worst.Plies) > 0 {
			text += ", " + plies(c.Worst.Plies)
		}
		return text + ", at x " + number(c.Worst.At[0], 1) + ", y " + number(c.Worst.At[1], 1) + " mm; asked: " + asked(p)
	}
	return "least stagger found: no two joints that count; asked: " + asked(p)
}

func plies(numbers []int) string {
	var words []string
	for _, n := range numbers {
		words = append(words, strconv.Itoa(n))
	}
	if len(words) == 1 {
		return "ply " + words[0]
	}
	return "plies " + strings.Join(words, " and ")
}

func asked(p laminate.Plan) string {
	var texts []string
	for _, f := range p.Fabrics {
		texts = append(texts, sheet.Spelt(f.Name)+" "+sheet.Tape(f.StaggerMM, p.Units)+" with fewer than "+
			strconv.Itoa(f.PliesBetween)+" plies between")
	}
	return strings.Join(texts, "; ")
}

// columns sets rows in columns, two blanks apart.
func columns(rows [][]string) string {
	wide := make([]int, len(rows[0]))
	for _, r := range rows {
		for i, c := range r {
			wide[i] = max(wide[i], len([]rune(c)))
		}
	}
	var b strings.Builder
	for _, r := range rows {
		line := ""
		for i, c := range r {
			line += c + strings.Repeat(" ", wide[i]-len([]rune(c))+2)
		}
		b.WriteString(strings.TrimRight(line, " ") + "\n")
	}
	return b.String()
}
