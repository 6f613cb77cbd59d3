package plan

// Tap is the tap water. A figure may be an interval, as a strip leaves it open:
// 80 to 120 mg/L.
type Tap struct {
	Unknown bool // the word unknown stood in place of the figures

	// Acidity.
	PH PHReading `plan:"ph" in:"3 to 11"`
	// Alkalinity as calcium carbonate.
	Alkalinity ContentReading `plan:"alkalinity" in:"0 mg/L to 1000 mg/L" default:"150 mg/L, and no acid dose"`
	// Electrical conductivity at 25 °C.
	EC ECReading `plan:"ec" in:"0 mS/cm to 10 mS/cm"`
	// Calcium.
	Calcium ContentReading `plan:"calcium" in:"0 mg/L to 1000 mg/L"`
	// Magnesium.
	Magnesium ContentReading `plan:"magnesium" in:"0 mg/L to 1000 mg/L"`
	// Sodium.
	Sodium ContentReading `plan:"sodium" in:"0 mg/L to 2000 mg/L"`
	// Potassium.
	Potassium ContentReading `plan:"potassium" in:"0 mg/L to 1000 mg/L"`
	// Chloride.
	Chloride ContentReading `plan:"chloride" in:"0 mg/L to 3000 mg/L"`
	// Sulfate.
	Sulfate ContentReading `plan:"sulfate" in:"0 mg/L to 3000 mg/L"`
	// Nitrate, as nitrogen.
	NitrateN ContentReading `plan:"nitrate_n" in:"0 mg/L to 200 mg/L"`
	// Chlorine that disinfects the water.
	Chlorine ContentReading `plan:"chlorine" in:"0 mg/L to 10 mg/L"`
}

// Lamp is one lamp, or a row of lamps seen as one.
type Lamp struct {
	// What the lamp is called.
	Name string `plan:"name"`
	// All the photons that plants can use, given off each second.
	Flux PhotonFlux `plan:"flux" in:"1 µmol/s to 5000 µmol/s"`
	// Electric power.
	Power Power `plan:"power" in:"1 W to 2000 W"`
	// Length of the part that shines.
	Length Length `plan:"length" in:"1 cm to 5 m"`
	// Width of the part that shines.
	Width Length `plan:"width" in:"1 mm to 3 m"`
	// Height over the lid at transplant.
	AboveLid Length `plan:"above_lid" in:"1 cm to 3 m"`
	// From when to when it is lit.
	Lit [2]Clock `plan:"lit"`
}

// Fertiliser is one bag or bottle.
type Fertiliser struct {
	// What it is called.
	Name string `plan:"name,required"`
	// A pure salt, by its name among the salts, such as calcium-nitrate-double-salt.
	Salt string `plan:"salt" pattern:"slug" one:"content,required"`
	// The declared content, nutrient by nutrient: N, P2O5, K2O, Mg and so on.
	Label Label `plan:"label" in:"0 % to 100 %" one:"content,required"`
}

// Label is the declared content of a fertiliser, by the nutrient's symbol.
type Label map[string]Share

// Nutrients are the symbols that a label may name, in the order of a label.
func Nutrients() []string {
	return []string{
		"N", "P", "P2O5", "K", "K2O", "Ca", "CaO", "Mg", "MgO", "S", "SO3",
		"Fe", "Mn", "B", "Zn", "Cu", "Mo", "Cl", "Na", "Si", "Ni",
	}
}

// Acid is an acid that lowers the pH.
type Acid struct {
	// What the bottle is called.
	Name string `plan:"name,required"`
	// Which acid it is.
	Acid string `plan:"acid,required" words:"phosphoric,nitric,sulfuric,citric"`
	// How much of the bottle's mass is the acid.
	ByMass Share `plan:"by_mass" in:"0.1 % to 100 %"`
	// Density of what is in the bottle.
	Density Density `plan:"density" in:"0.9 kg/L to 2 kg/L"`
}

// Feed is what the nutrient solution is to be.
type Feed struct {
	// The recipe, by its name among the recipes.
	Recipe string `plan:"recipe" pattern:"slug" default:"lettuce-modified-sonneveld"`
	// Electrical conductivity at 25 °C.
	EC EC `plan:"ec" in:"0.2 mS/cm to 5 mS/cm"`
	// Acidity.
	PH PH `plan:"ph" in:"4 to 8"`
}

// Offer is a kit to compare.
type Offer struct {
	// What the offer is called. No maker's name is needed.
	Name string `plan:"name,required"`
	// Its price.
	Price Cash `plan:"price" in:"0 to 100000"`
	// What delivery costs.
	Delivery Cash `plan:"delivery" in:"0 to 100000"`
	// What each crop costs afterwards.
	PerCrop Cash `plan:"per_crop" in:"0 to 100000"`
	// How many places for plants it has.
	Sites Whole `plan:"sites" in:"1 to 500"`
	// How its holes lie.
	Pattern Pattern `plan:"pattern"`
	// How much water it holds.
	Volume Volume `plan:"volume" in:"0.5 L to 1000 L"`
	// What comes with it.
	Includes []string `plan:"includes"`
}

// Pattern is a grid of holes.
type Pattern struct {
	// Rows.
	Rows Whole `plan:"rows,required" in:"1 to 50"`
	// Holes in each row.
	Columns Whole `plan:"columns,required" in:"1 to 50"`
	// From centre to centre.
	Pitch Length `plan:"pitch,required" in:"1 cm to 1 m"`
}
