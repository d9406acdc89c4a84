package list

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"stripwright/laminate/panel"
	"stripwright/laminate/theory"
	"stripwright/output/sheet"
)

// stiffness gives the sections of stiffness and of heat; what is missing and has
// been asked for already is not asked for again.
func stiffness(found panel.Report, asked []string) []Section {
	s := Section{Heading: "Stiffness, by classical lamination theory"}
	couples, core := false, false
	for _, z := range found.Zones {
		couples, core = couples || z.Known && z.Whole.Couples(), core || z.Known && z.Core
	}
	s.Table = [][]string{{"zone", "mm", "Ex GPa", "Ey GPa", "Gxy GPa", "nu xy", "bending Ex", "bending Ey"}}
	if couples {
		s.Table[0] = append(s.Table[0], "held flat Ex", "held flat Ey", "coupling")
	}
	for _, z := range found.Zones {
		if z.Known {
			s.Table = append(s.Table, constantRows(z, couples)...)
		}
	}
	for _, c := range found.Constants {
		if c.Known() {
			s.Lines = append(s.Lines, constantWords(c))
		}
	}
	if len(s.Table) > 1 {
		s.Lines = append(s.Lines, "x is 0°, y is 90°; all for a panel that nothing holds. Linear and thin-walled, without voids, without the crimp of woven cloth, no strength. Generic figures are estimates: have a test piece pulled where stiffness counts.")
	}
	if couples {
		s.Lines = append(s.Lines, "Coupling is |B| over the root of |A| times |D|: 0 for a mirror. A laminate that couples bends when it is pulled; held flat, by a rim or ribs, it is stiffer.")
	}
	if core {
		s.Lines = append(s.Lines, "With a core the moduli are those of the whole thickness; neither the core's shear nor its expansion is reckoned: a real panel bends more.")
	}
	for _, m := range found.Missing {
		if !slices.Contains(asked, m) {
			s.Lines = append(s.Lines, "MISSING: "+sheet.Spelt(m))
		}
	}
	if len(s.Table) == 1 {
		s.Lines = append(s.Lines, "Not worked out, for want of what is missing.")
		return []Section{s}
	}
	return []Section{s, matrices(found), heat(found)}
}

// constantRows give a zone, and its skins where it has a core.
func constantRows(z panel.Zone, couples bool) [][]string {
	rows := [][]string{constantRow(z.Name, z.Whole, couples)}
	for i, skin := range z.Skins {
		rows = append(rows, constantRow(z.Name+" skin "+strconv.Itoa(i+1), skin, couples))
	}
	return rows
}

func constantRow(name string, s theory.Stiffness, couples bool) []string {
	m, b := s.Membrane(), s.Bending()
	row := []string{name, number(s.ThicknessMM, 2), gpa(m.Ex), gpa(m.Ey), gpa(m.Gxy), number(m.Nuxy, 3), gpa(b.Ex), gpa(b.Ey)}
	if !couples {
		return row
	}
	h, coupling := s.Held(), "0"
	if s.Couples() {
		coupling = number(s.Coupling(), 4)
	}
	return append(row, gpa(h.Ex), gpa(h.Ey), coupling)
}

func gpa(v float64) string { return number(v, 1) }

// constantWords name the constants of a layer and what they stand on.
func constantWords(c panel.Constants) string {
	e := c.Elastic
	from := c.Basis
	if c.From != "" {
		from += ": " + c.From
	}
	return sheet.Spelt(c.Fabric) + ": a layer along its fibre E1 " + number(e.E1, 1) + ", E2 " + number(e.E2, 2) + ", G12 " + number(e.G12, 2) +
		" GPa, nu12 " + number(e.Nu12, 3) + ", expansion " + number(e.Alpha1, 2) + " and " + number(e.Alpha2, 1) + " 1e-6/K (" + sheet.Spelt(from) + ")"
}

// matrices print A, B and D.
func matrices(found panel.Report) Section {
	s := Section{Heading: "Stiffness matrices, for further sums: A in N/mm, B in N, D in N mm"}
	s.Table = [][]string{{"zone", "", "11", "12", "22", "16", "26", "66"}}
	for _, z := range found.Zones {
		if !z.Known {
			continue
		}
		for _, m := range []struct {
			name string
			m    theory.Mat
		}{{"A", z.Whole.A}, {"B", z.Whole.B}, {"D", z.Whole.D}} {
			row := []string{z.Name, m.name}
			least := rounding(m.name, z.Whole)
			for _, at := range [6][2]int{{0, 0}, {0, 1}, {1, 1}, {0, 2}, {1, 2}, {2, 2}} {
				row = append(row, entry(m.m[at[0]][at[1]], least))
			}
			s.Table = append(s.Table, row)
		}
	}
	s.Lines = []string{"Heights from the middle of the laminate upwards, away from the tool; shear strain is the engineering one."}
	return s
}

// rounding gives what is left of 0 in a matrix by rounding.
func rounding(name string, s theory.Stiffness) float64 {
	size := s.A[0][0] + s.A[1][1]
	switch name {
	case "B":
		size *= s.ThicknessMM
	case "D":
		size *= s.ThicknessMM * s.ThicknessMM
	}
	return 1e-9 * size
}

// entry prints an entry of a matrix to five figures.
func entry(v, least float64) string {
	if v > -least && v < least {
		return "0"
	}
	return strconv.FormatFloat(v, 'e', 4, 64)
}

// heat gives expansion, and the warp of what couples.
func heat(found panel.Report) Section {
	s := Section{Heading: "Expansion by heat, and warp"}
	s.Table = [][]string{{"zone", "along x 1e-6/K", "along y 1e-6/K", "warp over 1 m for 100 K", "along", "square to it"}}
	var warped []string
	saddle, still := false, false
	for _, z := range found.Zones {
		if !z.Known {
			continue
		}
		e, w := z.Whole.Expansion(), panel.WarpOf(z.Whole)
		row := []string{z.Name, number(e[0], 2), number(e[1], 2), "none", "-", "-"}
		if w.Some() {
			row = append(row[:3], "about "+standsOff(w.MostMM)+" mm", sheet.Degrees(whole(w.AlongDeg)), standsOff(w.SquareMM)+" mm"+opposite(w))
			warped, saddle = append(warped, z.Name), saddle || w.Opposite
		}
		still = still || z.Whole.Couples() && !w.Some()
		s.Table = append(s.Table, row)
	}
	s.Lines = warpLines(warped, saddle, still, len(found.Zones) > 1)
	return s
}

// warpLines put the figures into words: the zones that warp, whether one takes a
// saddle, whether one couples and stays flat, and whether there are several.
func warpLines(warped []string, saddle, still, several bool) []string {
	var lines []string
	if len(warped) > 0 {
		words := "WARP"
		if several {
			words += " of " + strings.Join(warped, ", ") + ", as if the whole panel were made like the zone"
		}
		lines = append(lines, words+": a free panel of 1 m stands off a straight edge by about the figure above for each 100 °C (180 °F) that it cools, cure shrinkage and moisture not included. It is a warning with a number, not a shape: a rim, ribs or a core hold a panel. Twice as thick warps half as much.")
	}
	if saddle {
		lines = append(lines, "Where it bends to opposite sides, linear theory gives a saddle; a thin panel takes one of two cylinders instead, and may snap from one to the other (from memory).")
	}
	if still {
		lines = append(lines, "Where a zone couples and no warp is given, its layers expand alike on both sides of the middle: it bends when it is pulled, and stays flat when it cools.")
	}
	return lines
}

// standsOff prints a bow: to 0.1 mm below 10 mm, else to 1 mm.
func standsOff(v float64) string {
	if v < 10 {
		return number(v, 1)
	}
	return number(v, 0)
}

func opposite(w panel.Warp) string {
	if w.Opposite && w.SquareMM >= 0.05 {
		return ", to the other side"
	}
	return ""
}

// whole rounds an angle to a degree; -90° is 90°.
func whole(deg float64) float64 {
	if r := math.Round(deg); r > -90 {
		return r
	}
	return 90
}
