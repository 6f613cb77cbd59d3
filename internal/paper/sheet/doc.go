// Package sheet draws the lid sheet: the lid at true scale, tiled over pages
// that are taped together and on top of the lid, and the same scene as SVG,
// DXF and CSV.
package sheet
