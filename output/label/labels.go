package label

import (
	"fmt"
	"image/color"
	"math"
	"sort"
	"strconv"

	"github.com/boombuler/barcode/qr"
	"github.com/paulmach/orb"

	"stripwright/geometry"
	"stripwright/laminate"
	"stripwright/output/layup"
	"stripwright/output/page"
	"stripwright/output/sheet"
)

// Sheets of labels in mm: as many across and down as fill A4.
const (
	across = 3
	down   = 8
	inset  = 4.0
)

// one is a label: a piece with its strip's ply.
type one struct {
	piece       laminate.Piece
	ply         laminate.PlanPly
	strip       laminate.Strip
	number, all int // piece n of m of its ply
	roll        string
}

// Labels draws the labels of all pieces, in cutting order. The only error is an id
// that no QR code holds.
func Labels(p laminate.Plan, sha string) ([]sheet.Scene, error) {
	size := page.A4
	wide, high := float64(size.Wide/across), float64(size.High/down)
	var pages []sheet.Scene
	for i, o := range labels(p) {
		k := i % (across * down)
		if k == 0 {
			pages = append(pages, sheet.Scene{Title: "LABELS", About: "Labels of the pieces. " + sheet.Verdict(p), Box: orb.Bound{Max: orb.Point{size.Wide, size.High}}})
		}
		corner := orb.Point{float64(float64(k%across) * wide), size.High - float64(float64(k/across)*high)}
		if err := o.draw(&pages[len(pages)-1], p, sha, orb.Bound{
			Min: orb.Point{corner[0] + inset, corner[1] - high + inset}, Max: orb.Point{corner[0] + wide - inset, corner[1] - inset},
		}); err != nil {
			return nil, err
		}
	}
	return pages, nil
}

// labels lists the pieces roll by roll in cutting order.
func labels(p laminate.Plan) []one {
	strips := map[string]one{}
	for _, ply := range p.Plies {
		for i, s := range ply.Strips {
			strips[s.ID] = one{ply: ply, strip: s, number: i + 1, all: len(ply.Strips)}
		}
	}
	var out []one
	for _, r := range p.Rolls {
		pieces := append([]laminate.Piece{}, r.Pieces...)
		sort.SliceStable(pieces, func(a, b int) bool { return pieces[a].CutOrder < pieces[b].CutOrder })
		for _, piece := range pieces {
			o := strips[piece.ID]
			o.piece, o.roll = piece, r.Roll+" no. "+strconv.Itoa(r.Copy)
			out = append(out, o)
		}
	}
	return out
}

// codeSide is the side of the QR code with its quiet zone in mm.
const codeSide = 23.0

func (o one) draw(s *sheet.Scene, p laminate.Plan, sha string, b orb.Bound) error {
	l := s.Layer("LABELS")
	if err := code(l, o.piece.ID, orb.Bound{Min: orb.Point{b.Min[0] - 1, b.Max[1] - codeSide + 1}, Max: orb.Point{b.Min[0] + codeSide - 1, b.Max[1] + 1}}); err != nil {
		return err
	}
	x, top := b.Min[0]+codeSide, b.Max[1]
	room := b.Max[0] - x
	l.Write(sheet.Text{At: orb.Point{x, top - 5}, Height: 5, Bold: true, Words: o.piece.ID}.Fitted(room))
	l.Write(sheet.Text{At: orb.Point{x, top - 9.6}, Height: 2.8, Bold: true, Words: "PLY " + strconv.Itoa(o.ply.Ply) + ", " + sheet.Degrees(o.ply.AngleDeg)}.Fitted(room))
	l.Write(sheet.Text{At: orb.Point{x, top - 13.2}, Height: page.SmallHigh, Words: "piece " + strconv.Itoa(o.number) + " of " + strconv.Itoa(o.all) + ", " + o.ply.Fabric}.Fitted(room))
	o.side(l, orb.Bound{Min: orb.Point{x, top - 22}, Max: orb.Point{b.Max[0], top - 15}})
	end, edge := o.towards(p)
	y := b.Min[1] + 4.2
	l.Arrow(sheet.Black, 0.5, 2.6, orb.Point{b.Min[0] + 14, y + 0.7}, orb.Point{b.Min[0], y + 0.7})
	l.Write(sheet.Text{At: orb.Point{b.Min[0] + 15.5, y}, Height: page.SmallHigh, Bold: true, Words: "free end of the roll. Towards " + datum(p) + ": " + end + ", " + edge}.Fitted(b.Max[0] - b.Min[0] - 15.5))
	if len(sha) > sheet.HashShown {
		sha = sha[:sheet.HashShown]
	}
	l.Write(sheet.Text{At: orb.Point{b.Min[0], b.Min[1] + 0.4}, Height: 1.6, Ink: sheet.Grey, Words: p.Title + ", roll " + o.roll + ", cut " + strconv.Itoa(o.piece.CutOrder) + ", plan " + sha}.Fitted(b.Max[0] - b.Min[0]))
	if len(sheet.Faults(p.Checks)) > 0 {
		f := s.Layer("FAULT")
		f.Box(sheet.Solid(sheet.Fault, 0.5), sheet.Fill{Ink: sheet.Fault, Spacing: 4, Width: 0.25, Crossed: true}, b)
		words := sheet.Text{Height: 5, Bold: true, Ink: sheet.Fault, Words: sheet.DoNotCut}.Centred(b.Center())
		f.Box(sheet.Pen{}, sheet.Fill{Ink: sheet.White}, words.Bounds().Pad(0.8))
		f.Write(words)
	}
	return nil
}

// side says which way the labelled side looks when the piece is laid: white on
// black where the piece is turned over.
func (o one) side(l *sheet.Layer, b orb.Bound) {
	fill, ink := sheet.Fill{Ink: sheet.White}, sheet.Black
	under := "this side up"
	if o.ply.Face == laminate.FaceDown {
		fill.Ink, ink, under = sheet.Black, sheet.White, "TURN OVER: this side down"
	}
	l.Box(sheet.Solid(sheet.Black, 0.35), fill, b)
	room := b.Max[0] - b.Min[0] - 2
	l.Write(sheet.Text{At: orb.Point{b.Min[0] + 1, b.Max[1] - 3.6}, Height: 2.8, Bold: true, Ink: ink, Words: layup.FaceWords(o.ply)}.Fitted(room))
	l.Write(sheet.Text{At: orb.Point{b.Min[0] + 1, b.Min[1] + 0.9}, Height: 1.8, Ink: ink, Words: under}.Fitted(room))
}

func datum(p laminate.Plan) string {
	if len(p.Part.Corners) == 0 {
		return "the datum"
	}
	return p.Part.Corners[0].Name
}

// towards names the end and the edge of the piece, as it lies on the roll, that
// are nearer to the datum once it is laid.
func (o one) towards(p laminate.Plan) (end, edge string) {
	if len(p.Part.Corners) == 0 || o.strip.Shape.Empty() {
		return "", ""
	}
	frame := geometry.PlyFrame(geometry.NewAngle(o.ply.AngleDeg))
	at := frame.Apply(orb.Point(p.Part.Corners[0].At))
	c := o.strip.Shape.In(frame).Bounds().Center()
	x, y := at[0]-float64(c[0]), at[1]-float64(c[1])
	if o.piece.Mirrored {
		y = -y
	}
	if o.piece.Turned == 180 {
		x, y = -x, -y
	}
	end, edge = "far end", "left edge"
	if x < 0 {
		end = "free end"
	}
	if y < 0 {
		edge = "right edge"
	}
	return end, edge
}

func dark(c color.Color) bool {
	r, _, _, _ := c.RGBA()
	return r == 0
}

// code draws the QR code of a text with a quiet zone of four modules.
func code(l *sheet.Layer, text string, b orb.Bound) error {
	c, err := qr.Encode(text, qr.H, qr.Auto)
	if err != nil {
		return fmt.Errorf("QR code of %q: %w", text, err)
	}
	n := c.Bounds().Dx()
	module := math.Floor((b.Max[0]-b.Min[0])/float64(n+8)*100) / 100 // short figures in the file
	shape := sheet.Shape{Fill: sheet.Fill{Ink: sheet.Black}}
	for row := range n {
		for col := 0; col < n; col++ {
			first := col
			for col < n && dark(c.At(col, row)) {
				col++
			}
			if col == first {
				continue
			}
			x0, x1 := b.Min[0]+float64(float64(first+4)*module), b.Min[0]+float64(float64(col+4)*module)
			y0 := b.Max[1] - float64(float64(row+5)*module)
			y1 := b.Max[1] - float64(float64(row+4)*module)
			shape.Lines = append(shape.Lines, sheet.Line{Points: []orb.Point{{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}}, Closed: true})
		}
	}
	l.Shapes = append(l.Shapes, shape)
	return nil
}
