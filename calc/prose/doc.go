// Package prose reads amounts as people say them in a sentence: "48 pounds of nitrogen an acre", "3–4 oz a tree",
// "two and a half inches", "de 3 a 4 onzas por árbol".
//
// It owns the words of numbers and of the trade's units in each language, and what in a text is no amount: dates,
// grades of materials, counts of things. It must not know worksheets, sources or pages, and it converts nothing: units
// are those of calc/unit.
package prose
