package reading

import "testing"

func TestLanguage(t *testing.T) {
	for text, want := range map[string]string{
		"Find the nitrate line of the report, and read the letters after the number.":           "en",
		"Busque la línea del nitrato en el informe, y lea las letras después del número.":       "es",
		`"ND" ("not detected") no dice el límite. Búsquelo en una columna que se llama así.`:    "es",
		"In Spanish the line is called la línea del nitrato, and that is how you will find it.": "en",
		"Nitrate as N":                       "",
		"NO3-N 12 ppm":                       "",
		"":                                   "",
		"El Dorado de los Altos, California": "",
	} {
		if got := Language(text); got != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}
