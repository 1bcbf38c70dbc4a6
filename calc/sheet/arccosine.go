package sheet

import "math"

// arcsineSeries are the coefficients, lowest first, of P in arcsin t = t + t·t²·P(t²) for t² from 0 to 1/4. They are
// the Chebyshev interpolation of degree 13 of the power series, which has the coefficients
// 1/6, 3/40, 15/336 ... (Abramowitz and Stegun, Handbook of Mathematical Functions, 4.4.40); the error is below 2⁻⁵³.
var arcsineSeries = [...]float64{
	0.16666666666666666, 0.07500000000000118, 0.044642857142551895, 0.03038194447553234, 0.02237215744350722,
	0.017352816540325496, 0.01396378001220357, 0.011566459612121669, 0.009621842970100282, 0.009319560794767446,
	0.0030448799094556773, 0.019554513336123378, -0.01924167174674304, 0.02961201126495512,
}

// arccosine writes the angle whose cosine is x as one fixed sequence of operations, because the arccosine of a
// platform's own library differs in its last bits from one platform to the next. Outside -1 to 1 it gives NaN.
//
// For |x| ≤ ½, arccos x = π/2 - arcsin x. Beyond, arccos |x| = 2 arcsin √((1-|x|)/2), and arccos -x = π - arccos x.
func (a *assembler) arccosine(x int) int {
	half, one := a.literal(0.5), a.literal(1)
	size := a.emit(Absolute, x)
	near := a.emit(LessOrEqual, size, half)
	beyond := a.emit(Multiply, a.emit(Subtract, one, size), half)
	square := a.emit(Select, near, a.emit(Multiply, x, x), beyond)
	t := a.emit(Select, near, size, a.emit(SquareRoot, beyond))

	sum := a.literal(arcsineSeries[len(arcsineSeries)-1])
	for i := len(arcsineSeries) - 2; i >= 0; i-- {
		sum = a.emit(Add, a.emit(Multiply, sum, square), a.literal(arcsineSeries[i]))
	}
	arcsine := a.emit(Add, t, a.emit(Multiply, t, a.emit(Multiply, square, sum)))

	quarter := a.literal(math.Pi / 2)
	twice := a.emit(Add, arcsine, arcsine)
	negative := a.emit(Less, x, a.literal(0))
	inner := a.emit(Select, negative, a.emit(Add, quarter, arcsine), a.emit(Subtract, quarter, arcsine))
	outer := a.emit(Select, negative, a.emit(Subtract, a.literal(math.Pi), twice), twice)
	return a.emit(Select, near, inner, outer)
}
