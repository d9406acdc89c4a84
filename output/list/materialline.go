package list

import (
	"math"
	"strings"

	"stripwright/laminate"
	"stripwright/laminate/content"
	"stripwright/output/sheet"
)

// materialLine says in one line how thick and heavy the part becomes, "" for a
// part of no ply.
func materialLine(p laminate.Plan) string {
	r := content.Of(p)
	if len(p.Plies) == 0 || len(r.Zones) == 0 {
		return ""
	}
	if !r.Whole.Thick {
		return "laminate: " + sheet.Spelt(firstOf(r.Missing))
	}
	words := []string{"laminate: " + thicknessWords(r)}
	if r.Whole.Weighed {
		g := r.Whole.MassG().Value
		words = append(words, number(g/1000, 3)+" kg ("+number(g/453.59237, 2)+" lb) without trim")
	}
	words = append(words, number(100*r.Whole.FibreVolume(), 1)+" % fibre by volume"+assumedContent(r))
	return strings.Join(words, "; ")
}

func firstOf(words []string) string {
	if len(words) == 0 {
		return "thickness cannot be worked out"
	}
	return words[0]
}

// thicknessWords gives the thickness of the largest zone, and the span of all.
func thicknessWords(r content.Report) string {
	largest := r.Zones[0].ThicknessMM.Value
	words := number(largest, 2) + " mm (" + number(largest/25.4, 3) + " in)"
	if len(r.Zones) == 1 {
		return words + " thick"
	}
	low, high := largest, largest
	for _, z := range r.Zones {
		low, high = math.Min(low, z.ThicknessMM.Value), math.Max(high, z.ThicknessMM.Value)
	}
	return words + " thick, " + sheet.Counted(len(r.Zones), "zone", "zones") + " from " + number(low, 2) + " to " + number(high, 2) + " mm"
}

// assumedContent says that a fibre content was assumed.
func assumedContent(r content.Report) string {
	for _, c := range r.Cloths {
		for _, y := range r.Plies {
			if y.Fabric == c.Fabric && c.FibreVolume.Basis == laminate.Assumed {
				return " (assumed)"
			}
		}
	}
	return ""
}
