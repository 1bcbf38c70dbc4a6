// Package formula makes sheets of the calculations that authors write themselves: named quantities, and lines of
// ordinary arithmetic such as "potash = rate / analysis".
//
// It owns the arithmetic that an author may write, its checks, and its messages about slips, each with its place in the
// author's text. It must not read files or YAML, and works nothing itself: it builds a *sheet.Sheet, which is worked,
// printed and compiled like any other.
//
// A line of work is a name, an equals sign and an expression of numbers, names, + - * / ( ), the questions < <= > >= ==
// != joined by && || !, and the functions below. A quantity is in double quotes: "2 lb/ac". A name with a hyphen is
// written with an underscore, crop_removal for crop-removal, since a hyphen between two names would be a minus.
//
//	min(a, b)  max(a, b)          the smaller, the larger, of two or more
//	round_up(a)  round_down(a)    to a whole number of its unit
//	sqrt(a)  pow(a, 3)  size(a)   the root, a whole power, the value without its sign
//	if(question, then, otherwise) only at the top of a line
package formula
