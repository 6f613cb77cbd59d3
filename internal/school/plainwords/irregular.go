package plainwords

// irregular are words that break the rules of Syllables: compounds with a silent e
// inside, and vowels that are spoken apart.
var irregular = map[string]int{
	"leaves": 1, "sure": 1, "whole": 1,
	"baseline": 2, "because": 2, "being": 2, "beyond": 2, "careful": 2, "centre": 2, "client": 2,
	"create": 2, "diet": 2, "elsewhere": 2, "fire": 2, "fluid": 2, "forecast": 2, "fuel": 2,
	"homework": 2, "hour": 2, "household": 2, "hundred": 2, "layer": 2, "layout": 2, "lifetime": 2,
	"likewise": 2, "lion": 2, "litre": 2, "lukewarm": 2, "measure": 2, "measured": 2, "metre": 2,
	"million": 2, "nineteen": 2, "notebook": 2, "opaque": 2, "our": 2, "ours": 2, "people": 2,
	"poem": 2, "quiet": 2, "real": 2, "really": 2, "safety": 2, "science": 2, "scientist": 3, "seaweed": 2,
	"several": 2, "sideways": 2, "someone": 2, "something": 2, "sometimes": 2, "somewhere": 2,
	"union": 2, "unique": 2, "useless": 2, "wednesday": 2, "wire": 2,
	"ammonia": 3, "anyone": 3, "area": 3, "areas": 3, "calcium": 3, "carefully": 3, "caretaker": 3,
	"companion": 3, "created": 3, "element": 3, "elements": 3, "everyone": 3, "everything": 3,
	"everywhere": 3, "fireproof": 3, "firewall": 3, "idea": 3, "ideas": 3, "linear": 3, "recipe": 3,
	"require": 3, "required": 3, "somebody": 3, "theatre": 3, "urea": 3, "vegetable": 3,
	"vegetables": 3, "video": 3, "whoever": 3,
	"centimetre": 4, "coefficient": 4, "coordinate": 4, "everybody": 4, "kilometre": 4,
	"magnesium": 4, "millilitre": 4, "millimetre": 4, "potassium": 4, "temperature": 4,
	"temperatures": 4,
	"laboratory":   5,
}
