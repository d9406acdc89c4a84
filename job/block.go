package job

import (
	"cmp"
	"strings"

	"gopkg.in/yaml.v3"

	"stripwright/geometry/length"
)

// block is one mapping of the file with its known keys. A key whose value is
// missing or refused is in keys but not in values: it is not asked for again.
type block struct {
	r      *reading
	what   string     // "joints", "fabric biax450", for messages
	at     *yaml.Node // where the block is named
	keys   map[string]*yaml.Node
	values map[string]*yaml.Node
	near   map[string]bool // keys that a misspelt one is taken for
	merged bool            // holds a merge key: what is missing may stand there
}

// keySet is what a block may hold.
type keySet struct {
	known []string
	later []string // read by a later version
}

func (k keySet) has(key string) bool { return contains(k.known, key) }

func contains(list []string, s string) bool {
	for _, l := range list {
		if l == s {
			return true
		}
	}
	return false
}

// block reads a mapping. Every key that is not in the set is refused. At is
// the key that the mapping belongs to. False when n is no mapping.
func (r *reading) block(n, at *yaml.Node, what string, set keySet) (block, bool) {
	b := block{r: r, what: what, at: at, keys: map[string]*yaml.Node{}, values: map[string]*yaml.Node{}, near: map[string]bool{}}
	if spoilt(n) {
		return b, false
	}
	if n.Kind != yaml.MappingNode {
		cure := "write keys under it: " + strings.Join(set.known, ", ")
		if n.Kind == yaml.SequenceNode && set.has("points") {
			cure = "write it as {points: [[x, y], [x, y], …]}"
		}
		r.refuse(n, ruleBlock, cure, "%s is %s and not a block of keys", what, kindOf(n))
		return b, false
	}
	for i := 0; i+1 < len(n.Content); i += 2 {
		key, value := n.Content[i], n.Content[i+1]
		if i > 0 && splitByComma(key, value, n.Content[i-1]) {
			b.comma(key, n.Content[i-2], n.Content[i-1])
			continue
		}
		b.add(key, value, set)
	}
	return b, true
}

// add takes one key with its value into the block or refuses it.
func (b *block) add(key, value *yaml.Node, set keySet) {
	r, name := b.r, key.Value
	first, twice := b.keys[name]
	switch {
	case spoilt(key) || key.Tag == "!!merge":
		b.merged = true
		return
	case key.Kind != yaml.ScalarNode:
		r.refuse(key, ruleUnknown, "write one word before the colon", "a key of %s is %s", b.what, kindOf(key))
		return
	case contains(set.later, name):
		r.refuse(key, ruleLater, "take it out for now", "%q of %s is not read yet", name, b.what)
		b.keys[name] = key
		return
	case !set.has(name):
		if value.Anchor == "" { // else refused by strict
			b.unknown(key, set)
		}
		return
	case twice:
		r.refuse(key, ruleTwice, "keep one of them", "%q stands twice in %s, first in line %d", name, b.what, first.Line)
		return
	}
	b.keys[name] = key
	if null(value) {
		r.refuse(key, ruleEmpty, "write its value or take the key out", "%q of %s has no value", name, b.what)
		return
	}
	if !spoilt(value) {
		b.values[name] = value
	}
}

// splitByComma says whether a key is the rest of a number with a decimal
// comma, as {width: 12,5} is read.
func splitByComma(key, value, before *yaml.Node) bool {
	return null(value) && value.Value == "" && digits(key.Value) &&
		before.Kind == yaml.ScalarNode && digits(strings.TrimLeft(before.Value, "+-"))
}

// comma refuses a number with a decimal comma and forgets its first half.
func (b *block) comma(rest, key, first *yaml.Node) {
	b.r.refuse(first, cmp.Or(key.Value, ruleUnknown), "write it with a decimal point, "+first.Value+"."+rest.Value, "%q has a decimal comma", first.Value+","+rest.Value)
	delete(b.values, key.Value)
}

func digits(s string) bool { return s != "" && strings.Trim(s, "0123456789") == "" }

// has says whether the key stands in the block, with a value or without.
func (b block) has(key string) bool { return b.keys[key] != nil }

// value gives the value of a key, nil where there is none to read.
func (b block) value(key string) *yaml.Node { return b.values[key] }

// need gives the value of a key that must be there.
func (b block) need(key, cure string) *yaml.Node {
	if !b.has(key) && !b.near[key] && !b.merged {
		b.r.refuse(b.at, ruleMissing, cure, "%s has no %q", b.what, key)
	}
	return b.values[key]
}

// unknown refuses a key and says what may be meant.
func (b *block) unknown(key *yaml.Node, set keySet) {
	name := key.Value
	cure := "its keys are " + strings.Join(set.known, ", ")
	near := length.Nearest(strings.ToLower(name), append(append([]string{}, set.known...), set.later...))
	if near == "" && set.has(meant[name]) {
		near = meant[name]
	}
	switch home := homeOf(name); {
	case near != "":
		cure = "did you mean " + near + "?"
		b.near[near] = true
	case home != "" && home != b.what:
		cure = "it belongs under " + home
	case name == "":
		cure = "write a word before the colon"
	}
	b.r.refuse(key, ruleUnknown, cure, "%q is not a key of %s", name, b.what)
}

// list gives the items of a list, or refuses what is none. False when there is
// nothing to read.
func (r *reading) list(n *yaml.Node, rule, like string) ([]*yaml.Node, bool) {
	switch {
	case n == nil || spoilt(n):
		return nil, false
	case n.Kind != yaml.SequenceNode:
		r.refuse(n, rule, "write a list: "+like, "%s is %s and not a list", rule, kindOf(n))
		return nil, false
	case len(n.Content) == 0:
		r.refuse(n, rule, "write a list: "+like, "the list of %s is empty", rule)
		return nil, false
	}
	return n.Content, true
}
