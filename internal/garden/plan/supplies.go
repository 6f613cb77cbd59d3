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
	// Phosphate, as phosphorus.
	PhosphateP ContentReading `plan:"phosphate_p" in:"0 mg/L to 50 mg/L"`
	// Iron.
	Iron ContentReading `plan:"iron" in:"0 mg/L to 50 mg/L"`
	// Boron.
	Boron ContentReading `plan:"boron" in:"0 mg/L to 20 mg/L"`
	// Free chlorine that disinfects the water.
	Chlorine ContentReading `plan:"chlorine" in:"0 mg/L to 10 mg/L"`
	// Chloramine that disinfects the water, as Cl₂. Standing does not drive it off.
	Chloramine ContentReading `plan:"chloramine" in:"0 mg/L to 10 mg/L"`
	// Whether the water went through a softener with salt.
	Softened Tick `plan:"softened" default:"no"`
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
	// A pure salt, by its name among the salts, such as calcium-nitrate-double-salt, or by its formula, such as MgSO4.7H2O.
	Salt string `plan:"salt" pattern:"salt" one:"content,required"`
	// The declared content by mass, nutrient by nutrient: N, P2O5, K2O, Mg and so on.
	Label Label `plan:"label" in:"0 % to 100 %" one:"content,required"`
	// Of the nitrogen on the label, what is nitrate. The nitrogen of a chelate is not to be counted.
	NitrateN Share `plan:"nitrate_n" in:"0 % to 50 %" with:"label" default:"worked out so that the charges balance"`
	// Of the nitrogen on the label, what is ammonium.
	AmmoniumN Share `plan:"ammonium_n" in:"0 % to 50 %" with:"label" default:"worked out so that the charges balance"`
	// Of the nitrogen on the label, what is urea.
	UreaN Share `plan:"urea_n" in:"0 % to 50 %" with:"label" default:"0 %"`
	// Whether it is poured or weighed.
	Form string `plan:"form" words:"liquid,dry" default:"liquid where it has a density or a dose in mL, else dry"`
	// Density of a liquid: weigh 100 mL of it.
	Density Density `plan:"density" in:"0.9 kg/L to 2 kg/L"`
	// The maker's dose for the tub, such as 2 mL/L, 5 mL per 10 L or 1 g/L. Where it is given, nothing else is worked out.
	Dose Dose `plan:"dose"`
	// Which bottle of a set it is.
	Part string `plan:"part" words:"A,B,C"`
}

// Label is the declared content of a fertiliser, by the nutrient's symbol.
type Label map[string]Share

// Nutrients are the symbols that a label may name, in the order of a label.
func Nutrients() []string {
	return []string{
		"N", "P", "P2O5", "K", "K2O", "Ca", "CaO", "Mg", "MgO", "S", "SO3",
		"Fe", "Mn", "B", "Zn", "Cu", "Mo", "Cl", "Na", "Na2O", "Si", "Ni",
	}
}

// Acid is an acid that lowers the pH.
type Acid struct {
	// What the bottle is called.
	Name string `plan:"name,required"`
	// Which acid it is.
	Acid string `plan:"acid,required" words:"phosphoric,nitric,sulfuric,citric,citric monohydrate"`
	// How much of the bottle's mass is the acid, as its label says.
	ByMass Share `plan:"by_mass" in:"0.1 % to 100 %"`
	// Density of what is in the bottle.
	Density Density `plan:"density" in:"0.9 kg/L to 2 kg/L"`
	// Whether it is a powder or crystals.
	Solid Tick `plan:"solid" default:"no"`
}

// Base is what raises the pH.
type Base struct {
	// What the bottle is called.
	Name string `plan:"name,required"`
	// Which base it is.
	Base string `plan:"base,required" words:"potassium hydroxide,sodium hydroxide,potassium bicarbonate"`
	// How much of the bottle's mass is the base, as its label says.
	ByMass Share `plan:"by_mass" in:"0.1 % to 100 %"`
	// Density of what is in the bottle.
	Density Density `plan:"density" in:"0.9 kg/L to 2 kg/L"`
	// Whether it is a powder or crystals.
	Solid Tick `plan:"solid" default:"no"`
}

// Stocks are two concentrated solutions: A with the calcium, B with sulfate and
// phosphate.
type Stocks struct {
	// How much of each is made.
	Volume Volume `plan:"volume" in:"50 mL to 200 L" default:"1 L"`
	// How many times the solution of the tub.
	Strength Whole `plan:"strength" in:"2 to 500" default:"100"`
}

// Spoon is a level spoon of one fertiliser.
type Spoon struct {
	// What the spoon is called.
	Name string `plan:"name,required"`
	// The fertiliser, by its name in the plan.
	Of string `plan:"of,required"`
	// Mass of one level spoon: weigh ten of the same bag, and divide.
	Mass Mass `plan:"mass,required" in:"0.05 g to 100 g"`
}

// Bleach is plain household bleach, without scent or detergent.
type Bleach struct {
	// Available chlorine in grams for 100 mL, as the label says.
	Chlorine Share `plan:"chlorine,required" in:"0.5 % to 15 %"`
}

// Feed is what the nutrient solution is to be.
type Feed struct {
	// The recipe, by its name among the recipes.
	Recipe string `plan:"recipe" pattern:"slug" one:"recipe" default:"lettuce-modified-sonneveld"`
	// A recipe of your own, nutrient by nutrient, in the tub at full strength.
	Target Target `plan:"target" in:"0 mg/L to 1000 mg/L" one:"recipe"`
	// Electrical conductivity at 25 °C.
	EC EC `plan:"ec" in:"0.2 mS/cm to 5 mS/cm"`
	// Acidity.
	PH PH `plan:"ph" in:"4 to 8"`
}

// Target is a recipe by the nutrient's symbol.
type Target map[string]Content

// Aims are the symbols that a target may name, in their order. NH4-N is the part
// of N that is ammonium.
func Aims() []string {
	return []string{"N", "NH4-N", "P", "K", "Ca", "Mg", "S", "Fe", "Mn", "B", "Zn", "Cu", "Mo"}
}

// Offer is a kit to compare.
type Offer struct {
	// What the offer is called. No maker's name is needed.
	Name string `plan:"name,required"`
	// Its price.
	Price Cash `plan:"price" in:"0 to 100000"`
	// What delivery costs.
	Delivery Cash `plan:"delivery" in:"0 to 100000"`
	// What each crop costs: seed, plugs, feed.
	PerCrop Cash `plan:"per_crop" in:"0 to 100000"`
	// How many places for plants it has.
	Sites Whole `plan:"sites" in:"1 to 500"`
	// How its holes lie, where they lie in straight rows.
	Pattern Pattern `plan:"pattern" one:"holes"`
	// Where its holes lie: x and y of each centre, from the lower left.
	Holes []Pair `plan:"holes" in:"-1 m to 3 m" least:"1" one:"holes"`
	// How much water it holds.
	Volume Volume `plan:"volume" in:"0.5 L to 1000 L"`
	// What comes with it.
	Includes []string `plan:"includes"`
	// The meters that come with it.
	Meters []string `plan:"meters" words:"pH,EC,temperature"`
	// What a refill costs, once what came with it is used up. One lasts as many months as that did; without months one is taken for each crop.
	Refills Cash `plan:"refills" in:"0 to 100000"`
	// For how many months feed comes with it.
	Months Whole `plan:"months" in:"0 to 60"`
	// The photons of its own lamp that plants can use, given off each second.
	Flux PhotonFlux `plan:"flux" in:"1 µmol/s to 5000 µmol/s"`
	// Electric power of its own lamp.
	Power Power `plan:"power" in:"1 W to 2000 W"`
	// What you know to be missing from it.
	Lacks []string `plan:"lacks"`
	// Where it comes from: new, known means second-hand and you know what was in it, unknown means nobody does.
	Past string `plan:"past" words:"new,known,unknown" default:"new"`
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
