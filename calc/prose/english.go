package prose

import "strings"

// English is the English of growers in the United States.
var English = (&Language{
	numbers: map[string]float64{"zero": 0, "a": 1, "an": 1, "one": 1, "two": 2, "three": 3, "four": 4,
		"five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9, "ten": 10, "eleven": 11, "twelve": 12,
		"thirteen": 13, "fourteen": 14, "fifteen": 15, "sixteen": 16, "seventeen": 17, "eighteen": 18,
		"nineteen": 19, "twenty": 20, "thirty": 30, "forty": 40, "fifty": 50, "sixty": 60, "seventy": 70,
		"eighty": 80, "ninety": 90, "hundred": 100, "thousand": 1000, "million": 1e6, "dozen": 12},
	scales: map[string]float64{"hundred": 100, "thousand": 1000, "million": 1e6, "dozen": 12, "couple": 2,
		"couple of": 2},
	fractions: map[string]float64{"half": 2, "halves": 2, "third": 3, "thirds": 3, "quarter": 4, "quarters": 4,
		"fourth": 4, "fourths": 4, "fifth": 5, "fifths": 5, "eighth": 8, "eighths": 8, "tenth": 10, "tenths": 10,
		"sixteenth": 16, "sixteenths": 16},
	indefinite: map[string]bool{"a": true, "an": true},
	halves: strings.Fields("half quarter quarters thirds fourths fifths eighth eighths tenths sixteenth " +
		"sixteenths"),
	units: with(symbols(), "lb pound pounds|oz ounce ounces|ton short_ton short_tons|kg kilogram kilograms "+
		"kilo kilos|g gram grams|mg milligram milligrams|t tonne tonnes metric_ton metric_tons|in inch inches|"+
		"ft foot feet|yd yard yards|m meter meters metre metres|cm centimeter centimeters|mm millimeter "+
		"millimeters|ac acre acres|ha hectare hectares|ft2 square_foot square_feet|ft3 cubic_foot cubic_feet|"+
		"yd3 cubic_yard cubic_yards|m2 square_meter square_meters|gal gallon gallons|qt quart quarts|pt pint "+
		"pints|cup cup cups|tbsp tablespoon tablespoons|tsp teaspoon teaspoons|floz fluid_ounce fluid_ounces "+
		"fl_oz|L liter liters litre litres|mL milliliter milliliters|ac-in acre_inch acre_inches|ac-ft "+
		"acre_foot acre_feet|ppm parts_per_million part_per_million|% percent per_cent|$ dollar dollars|cent "+
		"cent cents|bu bushel bushels|mi mile miles|tree tree trees|emitter emitter emitters|unit unit units"),
	below: with(symbolsBelow(), "tree tree|emitter emitter|h hr hour|min minute|s second|day day|week week"),
	measures: with(symbolsOfMachines(), "hp horsepower|kW kilowatt kilowatts|kWh kilowatt_hour kilowatt_hours|"+
		"tree tree trees"),
	longer: table("month month months"),
	often:  strings.Fields("once twice times time often much many"),
	lasting: strings.Fields("for in within after before over under and or then about than until wait lasts takes " +
		"least most"),
	substance: with(substances(), "N nitrogen total_nitrogen|NO3-N nitrate_nitrogen nitrate_N nitrate_as_N "+
		"nitrate_as_nitrogen|"+
		"NH4-N ammonium_nitrogen ammonium_N|NO3 nitrate|NH4 ammonium|NH3 ammonia anhydrous_ammonia|K2O potash|"+
		"K potassium|P2O5 phosphate|P phosphorus|S sulfur|SO4 sulfate|Ca calcium|lime lime|product product "+
		"material fertilizer blend solution mix urea ammonium_sulfate calcium_nitrate potassium_nitrate "+
		"ammonium_nitrate sulfate_of_potash muriate_of_potash potassium_sulfate potassium_chloride gypsum compost manure "+
		"aqua_ammonia|kernels kernels almonds nuts pistachios walnuts"),
	joining: []string{"by", "to", "x"},
	per: []string{"per", "a", "an", "each", "every", "for each", "for every", "to the", "to each", "to every", "on a",
		"on an", "on one", "on each", "on every", "in each", "in every", "under each"},
	hedges: []string{"about", "almost", "at least", "at most", "barely", "less than", "more than", "nearly", "only",
		"over", "roughly", "under", "up to"},
	perEach:  []string{"for each", "for every", "to each", "to every", "in each", "in every"},
	each:     []string{"each tree", "every tree", "each acre", "every acre"},
	of:       []string{"of"},
	pointing: strings.Fields("the this that your a any actual pure available total bought dry liquid"),
	to:       []string{"to", "or", "through"},
	and:      "and",
	between:  "between",
	articles: []string{"a", "an", "one"},
	fillers: words("more extra full whole additional actual good us dry wet liquid net total odd plus or_so or_more " +
		"or_less"),
	doses: strings.Fields("depth layer irrigation rain rainfall application dose rate feed credit need crop sample " +
		"profile root rooting zone ring row spacing center alley square grid set"),
	things: strings.Fields("bucket pail pot jug can drum tote tank bottle ladder barrel bag sack hose tape pipe tubing " +
		"valve board post bolt truck pickup trailer container basket crate box"),
	named: strings.Fields("row rows block blocks line lines step steps page pages table figure week day year stop well " +
		"leaf chapter section part version number no box room gate valve bin lot route exit sample january february " +
		"march april may june july august september october november december multiply divide times"),
	offers: strings.Fields("sure certain discount off tax tip raise chance interest guarantee refund kill"),
	people: strings.Fields("people growers farmers visitors readers students members families workers us them"),
}).ready()
