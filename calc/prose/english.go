package prose

// english is the English of growers in the United States.
var english = lexicon{
	code: "en",
	numbers: "0 zero|1 a an one|2 two|3 three|4 four|5 five|6 six|7 seven|8 eight|9 nine|10 ten|11 eleven|12 twelve|" +
		"13 thirteen|14 fourteen|15 fifteen|16 sixteen|17 seventeen|18 eighteen|19 nineteen|20 twenty|30 thirty|" +
		"40 forty|50 fifty|60 sixty|70 seventy|80 eighty|90 ninety|100 hundred|1000 thousand|1e6 million|12 dozen",
	scales: "100 hundred|1000 thousand|1e6 million|12 dozen|2 couple couple_of",
	fractions: "2 half halves|3 third thirds|4 quarter quarters fourth fourths|5 fifth fifths|8 eighth eighths|" +
		"10 tenth tenths|16 sixteenth sixteenths",
	halves:   "half quarter quarters thirds fourths fifths eighth eighths tenths sixteenth sixteenths",
	articles: "a an one",
	ones:     "a an",
	counting: "a an",
	and:      "and",
	between:  "between",
	to:       "to or through",

	units: "lb pound pounds|oz ounce ounces|ton short_ton short_tons|kg kilogram kilograms kilo kilos|g gram grams|" +
		"mg milligram milligrams|t tonne tonnes metric_ton metric_tons|in inch inches|ft foot feet|yd yard yards|" +
		"m meter meters metre metres|cm centimeter centimeters|mm millimeter millimeters|ac acre acres|" +
		"ha hectare hectares|ft2 square_foot square_feet|ft3 cubic_foot cubic_feet|yd3 cubic_yard cubic_yards|" +
		"m2 square_meter square_meters|gal gallon gallons|qt quart quarts|pt pint pints|cup cup cups|" +
		"tbsp tablespoon tablespoons|tsp teaspoon teaspoons|floz fluid_ounce fluid_ounces fl_oz|" +
		"L liter liters litre litres|mL milliliter milliliters|ac-in acre_inch acre_inches|ac-ft acre_foot acre_feet|" +
		"ppm parts_per_million part_per_million|% percent per_cent|$ dollar dollars|cent cent cents|bu bushel bushels|" +
		"mi mile miles|tree tree trees|emitter emitter emitters|unit unit units",
	onlyBefore: "in of deep wide long thick apart high tall down to and or by per x across is are was were below above " +
		"from between",
	fillers: "more extra full whole additional actual good us dry wet liquid net total odd plus or_so or_more or_less",
	substances: "N nitrogen total_nitrogen|" +
		"NO3-N nitrate_nitrogen nitrate_N nitrate_as_N nitrate_as_nitrogen|NH4-N ammonium_nitrogen ammonium_N|" +
		"NO3 nitrate|NH4 ammonium|NH3 ammonia anhydrous_ammonia|K2O potash|K potassium|P2O5 phosphate|P phosphorus|" +
		"S sulfur|SO4 sulfate|Ca calcium|lime lime|" +
		"product product material fertilizer blend solution mix urea ammonium_sulfate calcium_nitrate " +
		"potassium_nitrate ammonium_nitrate sulfate_of_potash muriate_of_potash potassium_sulfate potassium_chloride " +
		"gypsum compost manure aqua_ammonia|kernels kernels almonds nuts pistachios walnuts",
	of:       "of",
	as:       "as",
	pointing: "the this that your a any actual pure available total bought dry liquid",
	hedges:   "about almost at_least at_most barely less_than more_than nearly only over roughly under up_to",

	per:       "per",
	each:      "a an each every",
	perEach:   "for_each for_every to_each to_every in_each in_every",
	perPlace:  "to_the on_a on_an on_one on_each on_every under_each",
	perBare:   "to_the",
	bases:     "tree tree|emitter emitter|h hr hour|min minute|s second|day day|week week",
	one:       "lb pound|ac acre|tree tree|emitter emitter",
	rows:      "row rows line",
	forEach:   "each_tree every_tree each_acre every_acre",
	uncounted: "tree acre unit",
	joining:   "by to x",

	measures: "hp horsepower|kW kilowatt kilowatts|kWh kilowatt_hour kilowatt_hours|tree tree trees",
	longer:   "month month months",
	often:    "once twice times time often much many",
	lasting: "for in within after before over under and or then about than until wait lasts takes least " +
		"most",
	plural: "s",
	months: "january february march april may june july august september october november december",

	named: "row rows block blocks line lines step steps page pages table figure week day year stop well leaf chapter " +
		"section part version number no box room gate valve bin lot route exit sample january february march april may " +
		"june july august september october november december multiply divide times",
	things: "bucket pail pot jug can drum tote tank bottle ladder barrel bag sack hose tape pipe tubing valve board " +
		"post bolt truck pickup trailer container basket crate box",
	doses: "depth layer irrigation rain rainfall application dose rate feed credit need crop sample profile root " +
		"rooting zone ring row spacing center alley square grid set",
	away:   "away",
	offers: "sure certain discount off tax tip raise chance interest guarantee refund kill",
	people: "people growers farmers visitors readers students members families workers us them",

	thePeople: "the this that your a any total",
}
