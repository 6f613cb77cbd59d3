package reading

import (
	"rootbell/internal/base/quantity"
)

// ParseTyped reads one quantity from a field of the form whose unit stands at
// its end, so that a bare number is in that unit. What was typed is kept. The
// error is a *quantity.Error.
func ParseTyped[Q quantity.Quantity](text, unit string) (quantity.Typed[Q], error) {
	value, err := quantity.ParseAs[Q](text)
	if err != nil && unit != "" {
		if in, also := quantity.ParseAs[Q](text + " " + unit); also == nil {
			value, err = in, nil
		}
	}
	if err != nil {
		return quantity.Typed[Q]{}, err
	}
	return quantity.Typed[Q]{Value: value, Text: text}, nil
}

// ParseInterval reads a quantity or an interval as ParseTyped reads one.
func ParseInterval[Q quantity.Quantity](text, unit string) (quantity.Interval[Q], error) {
	read, err := quantity.ParseIntervalAs[Q](text)
	if err != nil && unit != "" {
		if in, also := quantity.ParseIntervalAs[Q](text + " " + unit); also == nil {
			read, err = in, nil
		}
	}
	if err != nil {
		return quantity.Interval[Q]{}, err
	}
	read.Text = text
	return read, nil
}
