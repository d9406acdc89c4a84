package list

import (
	"sort"
	"strconv"

	"stripwright/laminate"
	"stripwright/laminate/order"
)

var orderHead = []string{
	"fabric", "weight_gsm", "width_mm", "width_in", "rolls_used", "pieces",
	"used_mm", "used_m", "used_yd", "on_hand_mm", "spare_percent", "sold_by_mm", "to_buy_mm", "to_buy_m", "to_buy_yd",
}

// Order gives what cloth is used and what is to be bought, by fabric and width,
// as CSV: what is cut from rolls on hand is taken off, then comes the spare,
// rounded up to what is sold.
func Order(p laminate.Plan) ([]byte, error) {
	rows := [][]string{orderHead}
	for _, l := range p.Lengths {
		rolls, pieces := rollsOf(p, l)
		rows = append(rows, []string{
			named("fabric", l.Fabric), number(weightOf(p, l.Fabric), 1), mm(l.WidthMM), inch(l.WidthMM),
			strconv.Itoa(rolls), strconv.Itoa(pieces),
			mm(l.UsedMM), number(l.UsedMM/1000, 3), number(l.UsedMM/914.4, 3),
			mm(order.OnHand(p, l)),
			number(p.Rules.SparePercent, 3), mm(p.Rules.SoldByMM),
			mm(l.ToBuyMM), number(l.ToBuyMM/1000, 3), number(l.ToBuyMM/914.4, 3),
		})
	}
	return write(rows)
}

func rollsOf(p laminate.Plan, l laminate.RollLength) (rolls, pieces int) {
	for _, r := range p.Rolls {
		if r.Fabric == l.Fabric && r.WidthMM == l.WidthMM {
			rolls++
			pieces += len(r.Pieces)
		}
	}
	return rolls, pieces
}

func weightOf(p laminate.Plan, fabric string) float64 {
	for _, f := range p.Fabrics {
		if f.Name == fabric {
			return f.WeightGSM
		}
	}
	return 0
}

func sortPieces(pieces []laminate.Piece) {
	sort.SliceStable(pieces, func(a, b int) bool { return pieces[a].CutOrder < pieces[b].CutOrder })
}
