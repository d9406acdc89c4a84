package svg

import "strings"

// look is how an element is painted, as far as it decides whether it is seen.
type look struct {
	hidden       bool // visibility
	fill, stroke bool // painted at all
	fillGone     bool // fill-opacity 0
	strokeGone   bool // stroke-opacity 0
	strokeThin   bool // stroke-width 0
}

func (l look) unpainted() bool {
	return (!l.fill || l.fillGone) && (!l.stroke || l.strokeGone || l.strokeThin)
}

// change gives the look of an element inside one that looks like l, and why
// neither it nor what it holds is seen, "" if it is.
func (l look) change(style []Attribute) (look, string) {
	around, display, opacity := l, "", ""
	for _, a := range style {
		value := strings.ToLower(a.Value)
		if value == "inherit" || value == "unset" {
			value = ""
		}
		switch a.Name {
		case "display":
			display = value
		case "opacity":
			opacity = value
		case "visibility":
			l.hidden = value == "hidden" || value == "collapse" || (value == "" && around.hidden)
		case "fill":
			l.fill = painted(value) || (value == "" && around.fill)
		case "stroke":
			l.stroke = value != "initial" && painted(value) || (value == "" && around.stroke)
		case "fill-opacity":
			l.fillGone = zero(value) || (value == "" && around.fillGone)
		case "stroke-opacity":
			l.strokeGone = zero(value) || (value == "" && around.strokeGone)
		case "stroke-width":
			l.strokeThin = zero(value) || (value == "" && around.strokeThin)
		}
	}
	switch {
	case display == "none":
		return l, "not displayed (display: none)"
	case zero(opacity):
		return l, "fully transparent"
	}
	return l, ""
}

func zero(value string) bool {
	v, err := parseLength(value)
	return err == nil && v.value <= 0
}

// painted says whether a colour or paint server, in small letters, can be seen:
// not none, and not without any opacity (CSS Color: #rgba, #rrggbbaa, and the
// last number of rgba(…) and its like).
func painted(value string) bool {
	switch {
	case value == "" || value == "none" || value == "transparent":
		return false
	case strings.HasPrefix(value, "#"):
		return !(len(value) == 5 && value[4] == '0') && !(len(value) == 9 && value[7:] == "00")
	}
	name, inside, ok := strings.Cut(strings.TrimSuffix(value, ")"), "(")
	if !ok || name == "url" {
		return true
	}
	if _, alpha, ok := strings.Cut(inside, "/"); ok {
		return !zero(strings.TrimSpace(alpha))
	}
	parts := strings.Split(inside, ",")
	return len(parts) != 4 || !zero(strings.TrimSpace(parts[3]))
}
