// Package plan is the plan document: the teacher's text, what it says in typed
// values, and where in the text each value stands.
//
// Parse reads a text and reports every problem in it at once. A field that is
// impossible by itself is a problem here; fields that contradict each other are
// for package garden to judge. What is left out stays told apart from zero.
package plan
