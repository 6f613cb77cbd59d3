package plan

// Crops are the crops that a plan may name, as they are written in it.
func Crops() []string {
	return []string{
		"leaf lettuce", "butterhead", "romaine", "basil", "pak choi", "kale", "Swiss chard", "spinach",
		"rocket", "mint", "cilantro", "parsley", "dwarf cherry tomato", "strawberry",
	}
}
