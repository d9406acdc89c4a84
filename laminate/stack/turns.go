package stack

import (
	"slices"
	"strings"

	"stripwright/geometry"
)

// turns says how plies have been turned: "lay plies 5-7 face down".
func turns(was, now []Ply) string {
	words := handsOf(was, now)
	for _, down := range []bool{true, false} {
		var over []int
		for i := range now {
			if now[i].Cloth.Hand == was[i].Cloth.Hand && now[i].Angle == was[i].Angle && now[i].Down != was[i].Down && now[i].Down == down {
				over = append(over, now[i].Number)
			}
		}
		if len(over) > 0 {
			words = append(words, "lay "+pliesWord(over)+" "+face(down))
		}
	}
	return strings.Join(append(words, quarterTurns(was, now)...), ", and ")
}

// quarterTurns groups plies laid at another angle by that angle and their face.
func quarterTurns(was, now []Ply) []string {
	type way struct {
		angle   geometry.Angle
		quarter bool
		over    bool
		down    bool
	}
	var ways []way
	plies := map[way][]int{}
	for i := range now {
		if now[i].Core != nil || now[i].Angle == was[i].Angle || now[i].Cloth.Hand != was[i].Cloth.Hand {
			continue
		}
		w := way{now[i].Angle, same(now[i].Angle, geometry.NewAngle(was[i].Angle.Degrees()+90)), now[i].Down != was[i].Down, now[i].Down}
		if !slices.Contains(ways, w) {
			ways = append(ways, w)
		}
		plies[w] = append(plies[w], now[i].Number)
	}
	var words []string
	for _, w := range ways {
		text := "turn " + pliesWord(plies[w]) + " by a quarter, to " + degrees(w.angle.Degrees())
		if !w.quarter {
			text = "lay " + pliesWord(plies[w]) + " at " + degrees(w.angle.Degrees())
		}
		if w.over {
			text += ", and lay " + them(plies[w]) + face(w.down)
		}
		words = append(words, text)
	}
	return words
}

func them(plies []int) string {
	if len(plies) == 1 {
		return "it "
	}
	return "them "
}

// handsOf groups plies cut from the cloth of the other hand by cloth and face.
func handsOf(was, now []Ply) []string {
	type way struct {
		cloth string
		down  bool
		angle geometry.Angle
	}
	var ways []way
	plies := map[way][]int{}
	cloths := map[way]Cloth{}
	for i := range now {
		if now[i].Core != nil || now[i].Cloth.Hand == was[i].Cloth.Hand {
			continue
		}
		w := way{now[i].Cloth.Name, now[i].Down, now[i].Angle}
		if !slices.Contains(ways, w) {
			ways = append(ways, w)
		}
		plies[w], cloths[w] = append(plies[w], now[i].Number), now[i].Cloth
	}
	var words []string
	for _, w := range ways {
		words = append(words, "cut "+pliesWord(plies[w])+" from the opposite-hand cloth of "+w.cloth+
			" ("+cloths[w].describe()+") and lay "+them(plies[w])+face(w.down)+" at "+degrees(w.angle.Degrees()))
	}
	return words
}
