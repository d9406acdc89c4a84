package book

import (
	"strconv"

	"stripwright/laminate"
	"stripwright/output/cutmap"
	"stripwright/output/sheet"
)

// Measures of a roll map in units. A long roll is drawn in rows, so that its
// cloth is at least leastCloth high, but in mostRows at most.
const (
	leastCloth = 120.0
	mostCloth  = 330.0
	rollLeft   = 62.0
	rollRight  = 18.0
	rollWide   = across - rollLeft - rollRight
	mostRows   = 500
)

// rollView is the page of one roll, or one table length of it.
type rollView struct {
	ID, Title, Fabric   string
	Width, Usable       string
	Face                string
	Pieces              int
	Long, From, Remains string
	FaceDown            int // pieces laid face down
	Rows                []figure
}

func (b *book) rollViews() []rollView {
	var out []rollView
	for i, l := range cutmap.Lengths(b.plan) {
		v := rollView{
			ID: "roll-" + strconv.Itoa(i+1), Title: lengthName(l), Fabric: shown(l.Fabric.Name),
			Width: sheet.Tape(l.Roll.WidthMM, b.plan.Units), Face: faceUpWords(l.Fabric),
			Pieces: len(l.Pieces), Long: sheet.Tape(l.Long(), b.plan.Units), Remains: l.RemainderWords(b.plan.Units),
		}
		if l.Edge() > 0 {
			v.Usable = sheet.Tape(l.Roll.UsableWidthMM, b.plan.Units)
		}
		if l.From > 0 {
			v.From = sheet.Mark(l.From, b.plan.Units)
		}
		for _, piece := range l.Pieces {
			if piece.Mirrored {
				v.FaceDown++
			}
		}
		v.Rows = b.drawRoll(l)
		out = append(out, v)
	}
	return out
}

// lengthName says which roll, which copy of it and which table length.
func lengthName(l cutmap.Length) string {
	text := "Roll " + shown(l.Roll.Roll)
	if l.Roll.Copy > 1 {
		text += ", copy " + strconv.Itoa(l.Roll.Copy)
	}
	if l.Of > 1 {
		text += ", table length " + strconv.Itoa(l.Number) + " of " + strconv.Itoa(l.Of)
	}
	return text
}

func faceUpWords(f laminate.PlanFabric) string {
	if f.FaceIs == "" {
		return "face not named in the job"
	}
	return shown(f.FaceIs) + " up"
}
