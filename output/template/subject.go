package template

import (
	"errors"
	"fmt"
	"strconv"
	"strings"

	"github.com/paulmach/orb"

	"stripwright/geometry"
	"stripwright/laminate"
	"stripwright/output/layup"
	"stripwright/output/sheet"
)

// ErrUnknown is returned for a name that is no ply or piece of the plan.
var ErrUnknown = errors.New("no ply or piece of this name")

// subject is what is drawn, in its own frame in mm.
type subject struct {
	name    string // P03, P03-S02
	title   string
	words   []string // what must be known to use it
	arrow   string   // what the arrow on each sheet points to: along x, or against it
	against bool
	fabric  string
	lines   []outline
	joints  []named
	areas   []area
	corners []laminate.Corner
	box     orb.Bound
}

type outline struct {
	region geometry.Region
	pen    sheet.Pen
}

// named is a straight line with its name.
type named struct {
	words    string
	from, to orb.Point
}

// area is a named region.
type area struct {
	words  string
	region geometry.Region
}

// find gives the ply ("P03" or "3") or the piece ("P03-S02") of a name.
func find(p laminate.Plan, name string) (subject, error) {
	for i, ply := range p.Plies {
		if strings.EqualFold(name, plyName(ply)) || name == strconv.Itoa(ply.Ply) {
			return plySubject(p, i), nil
		}
		for _, s := range ply.Strips {
			if strings.EqualFold(name, s.ID) {
				return pieceSubject(p, ply, s)
			}
		}
	}
	return subject{}, fmt.Errorf("%q: %w: plies are P01 to P%02d, pieces as P01-S01", name, ErrUnknown, len(p.Plies))
}

// plyName names a ply as the ids of its strips begin.
func plyName(ply laminate.PlanPly) string {
	if len(ply.Strips) > 0 {
		if at := strings.LastIndexByte(ply.Strips[0].ID, '-'); at > 0 {
			return ply.Strips[0].ID[:at]
		}
	}
	return fmt.Sprintf("P%02d", ply.Ply)
}

func plySubject(p laminate.Plan, index int) subject {
	ply := p.Plies[index]
	s := subject{
		name: plyName(ply), title: layup.Title(p, ply), arrow: "0°", fabric: ply.Fabric, corners: p.Part.Corners,
		words: []string{
			ply.Fabric + ", " + sheet.Degrees(ply.AngleDeg) + ", " + layup.FaceWords(ply) + ", " + layup.SideWords(p, ply),
			"SEEN FROM THE LAYING SIDE, looking down on the tool. Thin: net edge. Dashed: blank. Thick: joints.",
		},
		lines: []outline{
			{ply.Blank, sheet.Pen{Ink: sheet.Grey, Width: 0.35, Dash: [6]float64{4, 2}}},
			{p.Part.Net, sheet.Solid(sheet.Black, 0.3)},
		},
		box: ply.Blank.Bounds(),
	}
	for n, j := range ply.Joints {
		s.joints = append(s.joints, named{"J" + strconv.Itoa(n+1), orb.Point(j.From), orb.Point(j.To)})
	}
	for _, strip := range ply.Strips {
		s.areas = append(s.areas, area{strip.ID, strip.Shape})
	}
	return s
}

func pieceSubject(p laminate.Plan, ply laminate.PlanPly, strip laminate.Strip) (subject, error) {
	for _, r := range p.Rolls {
		for _, piece := range r.Pieces {
			if piece.ID != strip.ID {
				continue
			}
			s := subject{
				name: strip.ID, title: "PIECE " + strip.ID, arrow: "free end of the roll", against: true, fabric: ply.Fabric,
				words: []string{
					ply.Fabric + ", ply " + strconv.Itoa(ply.Ply) + ", laid " + layup.FaceWords(ply) + "; roll " + r.Roll + " no. " + strconv.Itoa(r.Copy),
					"AS IT IS CUT: lay the roll FACE UP and the arrow along the roll, towards its free end.",
				},
				lines: []outline{{piece.Shape, sheet.Solid(sheet.Black, 0.4)}},
				areas: []area{{strip.ID, piece.Shape}},
				box:   piece.Shape.Bounds(),
			}
			if piece.Mirrored {
				s.words[1] = "AS IT IS CUT, mirrored already: lay the roll FACE UP and the arrow along it, towards its free end."
			}
			return s, nil
		}
	}
	return subject{}, fmt.Errorf("%s: %w: it is not cut from any roll", strip.ID, ErrUnknown)
}
