package output

import (
	"strconv"
	"strings"
)

// names gives files names that every file system takes and that differ even
// where upper and lower case do not count.
type names struct{ taken map[string]bool }

// longestWord keeps file names short whatever a fabric is called.
const longestWord = 40

// file gives a name made of safe words, with an ending: the name itself, or with
// -2, -3, … before the ending where it is taken.
func (n *names) file(stem, ending string) string {
	for i := 1; ; i++ {
		name := stem + ending
		if i > 1 {
			name = stem + "-" + strconv.Itoa(i) + ending
		}
		if key := strings.ToLower(name); !n.taken[key] {
			n.taken[key] = true
			return name
		}
	}
}

// safeWord writes a name of the job with letters, digits, dots and hyphens
// only, others become "_": no path, no hidden file, no word of the system.
func safeWord(name string) string {
	var b strings.Builder
	for _, r := range name {
		switch {
		case r >= 'a' && r <= 'z', r >= 'A' && r <= 'Z', r >= '0' && r <= '9', r == '-':
			b.WriteRune(r)
		case r == '.' && b.Len() > 0 && !strings.HasSuffix(b.String(), "."):
			b.WriteRune(r)
		default:
			b.WriteByte('_')
		}
		if b.Len() >= longestWord {
			break
		}
	}
	if b.Len() == 0 {
		return "_"
	}
	return b.String()
}
