// Package words holds every text of the calculations by key and language: labels, hints, remarks, refusals, slips,
// sentences, and the few words that all work is printed with.
//
// A calculation has a file of its own in each folder; shared.txt has what several of them say, and general.txt what
// any of them may. English is complete, and a text that another language lacks is the English one, marked as such. The
// package knows no sheet: which keys there are, and which names a text may have in braces, follows from the sheets, and
// they check it.
package words
