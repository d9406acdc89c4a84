package job

import (
	"bytes"
	"regexp"
	"strconv"
	"strings"

	"gopkg.in/yaml.v3"
)

// syntax passes on what the YAML reader could not read, in plain words and
// with the line it happened on.
func (r *reading) syntax(data []byte, err error) {
	line, text := parseYAMLError(err.Error())
	line = blamed(data, line, text)
	written := lineOf(data, line)
	at := place{line, 1 + len(written) - len(strings.TrimLeft(written, " \t"))}
	if m := bareCode.FindStringIndex(written); m != nil {
		at.column = m[0] + 1
		r.refuse(at.node(), ruleYAML, `put it in quotes: code: "[0/90]2s"`, "a laminate code in brackets is read as a list")
		return
	}
	says, cure := plainly(text)
	if strings.Contains(written, `""`) && strings.Contains(text, "end of stream") || inchQuote.MatchString(written) {
		cure = `write inches as in, or put single quotes round: '5/8"'`
	}
	r.refuse(at.node(), ruleYAML, cure, "%s", says)
}

var (
	bareCode  = regexp.MustCompile(`code\s*:\s*\[`)
	inchQuote = regexp.MustCompile(`"[0-9 /.']+""`)
	yamlLine  = regexp.MustCompile(`^yaml: (?:line (\d+): )?(.*)$`)
)

// parseYAMLError gives the line, from 1, that the YAML reader reports, and its
// words. It leaves line 1 out, and its parser counts from 0.
func parseYAMLError(says string) (line int, text string) {
	m := yamlLine.FindStringSubmatch(strings.ReplaceAll(says, "\n", " "))
	if m == nil {
		return 1, says
	}
	line, _ = strconv.Atoi(m[1])
	if line == 0 || strings.HasPrefix(m[2], "did not find expected") {
		line++
	}
	return line, m[2]
}

// blamed finds the line that a syntax error comes from. The YAML reader often
// names the line where the block or the list began; the line looked for is the
// last of the shortest run of lines, from the top, that fails in the same way.
// Within brackets a run cut short fails the same way too, so there the line of
// the bracket is kept.
func blamed(data []byte, reported int, text string) int {
	lines := bytes.SplitAfter(data, []byte("\n"))
	last := len(lines)
	if last > 1 && len(lines[last-1]) == 0 {
		last--
	}
	reported = min(reported, last)
	if len(data) > 1<<20 || strings.Contains(text, "',' or") || strings.Contains(text, "end of stream") || strings.Contains(text, "node content") {
		return reported
	}
	low, high := 1, last
	for low < high {
		middle := (low + high) / 2
		var n yaml.Node
		err := yaml.Unmarshal(bytes.Join(lines[:middle], nil), &n)
		if err == nil {
			low = middle + 1
		} else if _, t := parseYAMLError(err.Error()); t != text {
			low = middle + 1
		} else {
			high = middle
		}
	}
	return low
}

func lineOf(data []byte, line int) string {
	lines := bytes.Split(data, []byte("\n"))
	if line < 1 || line > len(lines) {
		return ""
	}
	return strings.TrimRight(string(lines[line-1]), "\r")
}

// plainly turns the YAML reader's words into a sentence and a cure.
func plainly(text string) (says, cure string) {
	for _, p := range []struct{ part, says, cure string }{
		{"',' or ']'", "a list in [ ] that begins here is not closed, or a comma is missing in it", "close it with ] and put commas between its items"},
		{"',' or '}'", "a block in { } that begins here is not closed, or a comma is missing in it", "close it with } and put commas between its keys"},
		{"mapping values are not allowed", "a second \": \" stands in this line, or the line is indented too far", "put a text that holds \": \" in quotes, and begin keys of one block in the same column"},
		{"did not find expected key", "this line is not indented like its neighbours", "begin the keys of one block in the same column"},
		{"did not find expected '-'", "a key stands among the items of a list", "begin the items with - in one column, and the next key further left"},
		{"block sequence entries are not allowed", "a list item \"- \" stands where none can", "begin the list on the line after its key"},
		{"could not find expected ':'", "a key without \":\" stands here", "write key: value, with a blank after the colon"},
		{"cannot start any token", "a value begins with a character that YAML keeps for itself (such as @ ` % or a tab)", "put the value in quotes"},
		{"end of stream", "a quotation mark that is opened here is not closed", "close it, or write inches as in"},
		{"node content", "a comma stands where a value is missing", "take the comma out or write the value"},
		{"unknown anchor", "a value begins with *, which YAML reads as an alias", "put the value in quotes; aliases are not used in job files"},
		{"alphabetic or numeric", "a value begins with & or *, which YAML keeps for itself", "put the value in quotes"},
		{"unknown escape", "a backslash stands in a text in double quotes", "use single quotes"},
		{"exceeded max depth", "blocks stand within blocks more than 10,000 deep", "a job has at most five levels"},
	} {
		if strings.Contains(text, p.part) {
			return p.says, p.cure
		}
	}
	return "this is not YAML: " + text, "compare it with the starter that init writes"
}
