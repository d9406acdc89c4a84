package stack

import (
	"fmt"
	"strconv"
	"strings"
)

// degrees prints an angle: "45°".
func degrees(deg float64) string { return decimal(deg, 3) + "°" }

// decimal prints a figure with so many places at most.
func decimal(v float64, places int) string {
	s := strconv.FormatFloat(v, 'f', places, 64)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	if s == "-0" {
		return "0"
	}
	return s
}

// percent prints a share: "33.3 %".
func percent(part float64) string { return decimal(100*part, 1) + " %" }

// gsm prints an areal weight.
func gsm(v float64) string { return decimal(v, 1) + " g/m2" }

// counted writes a number with its word.
func counted(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return strconv.Itoa(n) + " " + many
}

// lie says how the fibre of a layer lies: "45°", "woven 0°/90°", "mat".
func (l Layer) lie() string {
	switch l.Kind {
	case Random:
		return "no direction"
	case CoreKind:
		return "core"
	case Crossed:
		var words []string
		for _, d := range l.Lies {
			words = append(words, degrees(d.Angle.Degrees()))
		}
		return "woven " + strings.Join(words, "/")
	}
	return degrees(l.Angle().Degrees())
}

// name says which layer it is: "ply 3, layer 2 of its cloth".
func (l Layer) name() string {
	switch {
	case l.Kind == CoreKind:
		return "core " + l.Fabric
	case l.Of > 0:
		return fmt.Sprintf("ply %s, layer %d of its cloth", number(l.Ply), l.Of)
	}
	return "ply " + number(l.Ply)
}

// number names a ply; one that is not in the plan is new.
func number(ply int) string {
	if ply == 0 {
		return "(new)"
	}
	return strconv.Itoa(ply)
}

// ranges prints rising numbers: "1, 3-5".
func ranges(numbers []int) string {
	var words []string
	for i := 0; i < len(numbers); {
		k := i
		for k+1 < len(numbers) && numbers[k+1] == numbers[k]+1 {
			k++
		}
		switch {
		case k == i:
			words = append(words, strconv.Itoa(numbers[i]))
		case k == i+1:
			words = append(words, strconv.Itoa(numbers[i]), strconv.Itoa(numbers[k]))
		default:
			words = append(words, fmt.Sprintf("%d-%d", numbers[i], numbers[k]))
		}
		i = k + 1
	}
	if n := len(words); n > 1 {
		return strings.Join(words[:n-1], ", ") + " and " + words[n-1]
	}
	return strings.Join(words, "")
}

// pliesWord writes "ply 3" or "plies 3-5".
func pliesWord(numbers []int) string {
	if len(numbers) == 1 {
		return "ply " + strconv.Itoa(numbers[0])
	}
	return "plies " + ranges(numbers)
}
