package list

import (
	"encoding/json"
	"sort"
	"strconv"
	"strings"

	"stripwright/laminate"
	"stripwright/laminate/order"
	"stripwright/output/sheet"
)

var orderHead = []string{
	"kind", "item", "what", "width_mm", "width_in", "net", "unit", "net_us", "us_unit", "net_basis", "spare_percent", "spare_basis",
	"sold_by", "on_hand", "to_buy", "to_buy_us", "price_each", "price", "assumed", "rolls_used", "pieces",
}

// Order gives what is to be bought as CSV, a line for each item: cloth by fabric
// and width, resin and hardener, consumables, cores. Amounts are in unit (m, kg,
// m2, sheets), the same in us_unit beside them; spare, what is sold by and what is
// on hand are accounted for in to_buy. A price is empty where none is known.
func Order(p laminate.Plan) ([]byte, error) {
	rows := [][]string{orderHead}
	for _, i := range order.Of(p).Items {
		row := []string{
			i.Kind, named(wordOf(i.Kind), i.Name), text(i.What), sized(i.WidthMM, mm), sized(i.WidthMM, inch),
			number(i.Net.Value, 4), i.Net.Unit, number(i.Net.US, 4), i.Net.USUnit, i.Basis,
			number(i.SparePercent.Value, 3), i.SparePercent.Basis, number(i.SoldBy.Value, 4), number(i.OnHand.Value, 4),
			number(i.ToBuy.Value, 4), number(i.ToBuy.US, 4), "", "", text(strings.Join(i.Assumed, "; ")), "", "",
		}
		if i.HasPrice {
			row[16], row[17] = number(i.PriceEach, 4), number(i.Price, 2)
		}
		if i.Kind == order.ClothItem {
			rolls, pieces := rollsOf(p, laminate.RollLength{Fabric: i.Name, WidthMM: i.WidthMM})
			row[19], row[20] = strconv.Itoa(rolls), strconv.Itoa(pieces)
		}
		rows = append(rows, row)
	}
	return write(rows)
}

// wordOf gives the word that a name stands behind.
func wordOf(kind string) string {
	if kind == order.ClothItem {
		return "fabric"
	}
	return kind
}

// text keeps words that begin as a number or a formula does from being read as
// one.
func text(s string) string {
	if s != "" && strings.ContainsRune("=+-@0123456789", rune(s[0])) {
		return "of " + s
	}
	return s
}

// sized gives a width, nothing where there is none.
func sized(v float64, print func(float64) string) string {
	if v == 0 {
		return ""
	}
	return print(v)
}

// OrderJSON gives the order for machines: every figure with its unit and basis,
// and whether the plan behind it is sound.
func OrderJSON(p laminate.Plan) ([]byte, error) {
	data, err := json.MarshalIndent(struct {
		Format  string `json:"format"`
		Version int    `json:"version"`
		Verdict string `json:"verdict"`
		Sound   bool   `json:"sound"`
		order.Order
	}{"stripwright-order", 1, sheet.Verdict(p), len(sheet.Faults(p.Checks)) == 0, order.Of(p)}, "", "  ")
	return append(data, '\n'), err
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

func sortPieces(pieces []laminate.Piece) {
	sort.SliceStable(pieces, func(a, b int) bool { return pieces[a].CutOrder < pieces[b].CutOrder })
}
