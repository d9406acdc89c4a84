package svg

import (
	"regexp"
	"strings"
)

// declared is an XML entity declaration with a value of its own.
var declared = regexp.MustCompile(`<!ENTITY\s+([A-Za-z_][\w.-]*)\s+(?:"([^"]*)"|'([^']*)')\s*>`)

// bounds of entities: some drawing programs write their name spaces so, and
// need no more.
const (
	mostEntities    = 100
	longestEntity   = 200
	mostOfAllReplay = 4 << 20
)

// declareEntities takes the entities that a document type declares, as long as
// they are plain text and short, given how many references there can be at
// most. Entities made of entities grow beyond all bounds and are not ok.
func declareEntities(doctype string, to map[string]string, references int) bool {
	found := declared.FindAllStringSubmatch(doctype, mostEntities+1)
	if len(found) < strings.Count(doctype, "<!ENTITY") || len(found) > mostEntities {
		return false
	}
	for _, m := range found {
		value := m[2] + m[3]
		if strings.ContainsAny(value, "&<%") || len(value) > longestEntity || len(value)*references > mostOfAllReplay {
			return false
		}
		to[m[1]] = value
	}
	return true
}
