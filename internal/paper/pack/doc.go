// Package pack is the papers of a stage: which there are for an assessment,
// what each is called and is for, and how it is drawn.
package pack
