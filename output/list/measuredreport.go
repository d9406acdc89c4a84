package list

import (
	"stripwright/laminate/content"
	"stripwright/laminate/measured"
	"stripwright/output/sheet"
)

// ounceFoot is an ounce per square foot in g/m².
const ounceFoot = 28.349523125 / (0.3048 * 0.3048)

// measuredSection sets the finished panel beside what was reckoned.
func measuredSection(m measured.Panel) Section {
	s := Section{Heading: "The measured panel, held against " + sheet.Spelt(m.Of)}
	if m.PanelGSM > 0 {
		s.Table = measuredRows(m)
	}
	if m.FibreGSM > 0 {
		how := "Fibre from the cloth's weight"
		if m.Weighed {
			how = "Fibre as weighed dry"
		}
		s.Lines = append(s.Lines, how+", "+number(m.FibreGSM, 0)+" g/m2; fibre by volume after ASTM D3171, method II (from memory).")
	}
	if m.Contradicted != "" {
		s.Lines = append(s.Lines, "THE FIGURES CONTRADICT EACH OTHER: "+m.Contradicted+". Weigh and measure again.")
	}
	if m.Void != nil {
		s.Lines = append(s.Lines, voidLines(*m.Void)...)
	}
	for _, w := range m.Missing {
		s.Lines = append(s.Lines, "MISSING: "+sheet.Spelt(w))
	}
	return s
}

// measuredRows set each figure beside the one reckoned; what was not worked out
// is left out.
func measuredRows(m measured.Panel) [][]string {
	k := m.Reckoned
	rows := [][]string{
		{"", "measured", "reckoned"},
		{"weight g/m2", number(m.PanelGSM, 0), known(k.PanelGSM > 0, number(k.PanelGSM, 0))},
		{"weight oz/ft2", number(m.PanelGSM/ounceFoot, 1), known(k.PanelGSM > 0, number(k.PanelGSM/ounceFoot, 1))},
		{"thickness mm", number(m.ThicknessMM, 2), spanned(k.ThicknessMM, 1, 2, "", k.FibreVolume > 0)},
		{"density g/cm3", number(m.DensityGCM3, 3), known(k.DensityGCM3 > 0, number(k.DensityGCM3, 3))},
	}
	if m.FibreGSM == 0 {
		return rows
	}
	rows = append(rows,
		[]string{"fibre by volume", spanned(m.FibreVolume, 100, 1, " %", true), known(k.FibreVolume > 0, number(100*k.FibreVolume, 1)+" %")})
	if m.ResinGSM <= 0 {
		return rows
	}
	return append(rows,
		[]string{"fibre by weight", spanned(m.FibreMass, 100, 1, " %", true), known(k.FibreMass > 0, number(100*k.FibreMass, 1)+" %")},
		[]string{"resin by weight", spanned(rest(m.FibreMass), 100, 1, " %", true), known(k.FibreMass > 0, number(100*(1-k.FibreMass), 1)+" %")},
	)
}

func rest(s content.Span) content.Span {
	return content.Span{Value: 1 - s.Value, Low: 1 - s.High, High: 1 - s.Low}
}

// voidLines say what the void estimate is worth.
func voidLines(v measured.Void) []string {
	lines := []string{"Voids after ASTM D2734 (from memory): " + number(v.Percent, 1) + " % of the volume."}
	for _, c := range v.Causes {
		lines = append(lines, "  by "+c.Words+": "+number(c.Low, 1)+" to "+number(c.High, 1)+" %")
	}
	all := number(v.Low, 1) + " to " + number(v.High, 1) + " %"
	if len(v.Causes) > 1 {
		lines = append(lines, "  one at a time: "+number(v.OneLow, 1)+" to "+number(v.OneHigh, 1)+" %; all at once: "+all)
	}
	switch {
	case v.Trusted():
		return append(lines, "The spread is smaller than the figure: it may be taken as an estimate.")
	case v.Low <= 0:
		return append(lines, "THE VOID FIGURE CANNOT BE TRUSTED: "+all+" reaches 0. Have the fibre burnt or digested out, or a section looked at.")
	}
	return append(lines, "THE VOID FIGURE CANNOT BE TRUSTED: its spread, "+all+", is wider than the figure itself. Have the fibre burnt or digested out, or a section looked at.")
}

// uptakeSection lists what consumables took up.
func uptakeSection(taken []measured.Taken) Section {
	s := Section{Heading: "Resin taken up, from dry and wet weights"}
	s.Table = [][]string{{"consumable", "g/m2", "oz/ft2", "the job reckons with g/m2"}}
	for _, t := range taken {
		stated := "-"
		if t.StatedGSM > 0 {
			stated = number(t.StatedGSM, 0) + " (" + t.StatedAs + ")"
		}
		ok := t.Wrong == ""
		s.Table = append(s.Table, []string{sheet.Spelt(t.Consumable), known(ok, number(t.GSM, 0)), known(ok, number(t.GSM/ounceFoot, 2)), stated})
		switch {
		case !ok:
			s.Lines = append(s.Lines, sheet.Spelt(t.Consumable)+": "+t.Wrong)
		case t.Differs():
			s.Lines = append(s.Lines, sheet.Spelt(t.Consumable)+": the job reckons with another figure, by more than 10 %: write uptake: "+number(t.GSM, 0)+" g/m2")
		}
	}
	return s
}
