package list

import (
	"slices"
	"strconv"
	"strings"

	"stripwright/laminate"
	"stripwright/laminate/content"
	"stripwright/laminate/measured"
	"stripwright/laminate/panel"
	"stripwright/output/sheet"
)

// Material gives what the laminate is in figures: thickness, weight and fibre
// content; stiffness, expansion and warp; and the measured panel and uptakes,
// where there are any.
func Material(p laminate.Plan) []Section {
	r := content.Of(p)
	out := []Section{clothSection(r), zoneSection(p, r)}
	out = append(out, stiffness(panel.Of(p, r), r.Missing)...)
	if m := measured.Of(p, r); m != nil {
		out = append(out, measuredSection(*m))
	}
	if u := measured.Uptakes(p); len(u) > 0 {
		out = append(out, uptakeSection(u))
	}
	return out
}

// clothSection lists what each fabric comes to in its resin.
func clothSection(r content.Report) Section {
	s := Section{Heading: "Cloth in its resin"}
	s.Table = [][]string{{"fabric", "cloth g/m2", "fibre", "g/cm3", "fibre volume", "fibre mass", "a ply mm", "resin g/m2"}}
	for _, c := range r.Cloths {
		if !slices.ContainsFunc(r.Plies, func(y content.Ply) bool { return y.Fabric == c.Fabric }) {
			continue
		}
		s.Table = append(s.Table, []string{
			sheet.Spelt(c.Fabric), number(c.WeightGSM, 1), orDash(sheet.Spelt(c.Fibre)), figure(c.DensityGCM3, 1, 3, ""),
			spanned(c.Band, 100, 1, " %", c.FibreVolume.Known()), known(c.FibreMass > 0, number(100*c.FibreMass, 1)+" %"),
			spanned(c.ThicknessMM, 1, 3, "", c.Thick()), spanned(c.ResinGSM, 1, 0, "", c.Weighed()),
		})
		s.Lines = append(s.Lines, standsOn(c)...)
		if c.Unusual != "" {
			s.Lines = append(s.Lines, "LOOK AGAIN: "+sheet.Spelt(c.Unusual))
		}
	}
	if r.Resin.Known() {
		s.Lines = append(s.Lines, "resin: "+number(r.Resin.Value, 3)+" g/cm3, cured; "+basis(r.Resin))
	}
	s.Lines = append(s.Lines, "Voids are not reckoned.")
	return s
}

// standsOn says what the figures of a cloth stand on.
func standsOn(c content.Cloth) []string {
	var words []string
	if c.DensityGCM3.Known() {
		words = append(words, "density "+basis(c.DensityGCM3))
	}
	if c.FibreVolume.Known() {
		words = append(words, "fibre volume "+basis(c.FibreVolume))
	}
	if c.BandFrom != "" {
		words = append(words, "spread: "+c.BandFrom)
	}
	if len(words) == 0 {
		return nil
	}
	return []string{sheet.Spelt(c.Fabric) + ": " + strings.Join(words, "; ")}
}

// basis says where a figure comes from: "given", "assumed, generic e-glass".
func basis(f laminate.Figure) string {
	if f.From == "" {
		return f.Basis
	}
	return f.Basis + ", " + sheet.Spelt(f.From)
}

// zoneSection lists thickness and weight of each zone, and of the part.
func zoneSection(p laminate.Plan, r content.Report) Section {
	s := Section{Heading: "Thickness, weight and fibre content, of the finished part without trim"}
	s.Table = [][]string{{"zone", "plies", "area", "thickness mm", "in", "fibre volume", "fibre mass", "g/cm3", "fibre kg", "resin kg", "all kg", "lb"}}
	rule, cores, laps := false, false, false
	for _, z := range r.Zones {
		s.Table = append(s.Table, zoneRow(p, z))
		rule, cores = rule || z.WorkshopMM > 0, cores || len(z.Cores) > 0
	}
	if len(r.Zones) > 1 {
		s.Table = append(s.Table, append([]string{"part", "", area(r.NetMM2), "", ""}, sumCells(r.Whole)...))
	}
	for _, y := range r.Plies {
		laps = laps || y.Laps > 1
	}
	if rule {
		s.Lines = append(s.Lines, workshopLines(r)...)
	}
	if cores {
		s.Lines = append(s.Lines, "Thickness and weight hold the core; fibre volume, fibre mass and density are those of the skins. Resin holds what the core's faces take up.")
	}
	if laps {
		s.Lines = append(s.Lines, "Overlapping laps are in thickness and weight, spread over their ply.")
	}
	for _, m := range r.Missing {
		s.Lines = append(s.Lines, "MISSING: "+sheet.Spelt(m))
	}
	return s
}

func zoneRow(p laminate.Plan, z content.Zone) []string {
	row := []string{z.Name, plyNumbers(p, z.Plies), area(z.AreaMM2)}
	row = append(row, spanned(z.ThicknessMM, 1, 2, "", z.Thick), spanned(z.ThicknessMM, 1/25.4, 3, "", z.Thick))
	return append(row, sumCells(z.Sums)...)
}

func sumCells(s content.Sums) []string {
	all := s.MassG()
	return []string{
		known(s.FibreVolume() > 0, number(100*s.FibreVolume(), 1)+" %"), known(s.FibreMass() > 0, number(100*s.FibreMass(), 1)+" %"),
		known(s.DensityGCM3() > 0, number(s.DensityGCM3(), 3)), number(s.FibreG/1000, 3),
		known(s.Weighed, number((s.ResinG.Value+s.CoreTakeG)/1000, 3)), spanned(all, 1e-3, 3, "", s.Weighed), spanned(all, 1/453.59237, 2, "", s.Weighed),
	}
}

// workshopLines set the workshop rule beside the thickness.
func workshopLines(r content.Report) []string {
	var words []string
	apart := false
	for _, z := range r.Zones {
		if z.WorkshopMM == 0 {
			continue
		}
		words = append(words, z.Name+" "+number(z.WorkshopMM, 2)+" mm ("+number(z.WorkshopMM/25.4, 3)+" in)")
		apart = apart || z.Apart()
	}
	lines := []string{"By the workshop rule for carbon, infused or prepreg and well compacted, about 1 mm for each 1000 g/m2 of cloth (common practice, no source): " + strings.Join(words, ", ") + "."}
	if apart {
		lines = append(lines, "The two differ by more than 10 %: check the fibre content, and measure a test panel before a mould or a fit depends on it.")
	}
	return lines
}

// plyNumbers prints the plies at places of a plan: "1-4, 7".
func plyNumbers(p laminate.Plan, places []int) string {
	var words []string
	for i := 0; i < len(places); {
		k := i
		for k+1 < len(places) && p.Plies[places[k+1]].Ply == p.Plies[places[k]].Ply+1 {
			k++
		}
		word := strconv.Itoa(p.Plies[places[i]].Ply)
		if k > i {
			word += "-" + strconv.Itoa(p.Plies[places[k]].Ply)
		}
		words = append(words, word)
		i = k + 1
	}
	return orDash(strings.Join(words, ", "))
}

func orDash(words string) string {
	if words == "" {
		return "-"
	}
	return words
}

// known prints words, or that they are not known.
func known(ok bool, words string) string {
	if !ok {
		return "?"
	}
	return words
}

func figure(f laminate.Figure, by float64, decimals int, unit string) string {
	return known(f.Known(), number(f.Value*by, decimals)+unit)
}

// spanned prints a figure, with its span where there is one: "2.7 (2.5-2.9)".
func spanned(s content.Span, by float64, decimals int, unit string, ok bool) string {
	words := number(s.Value*by, decimals)
	if low, high := number(s.Low*by, decimals), number(s.High*by, decimals); low != high {
		words += " (" + low + "-" + high + ")"
	}
	return known(ok, words+unit)
}

// area prints an area in m² and ft².
func area(mm2 float64) string {
	return number(mm2/1e6, 3) + " m2 (" + number(mm2/(304.8*304.8), 2) + " ft2)"
}
