package job

import (
	"fmt"

	"gopkg.in/yaml.v3"
)

// strict walks the whole tree once and refuses what a job file never holds:
// anchors, aliases, merge keys and tags. Each kind is named at its first place
// only: a file that uses them uses many.
func (r *reading) strict(root *yaml.Node) {
	found := map[string]*yaml.Node{}
	count := map[string]int{}
	var walk func(n *yaml.Node)
	walk = func(n *yaml.Node) {
		kind := ""
		switch {
		case n.Kind == yaml.AliasNode:
			kind = "alias *" + n.Value
		case n.Anchor != "":
			kind = "anchor &" + n.Anchor
		case n.Tag == "!!merge":
			kind = "merge key <<"
		case n.Style&yaml.TaggedStyle != 0:
			kind = "tag " + n.Tag
		}
		if kind != "" {
			family := kind[:3]
			if count[family]++; count[family] == 1 {
				found[family] = &yaml.Node{Line: n.Line, Column: n.Column, Value: kind}
			}
		}
		for _, c := range n.Content {
			walk(c)
		}
	}
	walk(root)
	for _, family := range []string{"anc", "ali", "mer", "tag"} {
		if n := found[family]; n != nil {
			more := ""
			if c := count[family] - 1; c > 0 {
				more = fmt.Sprintf(" (and %d more)", c)
			}
			r.refuse(n, ruleAlias, "write every value out where it belongs, in quotes where it begins with & * or !",
				"%s%s: anchors, aliases, merge keys and tags are not used in a job file", n.Value, more)
		}
	}
}

// spoilt says whether a node has been refused by strict already.
func spoilt(n *yaml.Node) bool { return n.Kind == yaml.AliasNode }

// null says whether nothing is written, or one of YAML's words for nothing.
func null(n *yaml.Node) bool { return n.Kind == yaml.ScalarNode && n.Tag == "!!null" }

// kindOf names what a node is, for messages.
func kindOf(n *yaml.Node) string {
	switch n.Kind {
	case yaml.MappingNode:
		return "a block of keys"
	case yaml.SequenceNode:
		return "a list"
	}
	return fmt.Sprintf("%q", n.Value)
}
