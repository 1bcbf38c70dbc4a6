package prose

import "strings"

// Spanish is the Spanish of growers in the United States: commas part thousands and a point stands before decimals, and
// a comma that parts no thousands is one too.
var Spanish = (&Language{
	comma: true,
	numbers: map[string]float64{"cero": 0, "un": 1, "una": 1, "uno": 1, "dos": 2, "tres": 3, "cuatro": 4,
		"cinco": 5, "seis": 6, "siete": 7, "ocho": 8, "nueve": 9, "diez": 10, "once": 11, "doce": 12, "trece": 13,
		"catorce": 14, "quince": 15, "dieciséis": 16, "diecisiete": 17, "dieciocho": 18, "diecinueve": 19,
		"veinte": 20, "veintiuna": 21, "veintiuno": 21, "veintiún": 21, "veintidós": 22, "veintitrés": 23,
		"veinticuatro": 24, "veinticinco": 25, "veintiséis": 26, "veintisiete": 27, "veintiocho": 28,
		"veintinueve": 29, "treinta": 30, "cuarenta": 40, "cincuenta": 50, "sesenta": 60, "setenta": 70,
		"ochenta": 80, "noventa": 90, "cien": 100, "ciento": 100, "mil": 1000, "doscientas": 200,
		"doscientos": 200, "trescientas": 300, "trescientos": 300, "cuatrocientas": 400, "cuatrocientos": 400,
		"quinientas": 500, "quinientos": 500, "seiscientas": 600, "seiscientos": 600, "setecientas": 700,
		"setecientos": 700, "ochocientas": 800, "ochocientos": 800, "novecientas": 900, "novecientos": 900},
	scales: map[string]float64{"mil": 1000, "millón de": 1e6, "millones de": 1e6, "docena de": 12,
		"docenas de": 12, "par de": 2, "centenar de": 100, "millar de": 1000},
	fractions: map[string]float64{"medio": 2, "media": 2, "tercio": 3, "tercios": 3, "cuarto": 4, "cuartos": 4,
		"quinto": 5, "quintos": 5, "octavo": 8, "octavos": 8, "décimo": 10, "décimos": 10},
	halves: []string{"medio", "media"},
	units: with(symbols(), "lb libra libras|oz onza onzas|ton tonelada toneladas|kg kilo kilos kilogramo "+
		"kilogramos|g gramo gramos|mg miligramo miligramos|in pulgada pulgadas|ft pie pies|yd yarda yardas|m "+
		"metro metros|cm centímetro centímetros|mm milímetro milímetros|ac acre acres|ha hectárea hectáreas|"+
		"ft2 pie_cuadrado pies_cuadrados|m2 metro_cuadrado metros_cuadrados|ft3 pie_cúbico pies_cúbicos|m3 "+
		"metro_cúbico metros_cúbicos|gal galón galones|cup taza tazas|tbsp cucharada cucharadas|tsp "+
		"cucharadita cucharaditas|qt cuarto_de_galón|floz onza_líquida onzas_líquidas|L litro litros|mL "+
		"mililitro mililitros|ac-in acre_pulgada acre_pulgadas acres_pulgada|ac-ft acre_pie acre_pies "+
		"acres_pie|ppm partes_por_millón parte_por_millón|% por_ciento porciento por_cien|$ dólar dólares|cent "+
		"centavo centavos|bu bushel bushels|mi milla millas|"+
		"km kilómetro kilómetros|tree árbol árboles|emitter emisor emisores "+
		"gotero goteros|unit unidad unidades"),
	below: with(symbolsBelow(), "tree árbol|emitter emisor gotero|h hora|min minuto|s segundo|day día|week "+
		"semana"),
	measures: with(symbolsOfMachines(), "hp caballos_de_fuerza caballos|kW kilovatio kilovatios|"+
		"kWh kilovatio_hora kilovatios_hora|tree árbol árboles"),
	longer: table("month mes meses"),
	substance: with(substances(), "N nitrógeno nitrógeno_total|NO3-N nitrógeno_de_nitrato nitrógeno_nítrico nitrato_N "+
		"nitrato_como_N|NH4-N nitrógeno_amoniacal amonio_N|NO3 nitrato|NH4 amonio|K2O potasa|K potasio|P2O5 "+
		"fosfato|P fósforo|S azufre|SO4 sulfato|Ca calcio|lime cal|product producto material fertilizante "+
		"mezcla solución urea sulfato_de_potasio cloruro_de_potasio "+
		"sulfato_de_amonio nitrato_de_calcio nitrato_de_potasio nitrato_de_amonio yeso "+
		"composta estiércol|NH3 amoníaco amoniaco|kernels almendra pepita"),
	per:       []string{"por", "por cada", "al", "a la", "a cada", "para cada", "cada", "en cada", "el", "la"},
	perEach:   []string{"por cada", "para cada", "en cada"},
	each:      []string{"cada árbol", "cada arbol", "cada acre"},
	of:        []string{"de", "del"},
	pointing:  strings.Fields("la el este esta ese esa su"),
	to:        []string{"a", "o", "ó", "u", "hasta"},
	and:       "y",
	between:   "entre",
	articles:  []string{"un", "una"},
	bareHalf:  true,
	fillers:   words("más más_o_menos"),
	adjective: strings.Fields("reales netas netos puras puros totales enteras enteros secas secos"),
	joining:   []string{"por", "x"},
	named: strings.Fields("hilera hileras bloque bloques línea líneas paso pasos página páginas tabla figura semana " +
		"día año parada pozo hoja capítulo sección parte versión número caja salón puerta válvula lote muestra " +
		"multiplique divida"),
	things: strings.Fields("cubeta balde bote tanque tambo garrafa botella manguera tubo tubería cinta saco costal " +
		"bolsa escalera remolque camioneta tabla poste"),
	offers: strings.Fields("seguro segura seguros descuento impuesto interés garantía propina"),
	people: strings.Fields("gente productores agricultores visitantes lectores estudiantes miembros familias " +
		"trabajadores"),
}).ready()
