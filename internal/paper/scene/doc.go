// Package scene holds drawings as lines, arcs, circles, areas and text in
// millimetres with y upwards, and turns one scene into SVG, PDF or DXF.
//
// A millimetre of a scene is a millimetre on paper. Arcs stay arcs: a path
// keeps them as bulges, as the DXF polyline does, so that no renderer has to
// guess a circle back from chords.
package scene
