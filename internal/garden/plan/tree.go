package plan

// place is where something stands in the text, counted from 1 in characters.
type place struct {
	line, column int
}

// node is one value of the document's tree.
type node struct {
	at place
}
