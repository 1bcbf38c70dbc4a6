package prose

// spanish is the Spanish of growers in the United States: commas part thousands and a point is before decimals, and a
// comma that parts no thousands is before decimals too.
var spanish = lexicon{
	code: "es",
	numbers: "0 cero|1 un una uno|2 dos|3 tres|4 cuatro|5 cinco|6 seis|7 siete|8 ocho|9 nueve|10 diez|11 once|12 doce|" +
		"13 trece|14 catorce|15 quince|16 dieciséis|17 diecisiete|18 dieciocho|19 diecinueve|20 veinte|" +
		"21 veintiuna veintiuno veintiún|22 veintidós|23 veintitrés|24 veinticuatro|25 veinticinco|26 veintiséis|" +
		"27 veintisiete|28 veintiocho|29 veintinueve|30 treinta|40 cuarenta|50 cincuenta|60 sesenta|70 setenta|" +
		"80 ochenta|90 noventa|100 cien ciento|1000 mil|200 doscientas doscientos|300 trescientas trescientos|" +
		"400 cuatrocientas cuatrocientos|500 quinientas quinientos|600 seiscientas seiscientos|" +
		"700 setecientas setecientos|800 ochocientas ochocientos|900 novecientas novecientos",
	scales: "1000 mil|1e6 millón_de millones_de|12 docena_de docenas_de|2 par_de|100 centenar_de|1000 millar_de",
	fractions: "2 medio media|3 tercio tercios|4 cuarto cuartos|5 quinto quintos|8 octavo octavos|" +
		"10 décimo décimos",
	halves:   "medio media",
	articles: "un una",
	ones:     "un una uno",
	bareHalf: true,
	and:      "y",
	between:  "entre",
	to:       "a o ó u hasta",
	comma:    true,
	plain:    "áa ée íi óo úu",

	units: "lb libra libras|oz onza onzas|ton tonelada toneladas|kg kilo kilos kilogramo kilogramos|g gramo gramos|" +
		"mg miligramo miligramos|in pulgada pulgadas|ft pie pies|yd yarda yardas|m metro metros|" +
		"cm centímetro centímetros|mm milímetro milímetros|ac acre acres|ha hectárea hectáreas|" +
		"ft2 pie_cuadrado pies_cuadrados|m2 metro_cuadrado metros_cuadrados|ft3 pie_cúbico pies_cúbicos|" +
		"m3 metro_cúbico metros_cúbicos|gal galón galones|cup taza tazas|tbsp cucharada cucharadas|" +
		"tsp cucharadita cucharaditas|qt cuarto_de_galón|floz onza_líquida onzas_líquidas|L litro litros|" +
		"mL mililitro mililitros|ac-in acre_pulgada acre_pulgadas acres_pulgada|ac-ft acre_pie acre_pies acres_pie|" +
		"ppm partes_por_millón parte_por_millón|% por_ciento porciento por_cien|$ dólar dólares|cent centavo centavos|" +
		"bu bushel bushels|mi milla millas|km kilómetro kilómetros|tree árbol árboles|" +
		"emitter emisor emisores gotero goteros|unit unidad unidades",
	fillers:    "más más_o_menos",
	adjectives: "reales netas netos puras puros totales enteras enteros secas secos",
	substances: "N nitrógeno nitrógeno_total|" +
		"NO3-N nitrógeno_de_nitrato nitrógeno_nítrico nitrato_N nitrato_como_N|NH4-N nitrógeno_amoniacal amonio_N|" +
		"NO3 nitrato|NH4 amonio|NH3 amoníaco amoniaco|K2O potasa|K potasio|P2O5 fosfato|P fósforo|S azufre|" +
		"SO4 sulfato|Ca calcio|lime cal|" +
		"product producto material fertilizante mezcla solución urea sulfato_de_potasio cloruro_de_potasio " +
		"sulfato_de_amonio nitrato_de_calcio nitrato_de_potasio nitrato_de_amonio yeso composta estiércol|" +
		"kernels almendra pepita",
	of:       "de del",
	as:       "como as", // laboratories report in English
	pointing: "la el este esta ese esa su",

	per:      "por",
	each:     "al cada el la",
	perEach:  "por_cada para_cada en_cada",
	perPlace: "a_la a_cada",
	perBare:  "por_cada",
	bases:    "tree árbol|emitter emisor gotero|h hora|min minuto|s segundo|day día|week semana",
	one:      "lb libra|ac acre|tree árbol|emitter emisor",
	forEach:  "cada_árbol cada_arbol cada_acre",
	joining:  "por x",

	measures: "hp caballos_de_fuerza caballos|kW kilovatio kilovatios|kWh kilovatio_hora kilovatios_hora|" +
		"tree árbol árboles",
	longer:   "month mes meses",
	plural:   "s",
	months:   "enero febrero marzo abril mayo junio julio agosto septiembre octubre noviembre diciembre",
	dayFirst: "de",

	named: "hilera hileras bloque bloques línea líneas paso pasos página páginas tabla figura semana día año parada " +
		"pozo hoja capítulo sección parte versión número caja salón puerta válvula lote muestra multiplique divida",
	things: "cubeta balde bote tanque tambo garrafa botella manguera tubo tubería cinta saco costal bolsa escalera " +
		"remolque camioneta tabla poste",
	offers:    "seguro segura seguros descuento impuesto interés garantía propina",
	people:    "gente productores agricultores visitantes lectores estudiantes miembros familias trabajadores",
	thePeople: "la el este esta ese esa su los",
}
