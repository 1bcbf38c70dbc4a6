// Package unit knows quantities as growers write them: a number, a unit and what the unit measures ("12 ppm NO3-N",
// "3 oz N/tree", "$0.62/lb"). It reads them, converts them and writes them, in US and metric units.
//
// The substance is part of a dimension, so lb N, lb NO3 and lb of product never mix by accident, and a tree is a
// counted unit, so oz N/tree times trees/ac is oz N/ac. All scales are exact ratios of whole numbers, taken from the
// legal definitions; a conversion rounds only when it is applied to a value.
//
// Where nitrogen is counted is part of a dimension too: lb N/ac fed, taken up and present are three things, and one
// becomes another only through a share whose unit has both (70 % taken up/fed).
//
// The package imports nothing of ours, does no input or output, and must not know a crop, a fertilizer or a rule of
// thumb. What its dimensions cannot catch is a number in the right unit for the wrong thing: a depth of soil where a
// depth of water is asked for.
package unit
