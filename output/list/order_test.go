package list

import (
	"encoding/json"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"stripwright/laminate"
	"stripwright/laminate/order"
	"stripwright/output/internal/handmade"
)

func assumedAs(v float64, from string) laminate.Figure {
	return laminate.Figure{Value: v, Basis: laminate.Assumed, From: from}
}

// supplied is the hatch with resin, consumables and a core.
func supplied() laminate.Plan {
	p := handmade.Hatch()
	p.Fabrics[0].DensityGCM3 = assumedAs(2.54, "generic e-glass")
	p.Resin = &laminate.Resin{
		Name: "epoxy", DensityGCM3: given(1.15), FibreVolume: given(0.52), LinesAndPotG: given(350), SparePercent: given(10),
		Mix: &laminate.Mix{PartsA: 100, PartsB: 30, DensityAGCM3: 1.13, DensityBGCM3: 0.98}, BatchG: 1000, PricePerKG: 18, HasPrice: true,
	}
	p.Consumables = []laminate.Consumable{
		{Name: "=peel", Kind: laminate.PeelPly, MarginMM: assumedAs(75, "the trim allowance and 50 mm"), UptakeGSM: given(90), Layers: 1, WidthMM: 1000, SoldByMM: 1000, SparePercent: given(5), PricePerMetre: 2.4, HasPrice: true},
		{Name: "mesh", Kind: laminate.FlowMedia, MarginMM: given(-20), Layers: 1, SparePercent: given(5)},
		{Name: "sealant tape", Kind: laminate.Sealant, MarginMM: given(125), Pleats: given(6), PleatMM: given(50), Layers: 1, SoldByMM: 15000, SparePercent: given(5), OnHandMM: 2000},
	}
	p.Cores = []laminate.Core{{Name: "foam 15", AfterPly: 1, Blank: p.Part.Blank, ThicknessMM: 15, DensityKGM3: 80, UptakeGSM: given(350), SheetMM: [2]float64{1200, 600}, PricePerSheet: 21, HasPrice: true}}
	return p
}

// The order sheet as it is printed, word for word.
func TestOrderText(t *testing.T) {
	got := OrderText(supplied())
	path := "testdata/order.txt"
	if *update {
		if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil || got != string(want) {
		t.Errorf("%s differs: %v\n%s", path, err, got)
	}
}

// The verdict comes first, and resin is not ordered without its cautions.
func TestOrderTextWarns(t *testing.T) {
	p := supplied()
	p.Checks = []laminate.CheckResult{{Rule: "stagger", Text: "plies 1 and 2, joints 3 mm apart"}}
	text := OrderText(p)
	first, _, _ := strings.Cut(text[strings.Index(text, "\n")+1:], "\n")
	if !strings.HasPrefix(first, "DO NOT CUT") {
		t.Errorf("a plan at fault begins with %q", first)
	}
	for _, words := range []string{"allergic", "heats itself", "mesh takes up", "TO MIX, AT LEAST"} {
		if !strings.Contains(text, words) {
			t.Errorf("nothing is said of %q", words)
		}
	}
	p.Resin = nil
	if text := OrderText(p); strings.Contains(text, "allergic") || strings.Contains(text, "Mixing") {
		t.Error("resin is spoken of where none is ordered")
	}
}

// CSV, JSON and the sum itself say the same, in both units: a yard is 0.9144 m, a
// pound 0.45359237 kg.
func TestOrderSaysTheSameEverywhere(t *testing.T) {
	p := supplied()
	sum := order.Of(p)
	data, err := OrderJSON(p)
	if err != nil {
		t.Fatal(err)
	}
	var read struct {
		Format string
		order.Order
	}
	if err := json.Unmarshal(data, &read); err != nil || read.Format != "stripwright-order" || len(read.Items) != len(sum.Items) || strings.Contains(string(data), "null,") {
		t.Fatalf("%v, %d items", err, len(read.Items))
	}
	csv, err := Order(p)
	lines := rows(t, csv, err)
	if len(lines) != len(sum.Items) || len(lines) != 7 {
		t.Fatalf("%d lines for %d items", len(lines), len(sum.Items))
	}
	figure := func(row map[string]string, column string) float64 {
		v, err := strconv.ParseFloat(row[column], 64)
		if err != nil {
			t.Errorf("%s: %v", column, err)
		}
		return v
	}
	each := map[string]float64{"m": 0.9144, "kg": 0.45359237, "m2": 0.9144 * 0.9144, "sheets": 1}
	for i, row := range lines {
		item := sum.Items[i]
		if row["kind"] != item.Kind || !strings.HasSuffix(row["item"], " "+item.Name) || row["unit"] != item.ToBuy.Unit || changed.MatchString(row["what"]) {
			t.Errorf("%v, want %+v", row, item)
		}
		if got := figure(row, "to_buy"); got != item.ToBuy.Value || read.Items[i].ToBuy != item.ToBuy || read.Items[i].Net.Value != figure(row, "net") {
			t.Errorf("%s: %v to buy in CSV, %v in JSON, want %v", item.Name, got, read.Items[i].ToBuy, item.ToBuy)
		}
		if us := figure(row, "to_buy_us") * each[item.ToBuy.Unit]; us < item.ToBuy.Value-1e-9 || us > item.ToBuy.Value+0.0001 {
			t.Errorf("%s: %v %s are %v %s", item.Name, row["to_buy_us"], row["us_unit"], us, item.ToBuy.Unit)
		}
		if net := figure(row, "net") * (1 + figure(row, "spare_percent")/100); figure(row, "to_buy") < net-figure(row, "on_hand")-0.001 {
			t.Errorf("%s: less to buy than is used", item.Name)
		}
	}
	price := 0.0
	for _, row := range lines {
		if row["price"] != "" {
			price += figure(row, "price")
		}
	}
	if math.Abs(price-sum.Price) > 0.005 || price == 0 {
		t.Errorf("prices add up to %v, want %v", price, sum.Price)
	}
}

// An inch shop reads its own units first.
func TestOrderTextInInches(t *testing.T) {
	p := supplied()
	p.Units = "in"
	text := OrderText(p)
	for _, words := range []string{" yd (", " lb (", " oz (", " ft2 ("} {
		if !strings.Contains(text, words) {
			t.Errorf("no %q", words)
		}
	}
}
