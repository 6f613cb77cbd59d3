package plan

// Text is the document as it was read.
func (p *Plan) Text() []byte { return append([]byte(nil), p.text...) }

// Where is where a path such as tubs[0].hole stands in the text: the value when
// it is on its key's line, the key otherwise; for a path that the text does not
// have, the nearest group around it. Both count from 1, in characters.
func (p *Plan) Where(path string) (line, column int) {
	if p == nil || p.root == nil {
		return 1, 1
	}
	_, at, _ := p.root.follow(splitPath(path))
	return at.line, at.column
}

// Typed is the text typed at a path, without its quotes, and whether one value
// stands there.
func (p *Plan) Typed(path string) (text string, ok bool) {
	if p == nil || p.root == nil {
		return "", false
	}
	n, _, left := p.root.follow(splitPath(path))
	if len(left) > 0 || n.shape != scalar {
		return "", false
	}
	return n.text, true
}
