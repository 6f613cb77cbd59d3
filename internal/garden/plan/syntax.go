package plan

import (
	"errors"
	"fmt"
	"strings"

	"github.com/goccy/go-yaml"
	"github.com/goccy/go-yaml/ast"
	"github.com/goccy/go-yaml/lexer"
	"github.com/goccy/go-yaml/parser"
	"github.com/goccy/go-yaml/token"
)

// Bounds on the text's structure. A plan's deepest value lies eight deep.
const (
	deepestBracket = 32
	widestIndent   = 200
	mostRounds     = 12    // broken places that are looked behind for more
	mostTokens     = 20000 // a plan of ten tubs has a tenth; the library's time grows with the square
)

// readTree gives the document's tree. Where the text is no YAML it says so, and
// reads the rest with the broken part blanked out, to find what else is wrong;
// broken is then true. The tree is nil when nothing is there.
func readTree(src *source) (root *node, problems []Problem, broken bool) {
	work := &source{raw: src.raw, starts: src.starts, lines: append([][]rune(nil), src.lines...)}
	for range mostRounds {
		file, bad, hopeless := parseOnce(work.clean())
		if bad == nil {
			root, more := buildRoot(work, file)
			return root, append(problems, more...), broken
		}
		broken = true
		problems = append(problems, *bad)
		if hopeless || !blankOut(work, bad.Line) {
			break
		}
	}
	return nil, problems, true
}

// parseOnce runs the library, whose own panics become a problem. Behind a
// hopeless one nothing more is looked for.
func parseOnce(text string) (file *ast.File, bad *Problem, hopeless bool) {
	defer func() {
		if r := recover(); r != nil {
			hopeless = true
			file, bad = nil, &Problem{Line: 1, Column: 1, What: "the text is not a plan", Hint: "compare it with the plan that 'rootbell new' writes"}
		}
	}()
	tokens := lexer.Tokenize(text)
	if bad := tooMuch(tokens); bad != nil {
		return nil, bad, true
	}
	file, err := parser.Parse(tokens, 0, parser.AllowDuplicateMapKey())
	if err == nil {
		return file, nil, false
	}
	at := place{1, 1}
	message := err.Error()
	var syntax yaml.Error
	if errors.As(err, &syntax) {
		at, message = placeOf(syntax.GetToken()), syntax.GetMessage()
	}
	if open, ok := openBefore(tokens, at); ok && strings.Contains(message, "must be specified") {
		return nil, &Problem{Line: open.line, Column: open.column, What: "this bracket is not closed", Hint: "close it, and put commas between what is inside"}, false
	}
	what, hint := inWords(message)
	return nil, &Problem{Line: at.line, Column: at.column, What: what, Hint: hint}, false
}

// tooMuch refuses size and nesting that no plan has, before the library
// follows it.
func tooMuch(tokens token.Tokens) *Problem {
	if len(tokens) > mostTokens {
		return &Problem{Line: 1, Column: 1, What: "the text holds more than a plan can", Hint: "check that it is the right file"}
	}
	depth, dashes, line := 0, 0, 0
	for _, t := range tokens {
		at := placeOf(t)
		if at.line != line {
			dashes, line = 0, at.line
			if depth == 0 && at.column > widestIndent && t.Type != token.CommentType {
				return &Problem{Line: at.line, Column: at.column, What: "this line is indented too far", Hint: "a plan is nested at most a few steps deep"}
			}
		}
		switch t.Type {
		case token.SequenceStartType, token.MappingStartType:
			depth++
		case token.SequenceEndType, token.MappingEndType:
			depth = max(depth-1, 0)
		case token.SequenceEntryType, token.MappingKeyType, token.TagType, token.AnchorType:
			dashes++
		}
		if depth > deepestBracket || dashes > deepestBracket {
			return &Problem{Line: at.line, Column: at.column, What: "the brackets or dashes are nested too deep", Hint: "a plan is nested at most a few steps deep"}
		}
	}
	return nil
}

// openBefore is the innermost bracket that is still open at the place, when it
// stands on an earlier line: that line is then the broken one.
func openBefore(tokens token.Tokens, at place) (place, bool) {
	var open []place
	for _, t := range tokens {
		here := placeOf(t)
		if !here.before(at) {
			break
		}
		switch t.Type {
		case token.SequenceStartType, token.MappingStartType:
			open = append(open, here)
		case token.SequenceEndType, token.MappingEndType:
			open = open[:max(len(open)-1, 0)]
		}
	}
	if len(open) == 0 || open[len(open)-1].line == at.line {
		return place{}, false
	}
	return open[len(open)-1], true
}

// saidAs turns the library's message into a teacher's words.
var saidAs = []struct{ says, what, hint string }{
	{"cannot start any token", "a tab stands where spaces are needed", "indent with spaces"},
	{"tab character", "a tab stands where a space is needed", "use spaces"},
	{"',' or ']'", "a list that begins with [ is not closed before this", "close it with ], and put commas between its values"},
	{"sequence end token", "a list that begins with [ is not closed", "close it with ]"},
	{"',' or '}'", "a group that begins with { is not closed before this", "close it with }, and put commas between its keys"},
	{"flow mapping end", "a group that begins with { is not closed", "close it with }"},
	{"corresponding to ']'", "this ] has no [ before it", "leave it out, or quote the text"},
	{"corresponding to '}'", "this } has no { before it", "leave it out, or quote the text"},
	{"end character of", "a quotation mark is not closed", "close it on the same line; a text with a quote in it goes into the other kind of quotes"},
	{"mapping value is not allowed", "a second colon stands here, or the next line is indented deeper than this one", "quote a text with a colon in it, such as \"06:00\"; give keys of one group the same indent"},
	{"reserved character", "a value cannot begin with this sign", "quote the text"},
	{"directive", "a value cannot begin with %", "quote the text, or leave the line out"},
	{"block sequence entries", "a dash with a value cannot stand behind a key", "begin a list on the next line, or write [a, b]"},
	{"non-map value", "this is no key with a value", "write key: value"},
	{"unexpected key name", "this is no key with a value", "write key: value"},
	{"undefined map key", "there is a colon with no key before it", "write key: value"},
	{"value is not allowed in this context", "this does not belong to the group before it", "give keys of one group the same indent"},
	{"found an invalid key", "this cannot be a key", "write key: value"},
	{"implicit line break", "a key goes on over several lines", "write it on one line"},
	{"anchor", "anchors (&) are not taken in a plan", "write the value out, or quote it"},
	{"alias", "aliases (*) are not taken in a plan", "write the value out, or quote it"},
	{"tag", "tags (!) are not taken in a plan", "quote the text"},
	{"document separator", "only one document is taken", "leave out the line with ---"},
}

func inWords(message string) (what, hint string) {
	for _, s := range saidAs {
		if strings.Contains(message, s.says) {
			return s.what, s.hint
		}
	}
	return "the text cannot be read from here on", "check indent, colons, quotes and brackets on this line and the one before"
}

// blankOut empties the line and what is indented deeper below it. It reports
// whether that changed anything.
func blankOut(src *source, line int) bool {
	if line < 1 || line > len(src.lines) {
		return false
	}
	indent, empty := indentOf(src.lines[line-1])
	if empty {
		return false
	}
	src.lines[line-1] = nil
	for i := line; i < len(src.lines); i++ {
		deeper, empty := indentOf(src.lines[i])
		if !empty && deeper <= indent {
			break
		}
		src.lines[i] = nil
	}
	return true
}

func indentOf(line []rune) (indent int, empty bool) {
	for i, r := range line {
		if !isBlank(r) {
			return i, false
		}
	}
	return 0, true
}

func buildRoot(src *source, file *ast.File) (*node, []Problem) {
	b := &builder{src: src}
	var body ast.Node
	for _, doc := range file.Docs {
		switch {
		case doc.Body == nil:
		case doc.Body.Type() == ast.DirectiveType:
			b.refuse(placeOf(doc.Body.GetToken()), "directives (%) are not taken in a plan", "leave the line out")
		case body != nil:
			b.refuse(placeOf(doc.Start), "only one document is taken", "leave out the line with ---, and keep one garden in one file")
		default:
			body = doc.Body
		}
	}
	if body == nil {
		return nil, b.problems
	}
	root := b.node(body, false)
	return root, b.problems
}

func quote(text string) string {
	runes := []rune(text)
	if len(runes) > 40 {
		runes = append(runes[:39], '…')
	}
	return fmt.Sprintf("'%s'", string(runes))
}
