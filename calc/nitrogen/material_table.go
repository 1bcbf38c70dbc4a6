package nitrogen

// materials are the grades of the trade. Where sources disagree, the note has the range and the reason.
//
// The lime of 16-20-0 (with 15 % S), 11-52-0, 18-46-0, 10-34-0, 12-0-0-26S, 15-0-0-16S and 15-15-15 is worked from the
// grade by the official method. A test shows that the method gives the printed figures of the others.
var materials = []material{
	{"UAN-32", "UAN-32, urea-ammonium nitrate solution", 32, 25, 25, 50, 11.06, 1.78, remembered,
		"A gallon is taken at 11.06 lb; data sheets have 11.05 to 11.08 lb near 60 °F (from memory). Lime is printed as " +
			"1.72, 1.78 and 1.8. Salts out near 28 °F. Salt index 71 (from memory)."},
	{"UAN-28", "UAN-28, urea-ammonium nitrate solution", 28, 25, 25, 50, 10.6, 1.78, 0,
		"A gallon is 10.6 to 10.7 lb. Lime as for UAN-32, since the mix is the same; 1.75 is printed too. Salts out " +
			"near 0 °F. Salt index 63 (from memory)."},
	{"CAN-17", "CAN-17, calcium ammonium nitrate solution", 17, 68, 32, 0, 12.6, 0.53, calcium | unlisted,
		"The solution, not the dry CAN of 26 to 28 % N. About 8.8 % calcium. Forms from memory: 11.6 % nitrate and " +
			"5.4 % ammonium."},
	{"AN-20", "AN-20, ammonium nitrate solution", 20, 50, 50, 0, 10.6, 1.82, 0,
		"A gallon is worked from 0.47 gal for a pound of nitrogen. Lime as for dry ammonium nitrate."},
	{"46-0-0", "Urea, 46-0-0", 46, 0, 0, 100, 0, 1.8, 0,
		"Labels say 45 or 46 % N. Lime is printed as 1.56 and 1.8: the second agrees with the official method. Salt " +
			"index 75.4 (from memory)."},
	{"21-0-0-24S", "Ammonium sulfate, 21-0-0-24S", 21, 0, 100, 0, 0, 5.24, sulfate,
		"Lime is 110 lb for 100 lb of product, which is 5.24; 5.4 is printed too. Salt index 69 (from memory)."},
	{"34-0-0", "Ammonium nitrate, 34-0-0", 34, 50, 50, 0, 0, 1.82, 0,
		"Labels say 33.5 to 34 % N. Salt index 104.7 (from memory). Many places limit who may hold it."},
	{"15.5-0-0-19Ca", "Calcium nitrate, 15.5-0-0-19Ca", 15.5, 93, 7, 0, 0, -1.29, calcium | unlisted,
		"19 % calcium; other makes have 15 % N with 21 or 24 % calcium. Forms from memory: 14.4 % nitrate and 1.1 % " +
			"ammonium. Salt index 52.5 to 65 (from memory)."},
	{"13-0-46", "Potassium nitrate, 13-0-46", 13, 100, 0, 0, 0, -2, 0,
		"Labels say 44, 45 or 46 % potash. Salt index 73.6 (from memory)."},
	{"15-15-15", "Triple 15, 15-15-15", 15, 0, 100, 0, 0, 2.5, phosphate | unlisted,
		"Makers use different sources: it is taken as all ammonium, without sulfate. With ammonium sulfate in it, the " +
			"lime is up to 5. Read the label."},
	{"16-20-0", "Ammonium phosphate-sulfate, 16-20-0", 16, 0, 100, 0, 0, 5.6, sulfate | phosphate,
		"With 15 % sulfur. Lime is worked from the grade."},
	{"11-52-0", "Monoammonium phosphate (MAP), 11-52-0", 11, 0, 100, 0, 0, 5.1, phosphate,
		"Labels say 11 or 12 % N. Lime is worked from the grade. Salt index 26.7 (from memory)."},
	{"18-46-0", "Diammonium phosphate (DAP), 18-46-0", 18, 0, 100, 0, 0, 3.6, phosphate,
		"Lime is worked from the grade. Salt index 29.2 (from memory)."},
	{"10-34-0", "Ammonium polyphosphate solution, 10-34-0", 10, 0, 100, 0, 11.65, 4.2, phosphate | remembered,
		"A gallon is taken at 11.65 lb, as in data sheets (from memory); a University of Nebraska lesson has 11.4 lb. " +
			"Lime is worked from the grade."},
	{"20-0-0", "Aqua ammonia, 20-0-0", 20, 0, 100, 0, 7.58, 1.8, ammonia,
		"20 to 25 % N. A gallon is worked from 0.66 gal for a pound of nitrogen."},
	{"82-0-0", "Anhydrous ammonia, 82-0-0", 82, 0, 100, 0, 5.15, 1.8, ammonia | pressure,
		"A gallon is 5.15 lb at 60 °F, and clearly less when warm. Salt index 47.1 (from memory)."},
	{"12-0-0-26S", "Ammonium thiosulfate solution, 12-0-0-26S", 12, 0, 100, 0, 11.5, 8.6, sulfate | disputed,
		"A gallon is 11.5 lb by the University of Nebraska, and 11.0 to 11.1 lb in data sheets (from memory). Lime is " +
			"worked from the grade, with all its sulfur turned to sulfate. Acid makes it give off a poison gas."},
	{"15-0-0-16S", "Urea-sulfuric acid, 15-0-0-16S", 15, 0, 0, 100, 12.8, 5.1, acid | sulfate | remembered,
		"Half of it is sulfuric acid. A gallon of 12.8 lb is from memory. Lime is worked from the grade."},
}
