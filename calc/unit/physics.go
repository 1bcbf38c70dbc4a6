package unit

import "math/big"

// pressure, energy and power are dimensions that have a word of their own.
var (
	pressure = mass.of(1).Over(length.of(1)).Over(time.of(2))
	energy   = mass.of(1).Times(length.of(2)).Over(time.of(2))
	power    = energy.Over(time.of(1))
)

// physics names the dimensions of machines and pumps.
var physics = map[Dimension]string{pressure: "a pressure", energy: "an energy", power: "a power"}

// poundForce is the weight of a pound, in newtons: 0.45359237 kg at the standard 9.80665 m/s2.
var poundForce = new(big.Rat).Mul(rational("0.45359237"), rational("9.80665"))

// derived are units of several measures at once: of pressure, energy, power and electric conductivity. A horsepower is
// 550 foot-pounds a second; a mmho is a millisiemens.
var derived = []symbol{
	{"psi", flowKind, pressure, new(big.Rat).Quo(poundForce, powerOf(rational("0.0254"), 2))},
	{"kPa", flowKind, pressure, rational("1000")},
	{"bar", flowKind, pressure, rational("100000")},
	{"kWh", flowKind, energy, rational("3600000")},
	{"kW", flowKind, power, rational("1000")},
	{"hp", flowKind, power, new(big.Rat).Mul(poundForce, new(big.Rat).Mul(rational("550"), rational("0.3048")))},
	{"dS/m", flowKind, conductivity, rational("0.1")},
	{"mS/cm", flowKind, conductivity, rational("0.1")},
	{"uS/cm", flowKind, conductivity, rational("0.0001")},
	{"mmho/cm", flowKind, conductivity, rational("0.1")},
}

var conductivity = conductance.of(1).Over(length.of(1))
