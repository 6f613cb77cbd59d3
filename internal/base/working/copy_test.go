package working_test

import (
	"testing"

	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
)

func TestACopyLeavesTheFirstBookAlone(t *testing.T) {
	b := working.NewBook()
	b.In("tub").Typed("depth", "depth", "h", quantity.Length, 120, 2)
	c := b.Copy()
	c.In("tub").Noted("level", "level", "l", quantity.Length, 90, 3, "the logbook")
	if got := len(b.Numbers()); got != 1 {
		t.Errorf("the first book has %d numbers", got)
	}
	n, ok := c.Find("tub.level")
	if !ok || n.Source != "the logbook" || n.Basis != working.AsTyped || n.Error() != 3 {
		t.Errorf("noted as %+v", n)
	}
	if n, ok := c.Find("tub.depth"); !ok || n.Base != 120 || n.Error() != 2 {
		t.Errorf("copied as %+v", n)
	}
	if again := c.In("tub").Typed("depth", "another", "h", quantity.Length, 7, 0); again.Base != 120 {
		t.Errorf("the first number of a key stays, not %v", again.Base)
	}
}
