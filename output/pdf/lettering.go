package pdf

import (
	"math"
	"strconv"

	"stripwright/output/sheet"
)

// lettering writes a text as one run, so that it is found and read back whole.
// Pen lettering comes out in the light face, as on paper nothing is penned.
func (p *page) lettering(t sheet.Text) {
	spelt := sheet.Spelt(t.Words)
	ink := t.Ink
	if ink == "" {
		ink = sheet.Black
	}
	p.setInk(1, ink)
	f := p.fonts.of(t.Bold)
	p.text("BT /" + f.name + " ")
	p.num(f.size(t.Height))
	p.text("Tf ")
	if t.Turn != 0 {
		sin, cos := math.Sincos(t.Turn * math.Pi / 180)
		for _, v := range [4]float64{cos, sin, -sin, cos} {
			p.text(strconv.FormatFloat(math.Round(v*1e6)/1e6+0, 'f', -1, 64) + " ")
		}
		p.point(t.Start())
		p.text("Tm <")
	} else {
		p.point(t.Start())
		p.text("Td <")
	}
	p.b = f.appendCodes(p.b, spelt)
	p.text("> Tj ET\n")
}
