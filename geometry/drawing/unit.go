package drawing

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"stripwright/geometry/drawing/dxf"
	"stripwright/geometry/drawing/trace"
)

// statedUnits are the units that a drawing can be read in, in mm.
var statedUnits = map[string]float64{"mm": 1, "cm": 10, "m": 1000, "in": 25.4, "ft": 304.8, "yd": 914.4}

const unitCure = "say what one unit of the drawing is: drawing_units: mm in the job, --units mm for outline (or cm, m, in, ft, yd, 72/in)"

// IsUnit says whether Options.Units takes a text: mm, cm, m, in, ft, yd or a
// number of units an inch, 72/in.
func IsUnit(units string) bool { return units != "" && mmOfUnit(units) > 0 }

// mmOfUnit gives the mm of one unit, 0 for what is none.
func mmOfUnit(units string) float64 {
	if mm, ok := statedUnits[units]; ok {
		return mm
	}
	per, ok := strings.CutSuffix(units, "/in")
	n, err := strconv.ParseFloat(strings.TrimSpace(per), 64)
	if ok && err == nil && n >= 1e-3 && n <= 1e5 {
		return 25.4 / n
	}
	return 0
}

// overriddenUnit gives the size in mm of one unit as stated by the user: "mm",
// or "72/in" for so many units an inch. 0 when nothing is stated.
func overriddenUnit(units string, r *trace.Report) (mm float64) {
	if units == "" {
		return 0
	}
	if mm := mmOfUnit(units); mm > 0 {
		return mm
	}
	r.Problem("unit", r.File, "write mm, cm, m, in, ft, yd or a number of units an inch such as 72/in", "%q is not a unit for a drawing", units)
	return math.NaN()
}

// dxfUnit is one value of $INSUNITS, from the published DXF reference.
type dxfUnit struct {
	name string
	mm   float64
}

var dxfUnits = map[int]dxfUnit{
	1: {"inches", 25.4}, 2: {"feet", 304.8}, 4: {"mm", 1}, 5: {"cm", 10}, 6: {"m", 1000}, 8: {"microinches", 25.4e-6},
	9: {"mils", 0.0254}, 10: {"yards", 914.4}, 13: {"µm", 0.001}, 14: {"dm", 100},
	21: {"US survey feet", 1200000.0 / 3937}, 22: {"US survey inches", 100000.0 / 3937}, 23: {"US survey yards", 3600000.0 / 3937},
}

// unitOfDXF gives the mm of one drawing unit and where that comes from; 0 when
// the drawing does not say, which is then a problem.
func unitOfDXF(f *dxf.File, override float64, units string, r *trace.Report) (mm float64, from string) {
	ins, stated := f.Variable("$INSUNITS")
	metric, told := f.Variable("$MEASUREMENT")
	u, known := dxfUnits[ins]
	switch {
	case override > 0:
		from = "stated: " + units
		if stated && ins != 0 {
			r.Note("unit", "the drawing says $INSUNITS %d%s; read with units of %s as stated", ins, inBrackets(u.name), units)
		} else {
			r.Note("unit", "the drawing does not say its unit; read with units of %s as stated", units)
		}
		return override, from
	case stated && known:
		from = fmt.Sprintf("$INSUNITS %d (%s)", ins, u.name)
		inches := ins == 1 || ins == 2 || ins == 8 || ins == 9 || ins == 10 || ins > 20
		if told && metric <= 1 && inches == (metric == 1) {
			r.Note("unit", "$INSUNITS %d says %s but $MEASUREMENT %d says %s: read in %s; check the size",
				ins, u.name, metric, measurement(metric), u.name)
		}
		return u.mm, from
	case stated && ins != 0:
		r.Problem("unit", r.File, unitCure, "$INSUNITS %d is no unit for a part", ins)
	case told && metric == 1:
		r.Note("unit", "no unit is stated ($INSUNITS %s), but $MEASUREMENT 1 says metric: taken as mm; check the size", statedAs(stated))
		return 1, "$MEASUREMENT 1 (metric, taken as mm)"
	default:
		r.Problem("unit", r.File, unitCure, "the drawing does not say its unit ($INSUNITS %s)", statedAs(stated))
	}
	return 0, ""
}

func measurement(m int) string {
	if m == 1 {
		return "metric"
	}
	return "inches"
}

func statedAs(stated bool) string {
	if stated {
		return "is 0"
	}
	return "is missing"
}

func inBrackets(s string) string {
	if s == "" {
		return ""
	}
	return " (" + s + ")"
}
