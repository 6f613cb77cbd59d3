package plan

// Lux is what a lux meter read at the height of the lids, with the lamp lit. A
// place read at several hours counts with its mean.
type Lux struct {
	// Where: from the left end of the shelf, and from its front edge. Without a shelf, on the lid.
	At Pair `plan:"at" in:"0 cm to 5 m" default:"everywhere alike"`
	// What the meter showed.
	Value Illuminance `plan:"value,required" in:"0 lx to 200000 lx"`
	// The kind of light: a lux meter sees as eyes do, and leaves do not. No figure serves red and blue LED.
	Source string `plan:"source" words:"white LED,daylight,fluorescent,red and blue LED,blue sky,metal halide,sodium,incandescent" default:"white LED"`
}
