package job

import (
	"errors"
	"fmt"
	"strings"
	"unicode"

	"gopkg.in/yaml.v3"

	"stripwright/geometry/length"
)

// limits are the sizes that make sense for a key, both ends included.
type limits struct{ least, most float64 }

// written gives the text of a scalar as it stands in the file.
func (r *reading) written(n *yaml.Node, rule string) (string, bool) {
	if n == nil || spoilt(n) {
		return "", false
	}
	if n.Kind != yaml.ScalarNode {
		r.refuse(n, rule, "write one value", "%s is %s and not one value", rule, kindOf(n))
		return "", false
	}
	if null(n) {
		r.refuse(n, ruleEmpty, "write a value", "%s has no value", rule)
		return "", false
	}
	return n.Value, true
}

// wrong passes on what is wrong with a written measure.
func (r *reading) wrong(n *yaml.Node, rule string, err error) {
	var e *length.Error
	if errors.As(err, &e) {
		r.refuse(n, rule, e.Cure, "%s", e.Text)
		return
	}
	r.refuse(n, rule, "", "%s", err)
}

// number reads a scalar by parse and refuses what does.
func number[T any](r *reading, n *yaml.Node, rule string, parse func(string) (T, error)) (T, bool) {
	var none T
	text, ok := r.written(n, rule)
	if !ok {
		return none, false
	}
	v, err := parse(text)
	if err != nil {
		r.wrong(n, rule, err)
		return none, false
	}
	return v, true
}

// length reads a length in mm; a bare number is in the job's units.
func (r *reading) length(n *yaml.Node, rule string) (float64, bool) {
	return number(r, n, rule, func(s string) (float64, error) { return length.Parse(s, r.units) })
}

// lengthIn reads a length and holds it to limits in mm.
func (r *reading) lengthIn(n *yaml.Node, rule string, l limits) (float64, bool) {
	mm, ok := r.length(n, rule)
	if !ok {
		return 0, false
	}
	if mm < l.least || mm > l.most {
		r.refuse(n, rule, r.unitCure(n), "%s %s is out of reason: from %s to %s is taken",
			rule, r.both(n, mm), spelt(l.least), spelt(l.most))
		return 0, false
	}
	return mm, true
}

// spelt prints a limit, in metres where it is long.
func spelt(mm float64) string {
	if mm >= 10000 {
		return length.In(mm, length.Metre)
	}
	return length.MM(mm)
}

// both gives a size as it is written and, where that is something else, in mm.
func (r *reading) both(n *yaml.Node, mm float64) string {
	text := strings.TrimSpace(n.Value)
	if text == length.MM(mm) || text+" mm" == length.MM(mm) {
		return length.MM(mm)
	}
	return fmt.Sprintf("%s (%s)", text, length.MM(mm))
}

// unitCure asks for the unit of a size that makes no sense.
func (r *reading) unitCure(n *yaml.Node) string {
	if length.Bare(n.Value) {
		return "check the number; if it is in another unit than " + string(r.units) + ", write the unit with it"
	}
	return "check the number and its unit"
}

// weight reads an areal weight in g/m². A bare number is g/m² in a job in mm,
// cm or m and is refused in one in in, ft or yd, where it may be per square
// yard or per square foot.
func (r *reading) weight(n *yaml.Node, rule string) (float64, bool) {
	gsm, ok := number(r, n, rule, func(s string) (float64, error) {
		if r.units.Metric() && length.Bare(s) {
			s += " g/m2"
		}
		return length.ParseWeight(s)
	})
	if ok && (gsm < 10 || gsm > 5000) {
		r.refuse(n, rule, "check the number and its unit on the data sheet", "areal weight %s is out of reason: from 10 to 5000 g/m2 is taken", length.Weight(gsm))
		return 0, false
	}
	return gsm, ok
}

// count reads a whole number within limits.
func (r *reading) count(n *yaml.Node, rule string, least, most int64) (int, bool) {
	v, ok := number(r, n, rule, length.ParseCount)
	if ok && (v < least || v > most) {
		r.refuse(n, rule, "write a whole number in that range", "%s %d is not between %d and %d", rule, v, least, most)
		return 0, false
	}
	return int(v), ok
}

// angle reads a direction in degrees.
func (r *reading) angle(n *yaml.Node, rule string) (float64, bool) {
	return number(r, n, rule, length.ParseAngle)
}

// truth reads true or false.
func (r *reading) truth(n *yaml.Node, rule string) (yes, ok bool) {
	word, ok := r.choice(n, rule, "true", "false")
	return word == "true", ok
}

// choice reads one of a few words.
func (r *reading) choice(n *yaml.Node, rule string, words ...string) (string, bool) {
	text, ok := r.written(n, rule)
	if !ok {
		return "", false
	}
	if contains(words, text) {
		return text, true
	}
	cure := "write " + strings.Join(words[:len(words)-1], ", ") + " or " + words[len(words)-1]
	if near := length.Nearest(strings.ToLower(text), words); near != "" {
		cure = "did you mean " + near + "?"
	}
	r.refuse(n, rule, cure, "%s cannot be %q", rule, text)
	return "", false
}

// Longest texts, in characters.
const (
	mostName  = 100
	mostTitle = 200
)

// name reads a text that is kept letter for letter: of a roll, a fabric, a
// title. Line breaks, control characters and marks that turn the direction of
// writing are refused: no sheet shows them.
func (r *reading) name(n *yaml.Node, rule string, most int) (string, bool) {
	if n != nil && null(n) {
		r.refuse(n, ruleEmpty, "write a name, in quotes if it is meant to be "+quoted(n.Value), "%s has no value", rule)
		return "", false
	}
	text, ok := r.written(n, rule)
	return text, ok && r.nameable(n, text, rule, most)
}

func (r *reading) nameable(n *yaml.Node, text, rule string, most int) bool {
	switch {
	case strings.TrimSpace(text) == "":
		r.refuse(n, rule, "write a name", "%s is blank", rule)
	case len([]rune(text)) > most:
		r.refuse(n, rule, "shorten it", "%s has more than %d letters", rule, most)
	case strings.ContainsFunc(text, unprintable):
		r.refuse(n, rule, "write it in one line of plain letters", "%s holds a line break or an invisible character: %q", rule, text)
	default:
		return true
	}
	return false
}

func unprintable(c rune) bool {
	return unicode.IsControl(c) || unicode.Is(unicode.Cf, c) || c == '\u2028' || c == '\u2029' || c == unicode.ReplacementChar
}

func quoted(s string) string {
	if s == "" {
		s = "null"
	}
	return `"` + s + `"`
}
