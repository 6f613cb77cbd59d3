package season

import "rootbell/internal/base/quantity"

func taskWords(t Task, _ quantity.System) string     { return t.Kind }
func taskWhy(Task, quantity.System) string           { return "" }
func moveWords(m Move, _ quantity.System) string     { return m.Kind }
func optionWords(o Option, _ quantity.System) string { return o.Kind }
