package paper

import (
	"strconv"

	"github.com/paulmach/orb"

	"stripwright/laminate"
	"stripwright/output/layup"
	"stripwright/output/page"
	"stripwright/output/sheet"
)

// cutPlace is where a strip is cut: a roll and a number in its cutting order.
type cutPlace struct {
	roll  string
	copy  int
	order int
}

// words names the place: "T-300 no. 1".
func (c cutPlace) words() string {
	if c.roll == "" {
		return "no roll"
	}
	return c.roll + " no. " + strconv.Itoa(c.copy)
}

// cutOf gives the place of each strip of a plan.
func cutOf(p laminate.Plan) map[string]cutPlace {
	out := map[string]cutPlace{}
	for _, r := range p.Rolls {
		for _, piece := range r.Pieces {
			out[piece.ID] = cutPlace{r.Roll, r.Copy, piece.CutOrder}
		}
	}
	return out
}

// kitPages composes a card for each ply: what lies in its kit before it is laid.
func (b *press) kitPages() {
	b.section("KIT CARDS", nil, func(further bool) {
		b.say(page.Margin, b.y-page.TitleHigh, page.TitleHigh, b.size.Inner(), true, "KIT CARDS")
		b.y -= 12
		if !further {
			b.paragraph(page.Margin, b.size.Inner(), page.BodyHigh, false, "One kit for each ply: put its pieces together as they are cut, tick them, and weigh the kit before it is laid.")
			b.y -= 2
		}
	})
	for _, ply := range b.plan.Plies {
		b.kitCard(ply)
	}
}

// Measures of a kit card.
const (
	cardHead = 14.0
	cardRow  = 5.2
	cardSide = 3 // pieces side by side
)

// kitCard draws one card; one longer than a page goes on on the next.
func (b *press) kitCard(ply laminate.PlanPly) {
	strips := ply.Strips
	for first := true; first || len(strips) > 0; first = false {
		rows := (len(strips) + cardSide - 1) / cardSide
		b.need(cardHead + float64(cardRow*float64(min(rows, 6))) + 4)
		fit := min(rows, int((b.y-floor-cardHead-4)/cardRow))
		n := min(len(strips), fit*cardSide)
		b.card(ply, strips[:n], !first)
		strips = strips[n:]
	}
}

func (b *press) card(ply laminate.PlanPly, strips []laminate.Strip, further bool) {
	rows := (len(strips) + cardSide - 1) / cardSide
	high := cardHead + float64(cardRow*float64(rows))
	top, inner := b.y, b.size.Inner()
	b.l.Box(sheet.Solid(sheet.Black, 0.4), sheet.Fill{}, orb.Bound{Min: orb.Point{page.Margin, top - high}, Max: orb.Point{b.right(), top}})
	title := "KIT OF PLY " + strconv.Itoa(ply.Ply)
	if further {
		title += ", continued"
	}
	b.say(page.Margin+2, top-5.4, 3.6, 0.36*inner, true, title)
	b.say(page.Margin+float64(0.38*inner), top-5.4, page.HeadHigh, 0.6*inner, true, ply.Fabric+", "+sheet.Degrees(ply.AngleDeg)+", "+layup.FaceWords(ply))
	b.say(page.Margin+2, top-10, page.BodyHigh, inner-62, false, sheet.Counted(len(ply.Strips), "piece", "pieces")+", "+gramsOf(b.plan, ply.Ply)+" dry; "+b.longest(ply))
	b.blank(b.right()-56, top-10, 54, "weighed, g")
	wide := (inner - 4) / cardSide
	for i, strip := range strips {
		x, y := page.Margin+2+float64(float64(i/rows)*wide), top-cardHead-float64(float64(i%rows)*cardRow)-1.4
		b.tick(x, y-0.6, 3.6)
		id := sheet.Text{At: orb.Point{x + 5, y}, Height: page.BodyHigh, Bold: true, Words: strip.ID}
		b.l.Write(id)
		b.say(x+6+id.Width(), y, page.SmallHigh, wide-id.Width()-8, false, b.cut[strip.ID].words()+", cut "+strconv.Itoa(b.cut[strip.ID].order))
	}
	b.y -= high + 3
}

// longest says how long the ply's longest piece is and how it is handled.
func (b *press) longest(ply laminate.PlanPly) string {
	long, id := 0.0, ""
	for _, s := range ply.Strips {
		if l := layup.Length(ply, s); l > long {
			long, id = l, layup.ShortID(s.ID)
		}
	}
	return "longest " + id + " " + sheet.Mark(long, b.plan.Units) + ", " + layup.HandlingWords(b.plan, long)
}
