// Package plan is the plan document: the teacher's text, what it says in typed
// values, and where in the text each value stands.
//
// Parse reads a text and reports every problem in it at once. A field that is
// impossible by itself is a problem here; fields that contradict each other are
// for package garden to judge. What is left out stays told apart from zero.
//
// The text is what is kept: Edit, Append, Remove, Replace, Clear and EditAll
// change it where it stands and leave every other byte, also in a text that has
// problems, and Differences compares two texts by what they say.
//
// The structs are the specification: their tags name the key, the range, the
// words and the choice a key belongs to, and their comments say what it is.
// Parse, the JSON Schema and docs/plan.md all come from them.
package plan
