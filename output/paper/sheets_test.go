package paper

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	"github.com/paulmach/orb"

	"stripwright/laminate"
	"stripwright/output/internal/handmade"
	"stripwright/output/layup"
	"stripwright/output/page"
	"stripwright/output/sheet"
)

var plans = map[string]func() laminate.Plan{
	"hatch": handmade.Hatch, "disc": handmade.Disc, "inch": handmade.Inch, "small": handmade.Small, "batten": handmade.Batten,
	"tape":   func() laminate.Plan { return handmade.Plate(3, 3000, 2000, 100) },
	"long":   func() laminate.Plan { return handmade.Plate(2, 12000, 3900, 1200) },
	"faulty": func() laminate.Plan { return handmade.Faulty(handmade.Hatch()) },
}

// each calls for every plan on every size of paper.
func each(t *testing.T, visit func(name string, p laminate.Plan, size page.Size, sheets []sheet.Scene)) {
	for name, plan := range plans {
		p := plan()
		measured := layup.Measure(p)
		for _, size := range []page.Size{page.A4, page.Letter} {
			visit(name+" "+size.Name, p, size, Sheets(p, measured, handmade.Hash, size))
		}
	}
}

func texts(s sheet.Scene) []string {
	var out []string
	for _, l := range s.Layers {
		for _, t := range l.Texts {
			out = append(out, t.Words)
		}
	}
	return out
}

var wholeID = regexp.MustCompile(`P\d+-S\d+`)

// In the section of a ply each of its strips is named in full exactly once, and
// no other ply's; on the drawing it is named within the ply.
func TestEveryStripOnceInItsPly(t *testing.T) {
	each(t, func(name string, p laminate.Plan, _ page.Size, sheets []sheet.Scene) {
		for _, ply := range p.Plies {
			whole, short := map[string]int{}, map[string]int{}
			for _, s := range sheets {
				if s.Title != layup.Title(p, ply) {
					continue
				}
				for _, words := range texts(s) {
					for _, id := range wholeID.FindAllString(words, -1) {
						whole[id]++
					}
					short[words]++
				}
			}
			for _, strip := range ply.Strips {
				if whole[strip.ID] != 1 {
					t.Errorf("%s ply %d: %s stands %d times", name, ply.Ply, strip.ID, whole[strip.ID])
				}
				if short[layup.ShortID(strip.ID)] == 0 && len(ply.Strips) <= 12 {
					t.Errorf("%s ply %d: %s is not on the drawing", name, ply.Ply, layup.ShortID(strip.ID))
				}
			}
			if len(whole) != len(ply.Strips) {
				t.Errorf("%s ply %d: %d ids for %d strips", name, ply.Ply, len(whole), len(ply.Strips))
			}
		}
	})
}

// parts0 counts "0°" on its own, load0 how often the title block says it.
func parts0(s sheet.Scene) int {
	n := 0
	for _, words := range texts(s) {
		if words == "0°" {
			n++
		}
	}
	return n
}

func load0(p laminate.Plan) int {
	if p.Part.LoadDeg != nil && *p.Part.LoadDeg == 0 {
		return 1
	}
	return 0
}

// What every page and every ply's first page must say.
func TestWhatPagesCarry(t *testing.T) {
	each(t, func(name string, p laminate.Plan, _ page.Size, sheets []sheet.Scene) {
		seen := map[string]bool{}
		for i, s := range sheets {
			all := strings.Join(texts(s), "\n")
			for _, want := range []string{p.Title, sheet.Verdict(p), handmade.Hash[:sheet.HashShown], sheet.Caution, fmt.Sprintf("page %d of %d", i+1, len(sheets))} {
				if !strings.Contains(all, want) {
					t.Errorf("%s page %d lacks %q", name, i+1, want)
				}
			}
			if strings.HasPrefix(s.Title, "ROLL") && (strings.Contains(all, "SEEN FROM THE LAYING SIDE") || parts0(s) > load0(p)) {
				t.Errorf("%s page %d: a roll's page speaks of the part's frame", name, i+1)
			}
			if strings.Contains(all, "Drawn 1:") && !strings.HasPrefix(s.Title, "ROLL") && !strings.Contains(all, "SEEN FROM THE LAYING SIDE") {
				t.Errorf("%s page %d: a drawing that does not say from where it is seen", name, i+1)
			}
			for _, ply := range p.Plies {
				if s.Title != layup.Title(p, ply) || seen[s.Title] {
					continue
				}
				seen[s.Title] = true
				for _, want := range []string{ply.Fabric, sheet.Degrees(ply.AngleDeg), layup.FaceWords(ply), layup.SideWords(p, ply), "0°"} {
					if !strings.Contains(all, want) {
						t.Errorf("%s page %d lacks %q", name, i+1, want)
					}
				}
			}
		}
		if len(seen) != len(p.Plies) {
			t.Errorf("%s: %d plies have pages, want %d", name, len(seen), len(p.Plies))
		}
		for _, title := range []string{"KIT CARDS", "RECORD", "CAUTIONS", "LAY-UP SHEETS"} {
			found := false
			for _, s := range sheets {
				found = found || s.Title == title
			}
			if !found {
				t.Errorf("%s: no %s", name, title)
			}
		}
	})
}

// No lettering leaves its page, and none of a page's own lies over other.
func TestLetteringKeepsItsRoom(t *testing.T) {
	each(t, func(name string, _ laminate.Plan, size page.Size, sheets []sheet.Scene) {
		paper := orb.Bound{Min: orb.Point{4, 4}, Max: orb.Point{size.Wide - 4, size.High - 4}}
		for i, s := range sheets {
			var boxes []orb.Bound
			var words []string
			for _, l := range s.Layers {
				for _, text := range l.Texts {
					b := text.Bounds()
					if !paper.Contains(b.Min) || !paper.Contains(b.Max) {
						t.Errorf("%s page %d: %q leaves the page: %v", name, i+1, text.Words, b)
					}
					if l.Name != "PAGE" {
						continue
					}
					own := b.Pad(-0.12 * text.Height)
					for k, other := range boxes {
						if own.Intersects(other) {
							t.Errorf("%s page %d: %q lies over %q", name, i+1, text.Words, words[k])
						}
					}
					boxes, words = append(boxes, own), append(words, text.Words)
				}
			}
		}
	})
}

// A long part is drawn in stretches that overlap and leave nothing out; a part
// that fits is drawn whole.
func TestStretchesCoverThePart(t *testing.T) {
	for name, plan := range plans {
		p := plan()
		e := layup.Extent(p)
		lay := layoutOf(p, page.A4)
		if lay.whole != (name != "long" && name != "batten" && name != "tape") {
			t.Errorf("%s: drawn whole: %v, 1:%v", name, lay.whole, lay.reduction)
		}
		const steps = 60
		for i := 0; i <= steps; i++ {
			for j := 0; j <= steps; j++ {
				q := orb.Point{e.Min[0] + (e.Max[0]-e.Min[0])*float64(i)/steps, e.Min[1] + (e.Max[1]-e.Min[1])*float64(j)/steps}
				covered := false
				for _, s := range lay.stretches {
					covered = covered || lay.at(s, 0, 0).Seen().Contains(q)
				}
				if !covered {
					t.Fatalf("%s: %v is on no stretch", name, q)
				}
			}
		}
		for _, s := range lay.stretches {
			if right := s.beside[1]; right > 0 {
				own, next := lay.at(s, 0, 0).Seen(), lay.at(lay.stretches[right-1], 0, 0).Seen()
				if got := (own.Max[0] - next.Min[0]) / lay.reduction; got < overlap-1e-6 {
					t.Errorf("%s: stretches overlap by %v mm of paper, want %v", name, got, overlap)
				}
			}
		}
	}
}

// Two people from 2 m on, and the table's length: the kit card says so.
func TestKitCardsTellHandling(t *testing.T) {
	p := handmade.Plate(1, 3000, 600, 300)
	table := 2500.0
	p.Rules.TableMM = &table
	all := ""
	for _, s := range Sheets(p, layup.Measure(p), handmade.Hash, page.A4) {
		all += strings.Join(texts(s), "\n") + "\n"
	}
	for _, want := range []string{"TWO PEOPLE (over 2000 mm)", "LONGER THAN THE TABLE (2500 mm)"} {
		if !strings.Contains(all, want) {
			t.Errorf("%q is not told", want)
		}
	}
}
